/** Sheet, CSV and JSON say the same; every figure is finite, every time a UTC instant of the window, every null has a reason. */

import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Papa from "papaparse";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { run, SITES } from "./run.ts";

interface Setting {
  readonly stop: number;
  readonly shutterS: number;
  readonly shutterName: string;
  readonly shutterAngleDeg: number | null;
  readonly filterDensity: number;
  readonly holds: number;
  readonly spareStops: number;
  readonly worst: { readonly at: string; readonly thing: string; readonly stops: number };
}
interface CameraJson {
  readonly id: string;
  readonly axis: { readonly rangeM: number | null };
  readonly light: readonly { readonly ev: number | null; readonly tableEv: number | null }[];
  readonly sun: { readonly risk: string; readonly closest: object | null };
  readonly setting: Setting | null;
  readonly bySky: readonly { readonly sky: string; readonly setting: Setting | null }[];
  readonly notes: readonly string[];
}
interface PlanJson {
  readonly window: { readonly opens: string; readonly closes: string };
  readonly sky: readonly string[];
  readonly sun: readonly { readonly at: string }[];
  readonly cameras: readonly CameraJson[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

const SKERRY = [join(SITES, "skerry-vane.yaml"), "--sky", "clear,haze", "--step", "600", "-q"];
const planJson = async (args: readonly string[]): Promise<PlanJson> =>
  JSON.parse((await run(["plan", ...args, "--format", "json"])).stdout) as PlanJson;
const planRows = async (args: readonly string[]): Promise<Record<string, string>[]> =>
  Papa.parse<Record<string, string>>((await run(["plan", ...args, "--format", "csv"])).stdout, {
    header: true,
    skipEmptyLines: true,
  }).data;

/** Every number, text and null of a value, with the keys that lead to it. */
function leaves(value: unknown, path = ""): { path: string; value: unknown }[] {
  if (typeof value !== "object" || value === null) return [{ path, value }];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, `${path}.${key}`));
}

const words = (setting: Setting): string =>
  `f/${setting.stop} ${setting.shutterAngleDeg === null ? "" : `${setting.shutterAngleDeg}° `}${setting.shutterName}${setting.filterDensity > 0 ? ` ND${setting.filterDensity}` : ""}`;

describe("the demo plan", () => {
  let plan: PlanJson;
  let rows: Record<string, string>[];
  let sheet = "";
  beforeAll(async () => {
    plan = await planJson(SKERRY);
    rows = await planRows(SKERRY);
    sheet = (await run(["plan", ...SKERRY, "--width", "250"])).stdout;
  });

  it("tells the same settings in JSON and CSV", () => {
    expect(plan.cameras.length).toBe(26);
    expect(rows.length).toBe(26 * 3);
    for (const camera of plan.cameras) {
      for (const { sky, setting } of [...camera.bySky, { sky: "one for all", setting: camera.setting }]) {
        const row = rows.find((one) => one["id"] === camera.id && one["sky"] === sky)!;
        const told = ["stop", "shutterS", "filterDensity", "holds", "spareStops"].map((key) =>
          Number(row[key]),
        );
        expect(told, `${camera.id} ${sky}`).toEqual([
          setting!.stop,
          setting!.shutterS,
          setting!.filterDensity,
          setting!.holds,
          setting!.spareStops,
        ]);
        expect([row["worstThing"], row["worstUtc"]]).toEqual([setting!.worst.thing, setting!.worst.at]);
      }
    }
  });

  it("tells the same settings on the sheet", () => {
    for (const camera of plan.cameras) {
      const line = sheet.split("\n").find((one) => one.startsWith(`${camera.id} `))!;
      const told = [...camera.bySky.map(({ setting }) => setting), camera.setting].map((one) => words(one!));
      const found = [...line.matchAll(/f\/[\d.]+ (?:[\d.]+° )?\S+(?: ND[\d.]+)?(?= [+-])/g)].map(
        ([text]) => text,
      );
      expect(found, camera.id).toEqual(told);
    }
  });

  it("never makes a spare look better than it is, and calls 100 % only what holds always", () => {
    for (const camera of plan.cameras) {
      const line = sheet.split("\n").find((one) => one.startsWith(`${camera.id} `))!;
      const margins = [...line.matchAll(/([+-]\d+\.\d) (\d+) %/g)];
      const settings = [...camera.bySky.map(({ setting }) => setting!), camera.setting!];
      expect(margins.length).toBe(settings.length);
      margins.forEach(([, spare, percent], i) => {
        // JSON figures are rounded to a hundredth.
        expect(Number(spare)).toBeLessThanOrEqual(settings[i]!.spareStops + 0.006);
        expect(Number(percent) === 100).toBe(settings[i]!.holds === 1);
      });
    }
  });

  it("says a clipped margin in the notes with the same figure as in the table", () => {
    for (const camera of plan.cameras.filter(({ setting }) => setting!.spareStops < -0.05)) {
      const line = sheet.split("\n").find((one) => one.startsWith(`${camera.id} `))!;
      const shown = [...line.matchAll(/-(\d+\.\d) \d+ %/g)].at(-1)![1]!;
      const told = camera.notes.join("; ").match(/(\d+\.\d) stops (?:under|over)/g)!;
      expect(
        told.some((words) => words.startsWith(shown)),
        `${camera.id}: ${shown} against ${told.join(", ")}`,
      ).toBe(true);
    }
  });
});

const PLANS: readonly (readonly [string, readonly string[]])[] = [
  ["afternoon", SKERRY],
  ["polar day", [join(SITES, "long-day.yaml"), "--step", "900"]],
  ["polar night", [join(SITES, "long-day.yaml"), "--step", "900", "--window", "2027-12-20T11:00/PT2H"]],
  ["sun overhead", [join(SITES, "calm-parallel.yaml"), "--step", "900", "--sky", "overcast,haze:9"]],
  ["midnight", [join(SITES, "skerry-vane.yaml"), "--step", "900", "--window", "2027-04-18T23:30/PT1H"]],
];

describe.concurrent("the JSON of", () => {
  it.each(PLANS)("%s is finite, in UTC and in the window", async (_, args) => {
    const plan = await planJson(args);
    const opens = Date.parse(plan.window.opens);
    const closes = Date.parse(plan.window.closes);
    const {
      events: _events,
      eventsAtClose: _eventsAtClose,
      ...rest
    } = plan as PlanJson & Record<"events" | "eventsAtClose", unknown>;
    let times = 0;
    for (const { path, value } of leaves(rest)) {
      if (typeof value === "number") expect(Number.isFinite(value), path).toBe(true);
      if (typeof value !== "string" || !/^\d{4}-\d\d-\d\dT/.test(value)) continue;
      times++;
      expect(value, path).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/);
      expect(Date.parse(value), path).toBeGreaterThanOrEqual(opens);
      expect(Date.parse(value), path).toBeLessThanOrEqual(closes);
    }
    expect(times).toBeGreaterThan(50);
    expect(plan.sun.every(({ at }, i) => i === 0 || at > plan.sun[i - 1]!.at)).toBe(true);
  });

  it.each(PLANS)("%s gives a reason for every null", async (_, args) => {
    const plan = await planJson(args);
    for (const { id, axis, light, sun, setting, notes } of plan.cameras) {
      const says = (pattern: RegExp): void => expect(notes.join("; "), id).toMatch(pattern);
      if (axis.rangeM === null) says(/range.* not known/);
      if (light.some(({ tableEv }) => tableEv === null)) says(/guide EV: none/);
      if (light.some(({ ev }) => ev === null)) says(/dark/);
      if (sun.closest === null) says(/sun (is )?down|below the horizon/);
      if (setting === null) says(/no setting/);
      expect(sun.closest === null).toBe(sun.risk === "down");
    }
  });
});

describe("names from the file", () => {
  const NAMES = [
    "=1+1",
    "+A1",
    "-B2",
    "@C3",
    "=cmd|' /C calc'!A0",
    'quote "q"',
    "comma, comma",
    "עדשה",
    "相機",
  ];
  let folder = "";
  const site = (): string => join(folder, "names.yaml");
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "padstop-"));
    const cameras = [...NAMES, "constructor", "toString", "valueOf", "n".repeat(200)].map(
      (id) =>
        `  - { id: ${JSON.stringify(id)}, at: { bearing: 90, range: 300 }, aim: { up: 15 }, lens: { focal: 85 } }`,
    );
    writeFileSync(
      site(),
      `site: { name: "=Names", zone: UTC, latitude: 45, longitude: 0 }
vehicle: { height: 30, diameter: 3 }
media: { chip: { speed: 400, kind: sensor } }
defaults: { medium: chip, lens: { stops: [4, 5.6, 8, 11] }, filters: [0, 0.9], gate: full-frame, rate: 200, shutter: { time: 1/500 } }
cameras:
${cameras.join("\n")}
windows: [{ opens: 2027-04-18T11:10, closes: 2027-04-18T12:10 }]
`,
    );
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it("are no formulas in a spreadsheet", async () => {
    const ran = await run(["plan", site(), "--format", "csv", "--step", "3600"]);
    expect(ran.exit).toBe(0);
    const cells = Papa.parse<string[]>(ran.stdout).data.map(([first]) => first!);
    for (const name of NAMES) {
      expect(cells).toContain(/^[=+\-@]/.test(name) ? `'${name}` : name);
    }
  });

  it("give every camera the same plan, whatever word of the language they are", async () => {
    const plan = await planJson([site(), "--step", "3600"]);
    const [first, ...others] = plan.cameras;
    for (const { id, setting, light } of others) {
      expect(setting, id).toEqual(first!.setting);
      expect(light, id).toEqual(first!.light);
    }
  });

  it("are found by view, whole, in any case", async () => {
    const ran = await run(["view", site(), "N".repeat(200), "--step", "3600"]);
    expect(ran.exit).toBe(0);
    expect(ran.stdout.split("\n")[0]).toBe(`${"n".repeat(200)} at =Names`);
  });
});

describe("the sheet's width", () => {
  it.each([
    ["plan", join(SITES, "skerry-vane.yaml"), "--sky", "clear,haze,overcast"],
    ["plan", join(SITES, "long-day.yaml")],
    ["plan", join(SITES, "calm-parallel.yaml")],
    ["view", join(SITES, "skerry-vane.yaml"), "P04", "--explain"],
    ["sun", join(SITES, "skerry-vane.yaml")],
    ["ev"],
    ["check", join(SITES, "skerry-vane.yaml")],
  ])("%s %s fits 80 columns", async (...args) => {
    const { stdout } = await run([...args.filter((arg) => arg !== undefined)]);
    expect(stdout.split("\n").filter((line) => [...line].length > 80)).toEqual([]);
  });
});
