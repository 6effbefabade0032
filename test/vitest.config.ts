import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["test/**/*.test.ts"],
    root: new URL("..", import.meta.url).pathname,
    env: { TZ: "UTC" },
    globalSetup: ["test/buildOnce.ts"],
    // Much of a run waits for child processes and browsers: by default one core of two would stand idle.
    maxWorkers: "100%",
    testTimeout: 30_000,
  },
});
