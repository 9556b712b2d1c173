import { fileURLToPath } from "node:url";

import { defineConfig } from "vite";
import { VitePWA } from "vite-plugin-pwa";

import { CHUNKS } from "./build/chunks.ts";
import { labelFont } from "./build/labelFont.ts";
import { NOTICES, notices } from "./build/notices.ts";
import { texts } from "./build/texts.ts";

const repository = fileURLToPath(new URL("..", import.meta.url));
const api = process.env["AMBERBENCH_API"] ?? "http://127.0.0.1:8765";

const manifest = {
  id: "/",
  name: "Amberbench",
  short_name: "Amberbench",
  description: "Plan a batch of caramels and run it at the bench, with or without a network.",
  start_url: "/",
  scope: "/",
  display: "standalone" as const,
  background_color: "#15110d",
  theme_color: "#15110d",
  icons: [
    { src: "/icon.svg", sizes: "any", type: "image/svg+xml" },
    { src: "/icon-192.png", sizes: "192x192", type: "image/png" },
    { src: "/icon-512.png", sizes: "512x512", type: "image/png" },
    { src: "/icon-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" as const },
  ],
};

/** In the app MicroPython never meets Node: what its loader holds for that stays out. */
const IN_A_WORKER = { process: "undefined", "globalThis.process": "undefined", "globalThis.window": "undefined", "globalThis.WorkerGlobalScope": "true" };

const assetFileNames = ({ names }: { names: string[] }) => `assets/${names.some((name) => name.startsWith("zxing")) ? "scan-" : ""}[name]-[hash][extname]`;

export default defineConfig({
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  build: {
    target: "es2022",
    license: { fileName: NOTICES },
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: { output: { ...CHUNKS, assetFileNames } },
  },
  worker: { format: "es", rolldownOptions: { output: { codeSplitting: false } } },
  // The engine and the texts live with the server: one copy of each.
  server: { fs: { allow: [repository] }, proxy: { "/api": api } },
  preview: { proxy: { "/api": api } },
  plugins: [
    { name: "in-a-worker", apply: "build", config: () => ({ define: IN_A_WORKER }) },
    texts(),
    labelFont(),
    notices(),
    VitePWA({
      strategies: "injectManifest",
      srcDir: "src/sw",
      filename: "sw.ts",
      registerType: "prompt",
      injectRegister: false,
      manifest,
      // The system fetches the install icons itself; nothing in the app draws them.
      includeManifestIcons: false,
      injectManifest: {
        globPatterns: ["**/*.{html,js,css,wasm,mpy,svg,webmanifest}"],
        // What reads codes is as large as the rest: it is fetched, and then kept, when somebody first opens the camera.
        globIgnores: ["**/scan-*"],
        maximumFileSizeToCacheInBytes: 4_000_000,
        // A worker without imports is otherwise emitted as a module, which a classic worker cannot load.
        rollupFormat: "iife",
      },
    }),
  ],
});
