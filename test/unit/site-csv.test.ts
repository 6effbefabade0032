/** Cameras from a table. */

import { describe, expect, it } from "vitest";
import { CAMERA_COLUMNS } from "../../src/site/cameraColumns.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import { siteJsonSchema } from "../../src/site/siteSchema.ts";
import { HEAD, problemsOf, VEHICLE } from "./siteText.ts";

const SITE = `${HEAD}${VEHICLE}cameras-from: c.csv\n`;
const cameras = (csv: string) => parseSite(SITE, { "c.csv": csv }).cameras;
const brief = (csv: string, site = SITE) =>
  problemsOf(site, { "c.csv": csv }).map(
    (p) => `${p.code} ${p.place?.file}:${p.place?.line}:${p.place?.column} ${p.key}`,
  );

describe("a camera table", () => {
  it("gives cameras with the keys of the file", () => {
    const [a, b] = cameras(
      'id,at.bearing,at.range,aim.up,azimuth,lens.focal,lens.stops,gate,gate.width,gate.height,keep,rate,shutter.time,filters,notes\r\nP1,143,1340 ft,35,,85,2.8 4 5.6,35mm 4-perf,,,body plume,96,1/500 s 1/1000 s,0 0.3,"two, words"\r\n07,,,,12°30\',50,f/2.8 f/4,,36,24,,,5 ms,,\r\n',
    );
    expect(a).toMatchObject({
      id: "P1",
      at: { kind: "bearing", bearingDeg: 143, rangeM: 408.432 },
      aim: { kind: "vehicle", upM: 35 },
      lens: { focalMm: 85, stops: [2.8, 4, 5.6] },
      gate: { name: "35mm 4-perf" },
      keep: ["body", "plume"],
      shutters: [{ markedS: 0.002 }, { markedS: 0.001 }],
      filterDensities: [0, 0.3],
      notes: "two, words",
    });
    expect(b).toMatchObject({
      id: "07",
      aim: { azimuthDeg: 12.5 },
      gate: { widthMm: 36 },
      shutters: [{ markedS: 0.005 }],
    });
    expect(b?.lens.stops).toEqual([2.8, 4]);
  });

  it("may begin with a byte order mark, and takes the file's defaults and cameras", () => {
    const site = `${HEAD}defaults: { gate: 16mm }\ncameras: [{ id: A, azimuth: 1, lens: { focal: 5 } }]\ncameras-from: c.csv`;
    const read = parseSite(site, { "c.csv": "\ufeffid,azimuth,lens.focal\nB,2,6\n\n" }).cameras;
    expect(read.map(({ id, gate }) => [id, gate.name])).toEqual([
      ["A", "16mm"],
      ["B", "16mm"],
    ]);
  });

  const HEADER = "id,azimuth,lens.focal,gate\n";
  it.each([
    ["a wrong value", `${HEADER}A,1,5,16mm\nB,"2",0.5,16mm\n`, ["E_RANGE c.csv:3:7 cameras[B].lens.focal"]],
    ["a wrong unit", `${HEADER}A,1 dge,5,16mm\n`, ["E_UNIT c.csv:2:3 cameras[A].azimuth"]],
    ["an unknown column", "id,azimuth,lens.focla,gate\nA,1,5,16mm\n", ["E_KEY c.csv:1:12 lens.focla"]],
    ["a column twice", "id,azimuth,lens.focal,gate,gate\nA,1,5,16mm,\n", ["E_CSV c.csv:1:28 gate"]],
    ["a row too long", `${HEADER}A,1,5,16mm,7\n`, ["E_CSV c.csv:2:12 table"]],
    ["a row too short", `${HEADER}A,1,5\n`, ["E_CSV c.csv:2:1 table"]],
    ["a quote that stays open", `${HEADER}"A,1,5,16mm\n`, ["E_CSV c.csv:2:1 table"]],
    ["an empty table", "", ["E_CSV c.csv:1:1 c.csv"]],
    ["a header only", HEADER, ["E_EMPTY site.yaml:3:15 cameras-from"]],
    ["a cell left out", `${HEADER}A,1,,16mm\n`, ["E_MISSING c.csv:2:1 cameras[A].lens.focal"]],
    ["no id", `${HEADER},1,5,16mm\n`, ["E_MISSING c.csv:2:1 cameras[1].id"]],
    ["an id twice", `${HEADER}A,1,5,16mm\nA,1,5,16mm\n`, ["E_DUPLICATE c.csv:3:1 cameras[A].id"]],
    [
      "gate by name and size",
      "id,azimuth,lens.focal,gate,gate.width,gate.height\nA,1,5,16mm,3,2\n",
      ["E_CONFLICT c.csv:2:7 gate"],
    ],
    [
      "after a line break in quotes",
      `id,notes,azimuth,lens.focal,gate\nA,"x\ny",1,5,16mm\nB,,1,0,16mm\n`,
      ["E_RANGE c.csv:4:6 cameras[B].lens.focal"],
    ],
    ["a control character", `${HEADER}"A\u0007",1,5,16mm\n`, ["E_CHARS c.csv:2:1 cameras[1].id"]],
  ])("%s is refused at its cell", (_, csv, expected) => {
    expect(brief(csv)).toEqual(expected);
  });

  it("suggests the column that was meant", () => {
    expect(problemsOf(SITE, { "c.csv": "id,azimuth,lens.focla,gate\nA,1,5,16mm\n" })[0]?.suggestion).toBe(
      "lens.focal",
    );
  });

  it("knows a column for every key of a camera", () => {
    const leaves = new Set<string>();
    const walk = (node: Record<string, unknown>, path: string): void => {
      const branches = (node["anyOf"] ?? []) as Record<string, unknown>[];
      const properties = node["properties"] as Record<string, Record<string, unknown>> | undefined;
      if (properties)
        for (const [key, child] of Object.entries(properties))
          walk(child, path === "" ? key : `${path}.${key}`);
      for (const branch of branches) walk(branch, path);
      if (!properties && branches.every((branch) => !branch["properties"])) leaves.add(path);
      if (branches.some((branch) => branch["type"] === "string")) leaves.add(path);
    };
    const schema = siteJsonSchema() as { properties: { cameras: { items: Record<string, unknown> } } };
    walk(schema.properties.cameras.items, "");
    leaves.delete("shutter");
    expect([...leaves].sort()).toEqual(Object.keys(CAMERA_COLUMNS).sort());
  });
});
