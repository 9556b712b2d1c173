import { defineConfig, mergeConfig } from "vitest/config";

import built from "./vite.config.ts";

/** Unit tests, of sources made ready as for the build; apart from it, so that building needs no test tools. */
export default mergeConfig(built, defineConfig({ test: { include: ["src/**/*.test.{ts,tsx}"], environment: "happy-dom", testTimeout: 10_000 } }));
