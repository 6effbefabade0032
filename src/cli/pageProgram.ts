/** The program of the report's page, as the build packed it for browsers. */

import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

/** Its text. */
export const pageProgram = (): string =>
  readFileSync(fileURLToPath(new URL("../reportPage.js", import.meta.url)), "utf8");

/** For a Content-Security-Policy: SHA-256 in base 64. */
export const sha256Base64 = (text: string): string => createHash("sha256").update(text).digest("base64");
