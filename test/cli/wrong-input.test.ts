/** Wrong input of every kind: exit 2, quickly, in words, and never a stack trace. */

import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { run, SITES, TRACE } from "./run.ts";

const SITE = join(SITES, "skerry-vane.yaml");
const SOUND =
  "site: { name: T, zone: UTC, latitude: 45, longitude: 0 }\ncameras: [{ id: A, azimuth: 1, lens: { focal: 50 }, gate: 16mm }]\nwindows: [{ opens: 2027-04-18T17:10, closes: 2027-04-18T18:10 }]\n";
const table = (name: string): string => SOUND.replace(/cameras: .*/, `cameras-from: ${name}`);
const TABLE = "id,azimuth,lens.focal,gate\nA,1,50,16mm\n";
let folder = "";

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "padstop-"));
  mkdirSync(join(folder, "in"));
  mkdirSync(join(folder, "in", "below"));
  mkdirSync(join(folder, "in", "folder.csv"));
  const write = (name: string, content: string | Buffer): void =>
    writeFileSync(join(folder, "in", name), content);
  write("sound.yaml", SOUND);
  write("large.yaml", "#".repeat(10_000_000));
  write("latin1.yaml", Buffer.from(SOUND.replace("name: T", "name: \u00cele"), "latin1"));
  write("binary.yaml", Buffer.from([0x1f, 0x8b, 0x08, 0, 0, 0xff, 0xfe]));
  write("utf16.yaml", Buffer.from(`\ufeff${SOUND}`, "utf16le"));
  write("bom.yaml", `\ufeff${SOUND}`);
  write("crlf.yaml", SOUND.replaceAll("\n", "\r\n"));
  write("empty.yaml", "");
  writeFileSync(join(folder, "outside.csv"), TABLE);
  write("up.yaml", table("../outside.csv"));
  write("absolute.yaml", table(join(folder, "outside.csv")));
  write("dots.yaml", table("..cameras.csv"));
  write("..cameras.csv", TABLE);
  write("below.yaml", table("below/cameras.csv"));
  write("below/cameras.csv", TABLE);
  write("folder.yaml", table("folder.csv"));
  write("huge-table.yaml", table("huge.csv"));
  write("huge.csv", "x".repeat(2_000_000));
  write("link-out.yaml", table("link-out.csv"));
  symlinkSync("../outside.csv", join(folder, "in", "link-out.csv"));
  write("link-in.yaml", table("link-in.csv"));
  symlinkSync("below/cameras.csv", join(folder, "in", "link-in.csv"));
  write("loop.yaml", table("loop.csv"));
  symlinkSync("loop.csv", join(folder, "in", "loop.csv"));
  const flying = `${SOUND}vehicle: { height: 20, diameter: 2, ascent: way.csv }\n`;
  write("below/flying.yaml", flying);
  write("below/way.csv", "t (s),east (m),north (m),up (m)\n0,0,0,0\n-1,0,0,1\n");
  write("long-name.yaml", flying.replace("way.csv", `${"x".repeat(300)}.csv`));
  write("nul.yaml", flying.replace("way.csv", '"a\\0.csv"'));
  write("blank-lines.yaml", flying.replace("way.csv", "blank-lines.csv"));
  write("blank-lines.csv", `t (s),east (m),north (m),up (m)\n0,0,0,0\n${"\n".repeat(200_000)}1,0,0,1\n`);
  write("latin1-table.yaml", table("latin1.csv"));
  write("latin1.csv", Buffer.from(TABLE.replace("A,", "\u00c9,"), "latin1"));
  symlinkSync("sound.yaml", join(folder, "in", "link.yaml"));
  symlinkSync("nowhere.yaml", join(folder, "in", "dangling.yaml"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const inFolder = (args: readonly string[], input?: string) =>
  run(args, { cwd: join(folder, "in"), ...(input === undefined ? {} : { input }) });

const FILES: readonly (readonly [string, string, string])[] = [
  ["10 MB", "large.yaml", "E_SIZE"],
  ["not UTF-8", "latin1.yaml", "E_FILE"],
  ["binary", "binary.yaml", "E_FILE"],
  ["UTF-16", "utf16.yaml", "E_FILE"],
  ["nothing in it", "empty.yaml", "E_YAML"],
  ["a folder", "below", "E_FILE"],
  ["a missing file", "missing.yaml", "E_FILE"],
  ["a dangling link", "dangling.yaml", "E_FILE"],
  ["an empty name", "", "E_FILE"],
  ["a device", "/dev/null", "E_FILE"],
  ["stdin by its usual sign", "-", "E_FILE"],
  ["a table outside the folder", "up.yaml", "E_FILE"],
  ["a table by an absolute name", "absolute.yaml", "E_FILE"],
  ["a folder as table", "folder.yaml", "E_FILE"],
  ["a table of 2 MB", "huge-table.yaml", "E_SIZE"],
  ["a table by a link out of the folder", "link-out.yaml", "E_FILE"],
  ["a table by a link to itself", "loop.yaml", "E_FILE"],
  ["an ascent by a name too long", "long-name.yaml", "E_FILE"],
  ["an ascent by a name with a zero in it", "nul.yaml", "E_FILE"],
  ["an ascent of blank lines", "blank-lines.yaml", "E_SIZE"],
  ["a table not in UTF-8", "latin1-table.yaml", "E_FILE"],
];

describe.concurrent("a site file that is", () => {
  it.each(FILES)("%s is refused fast, with its code", async (_, name, code) => {
    const ran = await inFolder(["plan", name], SOUND);
    expect(ran.exit).toBe(2);
    expect(ran.stdout).toBe("");
    expect(ran.stderr).toContain(`${code}  `);
    expect(ran.stderr).not.toMatch(TRACE);
    expect(ran.seconds).toBeLessThan(5);
  });

  it("huge-table.yaml has its fault told where its table begins", async () => {
    const { stderr } = await inFolder(["check", "huge-table.yaml"]);
    expect(stderr.split("\n")[0]).toBe("huge.csv:1:1  E_SIZE  huge.csv");
  });

  it("a table is named from where the reader stands", async () => {
    const { stderr } = await inFolder(["check", "below/flying.yaml"]);
    expect(stderr.split("\n")[0]).toBe("below/way.csv:3:1  E_ORDER  t (s)");
  });

  it.each(["up.yaml", "absolute.yaml", "folder.yaml", "link-out.yaml", "loop.yaml"])(
    "%s has its fault told at the key that names the table",
    async (name) => {
      const { stderr } = await inFolder(["check", name]);
      expect(stderr.split("\n")[0]).toMatch(new RegExp(`^${name}:2:15 {2}E_[A-Z]+ {2}cameras-from$`));
    },
  );

  it.each(["bom.yaml", "crlf.yaml", "link.yaml", "link-in.yaml", "below.yaml", "dots.yaml"])(
    "%s is read",
    async (name) => {
      expect(await inFolder(["check", name])).toMatchObject({ exit: 0, stderr: "" });
    },
  );
});

const LINES: readonly (readonly [why: string, args: readonly string[], says: string])[] = [
  ["an unknown command", ["pln", SITE], "Did you mean plan?"],
  ["a command that would colour the terminal", ["\u001b[31mplan"], "E_CHOICE  COMMAND"],
  ["an unknown option", ["plan", SITE, "--windw", "x"], "Did you mean --window?"],
  ["an unknown short option", ["plan", SITE, "-x"], "E_OPTION  -x"],
  [
    "an option without its value",
    ["plan", SITE, "--sky"],
    "E_OPTION  --sky\n  found nothing; accepted: <states>",
  ],
  ["one argument too many", ["plan", SITE, SITE], "E_OPTION  padstop plan"],
  ["no site", ["plan"], "E_MISSING  SITE"],
  ["an empty window", ["plan", SITE, "--window", ""], "E_NAME  --window"],
  ["half an interval", ["plan", SITE, "--window", "2027-04-18T17:10/"], "E_TIME  --window"],
  ["a window of no length", ["plan", SITE, "--window", "2027-04-18T17:10/17:10"], "E_ORDER  --window"],
  ["a window of endless length", ["plan", SITE, "--window", "2027-04-18T17:10/P9000Y"], "--window"],
  ["an empty sky in a list", ["plan", SITE, "--sky", "clear,"], "E_CHOICE  --sky"],
  ["the same turbidity twice", ["plan", SITE, "--sky", "haze:4,haze:4.0"], "E_DUPLICATE  --sky"],
  ["turbidity of a clear sky", ["plan", SITE, "--sky", "clear:3"], "E_CHOICE  --sky"],
  ["a turbidity of words", ["plan", SITE, "--sky", "haze:thick"], "--sky"],
  ["a step of words", ["plan", SITE, "--step", "fast"], "E_OPTION  --step"],
  ["an endless step", ["plan", SITE, "--step", "Infinity"], "E_OPTION  --step"],
  ["an empty width", ["plan", SITE, "--width", ""], "E_OPTION  --width"],
  ["nothing to fail on", ["plan", SITE, "--fail-on", ""], "E_CHOICE  --fail-on"],
  ["a format in capitals", ["plan", SITE, "--format", "JSON"], "Did you mean json?"],
  ["an empty camera", ["view", SITE, ""], "E_NAME  CAMERA"],
  ["a T-0 before the window", ["view", SITE, "P01", "--at", "17:09:59"], "E_RANGE  --at"],
  ["a T-0 after the window", ["view", SITE, "P01", "--at", "19:40:01"], "E_RANGE  --at"],
  ["a T-0 of 25 hours", ["view", SITE, "P01", "--at", "25:00"], "E_TIME  --at"],
  ["a day of no calendar", ["sun", SITE, "--date", "2027-02-29"], "E_TIME  --date"],
  ["a date before 1900", ["sun", SITE, "--date", "1899-12-31"], "E_TIME  --date"],
  ["no EV", ["ev", "--ev", "fifteen"], "E_OPTION  --ev"],
  ["a shutter of nothing", ["ev", "--stop", "8", "--time", "0"], "E_OPTION  --time"],
];

describe.concurrent("a command line with", () => {
  it.each(LINES)("%s", async (_, args, says) => {
    const ran = await run(args);
    expect(ran.exit).toBe(2);
    expect(ran.stdout).toBe("");
    expect(ran.stderr).toContain(says);
    expect(ran.stderr).not.toMatch(TRACE);
  });
});

describe.concurrent("a T-0 at the very edge of the window", () => {
  // Half minutes are rounded like everywhere.
  const SHOWN = [
    ["17:10", "17:10"],
    ["19:40", "19:40"],
    ["2027-04-18T17:10:00Z", "17:10"],
    ["18:00:30.5", "18:01"],
  ] as const;

  it.each(SHOWN)("%s is explained", async (at, shown) => {
    const ran = await run(["view", SITE, "P01", "--step", "900", "--at", at]);
    expect(ran).toMatchObject({ exit: 0, stderr: "" });
    expect(ran.stdout).toContain(`HOW IT CAME ABOUT, T-0 ${shown}`);
  });
});
