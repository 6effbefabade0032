/** Runs the built program as a user would, with everything around it pinned. */

import { type ChildProcess, spawn } from "node:child_process";
import { chmodSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

export const ROOT = fileURLToPath(new URL("../..", import.meta.url));
export const PROGRAM = fileURLToPath(new URL("../../dist/cli/launch.js", import.meta.url));
export const SITES = fileURLToPath(new URL("../../sites", import.meta.url));

export interface Ran {
  readonly stdout: string;
  readonly stderr: string;
  /** Null when a signal ended it. */
  readonly exit: number | null;
  readonly seconds: number;
}

export interface RunOptions {
  readonly cwd?: string;
  /** Beside PATH, TZ and LANG; nothing else of the caller's environment is handed on. */
  readonly env?: Readonly<Record<string, string>>;
  readonly input?: string;
}

const TIMEOUT_MS = 25_000;

/** Not on a terminal, in UTC, in a plain locale, without NO_COLOR. */
export function run(args: readonly string[], options: RunOptions = {}): Promise<Ran> {
  const started = performance.now();
  const child = spawn(process.execPath, [PROGRAM, ...args], {
    cwd: options.cwd ?? ROOT,
    env: { PATH: process.env["PATH"] ?? "", TZ: "UTC", LANG: "C.UTF-8", ...options.env },
    stdio: ["pipe", "pipe", "pipe"],
    timeout: TIMEOUT_MS,
  });
  child.stdin.on("error", () => undefined);
  child.stdin.end(options.input ?? "");
  return collect(child, started);
}

/** A line of a shell, for pipes; `$PADSTOP` in it is the program. */
export function runShell(line: string, cwd: string = ROOT): Promise<Ran> {
  const started = performance.now();
  const child = spawn("bash", ["-o", "pipefail", "-c", line], {
    cwd,
    env: { PATH: process.env["PATH"] ?? "", TZ: "UTC", PADSTOP: `${process.execPath} ${PROGRAM}` },
    stdio: ["ignore", "pipe", "pipe"],
    timeout: TIMEOUT_MS,
  });
  return collect(child, started);
}

/** The text as one word of a shell. */
export const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`;

/** Puts a `bin/padstop` that starts the program into a folder, as an installed one does. */
export function putStarter(folder: string): void {
  mkdirSync(join(folder, "bin"), { recursive: true });
  const starter = join(folder, "bin", "padstop");
  writeFileSync(starter, `#!/bin/sh\nexec ${quoted(process.execPath)} ${quoted(PROGRAM)} "$@"\n`);
  chmodSync(starter, 0o755);
}

function collect(child: ChildProcess, started: number): Promise<Ran> {
  const parts = { stdout: [] as Buffer[], stderr: [] as Buffer[] };
  child.stdout?.on("data", (chunk: Buffer) => parts.stdout.push(chunk));
  child.stderr?.on("data", (chunk: Buffer) => parts.stderr.push(chunk));
  return new Promise((resolve, reject) => {
    child.on("error", reject);
    child.on("close", (exit) =>
      resolve({
        stdout: Buffer.concat(parts.stdout).toString("utf8"),
        stderr: Buffer.concat(parts.stderr).toString("utf8"),
        exit,
        seconds: (performance.now() - started) / 1000,
      }),
    );
  });
}

/** What a stack trace or a fault of our own looks like. */
export const TRACE = /^\s+at .*(\.m?js|node:)|fault of its own|\bNaN\b|\bundefined\b|\[object /m;
