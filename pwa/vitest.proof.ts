import { defineConfig } from "vitest/config";

/** The long stories, which need a server: see e2e/test_interleavings.py. */
export default defineConfig({ test: { include: ["src/**/*.proof.ts"], environment: "node", disableConsoleIntercept: true } });
