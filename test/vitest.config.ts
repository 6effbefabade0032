import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    root: new URL("..", import.meta.url).pathname,
    env: { TZ: "UTC" },
    globalSetup: ["test/buildOnce.ts"],
    testTimeout: 30_000,
  },
});
