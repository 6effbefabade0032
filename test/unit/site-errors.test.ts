/** Every error of the site reader: text -> code, line, column, key, and the near miss. */

import { describe, expect, it } from "vitest";
import { AXIS, brief, CAMERAS, HEAD, problemsOf, VEHICLE, withCamera } from "./siteText.ts";

type Row = readonly [why: string, text: string, brief: string, suggestion: string | null];
const S = HEAD + VEHICLE + CAMERAS;
const AT = "at: { bearing: 90, range: 300 }";
const PLACE = "latitude: 45, longitude: -27";

const ROWS: readonly Row[] = [
  ["bad syntax", "site: {name: x", "E_YAML 1:15 file", null],
  ["tab as indent", "site:\n\tname: x", "E_YAML 2:1 file", null],
  ["two documents", `${S}---\na: 1`, "E_YAML 5:1 file", null],
  ["empty", "", "E_YAML 1:1 file", null],
  ["only a comment", "# nothing", "E_YAML 1:1 file", null],
  ["a list at the top", "- 1", "E_YAML 1:1 file", null],
  ["a word at the top", "hello", "E_YAML 1:1 file", null],
  ["an alias of nothing", `${S}horizon: *no`, "E_YAML 5:10 file", null],
  ["a custom tag", `${S}horizon: !x []`, "E_YAML 5:10 file", null],
  ["a key that is a list", `${S}? [a]\n: 1`, "E_KEY 5:3 ?", null],
  ["a key twice", `${S}site: {}`, "E_DUPLICATE 5:1 site", null],
  ["unknown key at the top", `${S}window: []`, "E_KEY 5:1 window", "windows"],
  ["unknown key, nothing near", `${S}zebra: []`, "E_KEY 5:1 zebra", null],
  [
    "unknown key deep",
    withCamera(`azimuth: 3, shutter: { tiem: 1/500 }`),
    "E_KEY 4:76 cameras[C].shutter.tiem",
    "time",
  ],
  ["no site", CAMERAS, "E_MISSING 1:1 site", null],
  ["no zone", `site: { name: x, latitude: 1, longitude: 2 }\n${CAMERAS}`, "E_MISSING 1:7 site.zone", null],
  ["wrong zone", S.replace("Azores", "Azroes"), "E_ZONE 1:27 site.zone", "Atlantic/Azores"],
  ["an offset as zone", S.replace("Atlantic/Azores", '"+01:00"'), "E_ZONE 1:27 site.zone", null],
  ["latitude too far", S.replace("latitude: 45", "latitude: 91"), "E_RANGE 1:54 site.latitude", null],
  ["latitude no number", S.replace("latitude: 45", "latitude: north"), "E_TYPE 1:54 site.latitude", null],
  ["not a number", S.replace("latitude: 45", "latitude: .nan"), "E_TYPE 1:54 site.latitude", null],
  ["infinite", S.replace("base: 5", "base: .inf"), "E_TYPE 2:43 vehicle.base", null],
  ["unknown unit", S.replace("base: 5", "base: 5 fet"), "E_UNIT 2:43 vehicle.base", "ft"],
  ["decimal comma", S.replace("diameter: 4", 'diameter: "3,7"'), "E_UNIT 2:34 vehicle.diameter", null],
  ["nothing written", S.replace("name: Test", "name: "), "E_TYPE 1:15 site.name", null],
  ["control character", S.replace("Test", '"a\\e[31m"'), "E_CHARS 1:15 site.name", null],
  ["C1 control", S.replace("Test", '"a\\x85b"'), "E_CHARS 1:15 site.name", null],
  ["bidi override", S.replace("Test", '"a\\u202eb"'), "E_CHARS 1:15 site.name", null],
  ["half a surrogate pair", S.replace("Test", '"a\\ud800b"'), "E_CHARS 1:15 site.name", null],
  ["no XML character", S.replace("Test", '"a\\uffffb"'), "E_CHARS 1:15 site.name", null],
  ["long name", S.replace("Test", "n".repeat(201)), "E_CHARS 1:15 site.name", null],
  ["empty name", S.replace("Test", '""'), "E_CHARS 1:15 site.name", null],
  [
    "magnetic bearings without a date",
    S.replace("name: Test", "name: T, bearings: magnetic"),
    "E_MISSING 1:28 site.bearings",
    null,
  ],
  ["no latitude", S.replace("latitude: 45, ", ""), "E_MISSING 1:7 site.latitude", null],
  ["a misspelt latitude", S.replace("latitude", "latitud"), "E_KEY 1:44 site.latitud", "latitude"],
  [
    "site both",
    S.replace("latitude: 45", "latitude: 45, utm: 26 north 500000 5000000"),
    "E_CONFLICT 1:63 site.utm",
    null,
  ],
  ["UTM of a site", `${S.replace(PLACE, "utm: 61 north 500000 5000000")}`, "E_RANGE 1:49 site.utm", null],
  ["MGRS of a site", `${S.replace(PLACE, "mgrs: 26TMR123")}`, "E_TYPE 1:50 site.mgrs", null],
  [
    "UTM of a site, not of the cameras placed about it",
    withCamera("azimuth: 3, at: { utm: 26 north 700000 5000000 }").replace(PLACE, "utm: 61 north 5 5"),
    "E_RANGE 1:49 site.utm",
    null,
  ],
  ["UTM no text", `${S.replace(PLACE, "utm: 26")}`, "E_TYPE 1:49 site.utm", null],
  ["no camera", HEAD, "E_EMPTY 1:1 cameras", null],
  ["empty camera list", `${HEAD}cameras: []`, "E_EMPTY 2:10 cameras", null],
  ["cameras no list", `${HEAD}cameras: 3`, "E_TYPE 2:10 cameras", null],
  ["camera no map", `${S}  - 3`, "E_TYPE 5:5 cameras[2]", null],
  [
    "camera without id",
    `${HEAD}cameras:\n  - ${AXIS.replace("id: A, ", "")}`,
    "E_MISSING 3:5 cameras[1].id",
    null,
  ],
  ["camera id twice", `${S}  - ${AXIS}`, "E_DUPLICATE 5:11 cameras[A].id", null],
  ["no direction", withCamera("rate: 5"), "E_MISSING 4:5 cameras[C].aim", null],
  ["aim without place", withCamera("aim: { up: 3 }"), "E_MISSING 4:5 cameras[C].at", null],
  [
    "aim and azimuth",
    withCamera(`${AT}, aim: { up: 3 }, azimuth: 3`),
    "E_CONFLICT 4:111 cameras[C].azimuth",
    null,
  ],
  ["track up too high", withCamera(`${AT}, track: { up: 51 }`), "E_RANGE 4:99 cameras[C].track.up", null],
  ["track part", withCamera(`${AT}, track: { part: nase }`), "E_CHOICE 4:101 cameras[C].track.part", "nose"],
  ["at half", withCamera("azimuth: 3, at: { bearing: 3 }"), "E_MISSING 4:69 cameras[C].at.range", null],
  [
    "at both",
    withCamera("azimuth: 3, at: { bearing: 3, latitude: 4 }"),
    "E_CONFLICT 4:69 cameras[C].at",
    null,
  ],
  [
    "at both grids",
    withCamera("azimuth: 3, at: { utm: 26 north 700000 5000000, mgrs: 26TMR1212 }"),
    "E_CONFLICT 4:69 cameras[C].at",
    null,
  ],
  [
    "at UTM and a bearing",
    withCamera("azimuth: 3, at: { utm: 26 north 700000 5000000, bearing: 3 }"),
    "E_CONFLICT 4:69 cameras[C].at",
    null,
  ],
  [
    "at UTM",
    withCamera("azimuth: 3, at: { utm: 26 north 7000000 5000000 }"),
    "E_RANGE 4:76 cameras[C].at.utm",
    null,
  ],
  [
    "at another zone",
    withCamera("azimuth: 3, at: { utm: 27 north 500000 5000000 }"),
    "E_RANGE 4:69 cameras[C].at",
    null,
  ],
  ["aim by MGRS", withCamera(`${AT}, aim: { mgrs: 26TXX1212 }`), "E_CHOICE 4:99 cameras[C].aim.mgrs", null],
  [
    "at the pad",
    withCamera("azimuth: 3, at: { bearing: 3, range: 1.9 }"),
    "E_AT_PAD 4:69 cameras[C].at",
    null,
  ],
  [
    "gate",
    `${S}  - { id: B, azimuth: 3, lens: { focal: 5 }, gate: full-fram }`,
    "E_CHOICE 5:52 cameras[B].gate",
    "full-frame",
  ],
  [
    "gate half",
    `${S}  - { id: B, azimuth: 3, lens: { focal: 5 }, gate: { width: 3 } }`,
    "E_MISSING 5:52 cameras[B].gate.height",
    null,
  ],
  ["no gate", `${S}  - { id: B, azimuth: 3, lens: { focal: 5 } }`, "E_MISSING 5:5 cameras[B].gate", null],
  [
    "no focal length",
    `${S}  - { id: B, azimuth: 3, gate: 16mm }`,
    "E_MISSING 5:5 cameras[B].lens.focal",
    null,
  ],
  [
    "focal length",
    `${S}  - { id: B, azimuth: 3, gate: 16mm, lens: { focal: 21 m } }`,
    "E_RANGE 5:53 cameras[B].lens.focal",
    null,
  ],
  [
    "angle without rate",
    withCamera("azimuth: 3, shutter: { angle: 90 }"),
    "E_MISSING 4:5 cameras[C].rate",
    null,
  ],
  [
    "time longer than a frame",
    withCamera("azimuth: 3, rate: 100, shutter: { time: 1/50 }"),
    "E_CONFLICT 4:85 cameras[C].shutter",
    null,
  ],
  [
    "angle and time",
    withCamera("azimuth: 3, rate: 9, shutter: { time: 1/50, angle: 3 }"),
    "E_CONFLICT 4:83 cameras[C].shutter",
    null,
  ],
  [
    "unknown medium",
    `${withCamera("azimuth: 3, medium: flim")}media: { film: { speed: 5, kind: sensor } }`,
    "E_NAME 4:73 cameras[C].medium",
    "film",
  ],
  [
    "built-in medium without speed",
    withCamera("azimuth: 3, medium: sensor"),
    "E_NAME 4:73 cameras[C].medium",
    null,
  ],
  [
    "medium without range",
    `${S}media: { film: { speed: 5, under: 3 } }`,
    "E_MISSING 5:16 media.film.over",
    null,
  ],
  [
    "medium kind",
    `${S}media: { film: { speed: 5, kind: sensr } }`,
    "E_CHOICE 5:34 media.film.kind",
    "sensor",
  ],
  ["keep unknown", withCamera("azimuth: 3, keep: [plumr]"), "E_CHOICE 4:72 cameras[C].keep[1]", "plume"],
  ["keep empty", withCamera("azimuth: 3, keep: []"), "E_EMPTY 4:71 cameras[C].keep", null],
  [
    "keep plume without plume",
    withCamera("azimuth: 3, keep: plume").replace(", plume: { propellant: kerolox }", ""),
    "E_CONFLICT 4:71 cameras[C].keep",
    null,
  ],
  [
    "keep body without vehicle",
    withCamera("azimuth: 3, keep: body").replace(VEHICLE, ""),
    "E_CONFLICT 3:71 cameras[C].keep",
    null,
  ],
  [
    "track without vehicle",
    withCamera(`${AT}, track: { part: nose }`).replace(VEHICLE, ""),
    "E_CONFLICT 3:93 cameras[C].track",
    null,
  ],
  ["propellant", S.replace("kerolox", "keralox"), "E_CHOICE 2:67 vehicle.plume.propellant", "kerolox"],
  ["plume of nothing", S.replace("propellant: kerolox", "length: 3"), "E_MISSING 2:53 vehicle.plume", null],
  ["ascent file missing", S.replace("base: 5", "ascent: up.csv"), "E_FILE 2:45 vehicle.ascent", null],
  ["ascent no table", S.replace("base: 5", "ascent: up.txt"), "E_FILE 2:45 vehicle.ascent", null],
  [
    "ascent too weak",
    S.replace("base: 5", "ascent: { thrustToWeight: 1 }"),
    "E_RANGE 2:63 vehicle.ascent.thrustToWeight",
    null,
  ],
  [
    "ascent unknown key",
    S.replace("base: 5", "ascent: { thrustToWeigt: 2 }"),
    "E_KEY 2:47 vehicle.ascent.thrustToWeigt",
    "thrustToWeight",
  ],
  [
    "more burned than there is",
    S.replace("base: 5", "ascent: { thrustToWeight: 2, massFlow: 1%, burn: 100 }"),
    "E_CONFLICT 2:86 vehicle.ascent.burn",
    null,
  ],
  [
    "pitch without heading",
    S.replace("base: 5", "ascent: { thrustToWeight: 2, pitch: [[0, 90]] }"),
    "E_CONFLICT 2:73 vehicle.ascent.pitch",
    null,
  ],
  [
    "pitch out of order",
    S.replace("base: 5", "ascent: { heading: 1, thrustToWeight: 2, pitch: [[9, 90], [8, 80]] }"),
    "E_ORDER 2:95 vehicle.ascent.pitch[2]",
    null,
  ],
  [
    "track offset out of the picture",
    withCamera(`${AT}, track: { part: nose, offset: 60% }`),
    "E_RANGE 4:115 cameras[C].track.offset",
    null,
  ],
  [
    "track slew",
    withCamera(`${AT}, track: { part: nose, slew: { azimut: 9 } }`),
    "E_KEY 4:115 cameras[C].track.slew.azimut",
    "azimuth",
  ],
  [
    "box without depth",
    `${S}structures: [{ name: x, at: { bearing: 3, range: 4 }, height: 3, width: 3 }]`,
    "E_MISSING 5:14 structures[x].depth",
    null,
  ],
  [
    "cylinder with width",
    `${S}structures: [{ name: x, shape: cylinder, at: { bearing: 3, range: 4 }, height: 3, width: 3, diameter: 4 }]`,
    "E_CONFLICT 5:90 structures[x].width",
    null,
  ],
  [
    "structure twice",
    `${S}structures:\n${"  - { name: x, at: { bearing: 3, range: 4 }, height: 3, diameter: 3 }\n".repeat(2)}`,
    "E_DUPLICATE 7:13 structures[x].name",
    null,
  ],
  [
    "structure named vehicle",
    `${S}structures: [{ name: Vehicle, at: { bearing: 3, range: 4 }, height: 3, diameter: 3 }]`,
    "E_CONFLICT 5:22 structures[Vehicle].name",
    null,
  ],
  [
    "camera inside a structure",
    `${withCamera("azimuth: 3, at: { bearing: 90, range: 300 }")}structures: [{ name: x, at: { bearing: 90, range: 301 }, height: 3, base: -1, diameter: 3 }]`,
    "E_CONFLICT 4:69 cameras[C].at",
    null,
  ],
  ["horizon point", `${S}horizon: [[1, 2], [3]]`, "E_TYPE 5:19 horizon[2]", null],
  ["horizon point too long", `${S}horizon: [[1, 2, 3]]`, "E_TYPE 5:11 horizon[1]", null],
  ["horizon empty", `${S}horizon: []`, "E_EMPTY 5:10 horizon", null],
  ["horizon of one point", `${S}horizon: [[5, 2]]`, "E_EMPTY 5:10 horizon", null],
  ["horizon no list", `${S}horizon: 3`, "E_TYPE 5:10 horizon", null],
  ["horizon unsorted", `${S}horizon: [[0, 2], [120, 3], [60, 1]]`, "E_ORDER 5:30 horizon[3][1]", null],
  ["horizon twice", `${S}horizon: [[0, 2], [120, 3], [360, 1]]`, "E_DUPLICATE 5:30 horizon[3][1]", null],
  ["floodlights", `${S}floodlights: { illuminance: 5 lxx }`, "E_UNIT 5:29 floodlights.illuminance", "lx"],
  [
    "floodlights on the deck alone",
    `${S}floodlights: { deck: 300 }`,
    "E_MISSING 5:14 floodlights.illuminance",
    null,
  ],
  [
    "floodlights on the deck, too bright",
    `${S}floodlights: { illuminance: 5, deck: 1000.1 klx }`,
    "E_RANGE 5:38 floodlights.deck",
    null,
  ],
  [
    "window time",
    `${S}windows: [{ opens: 2027-04-31T10:00, closes: 2027-05-01T10:00Z }]`,
    "E_TIME 5:20 windows[1].opens",
    null,
  ],
  [
    "window in a gap",
    `${S}windows: [{ opens: 2027-03-28T00:30, closes: 2027-03-28T02:00 }]`,
    "E_GAP 5:20 windows[1].opens",
    null,
  ],
  [
    "window in a doubled hour",
    `${S}windows: [{ opens: 2027-10-31T00:30, closes: 2027-10-31T02:00 }]`,
    "E_TWICE 5:20 windows[1].opens",
    null,
  ],
  [
    "window backwards",
    `${S}windows: [{ name: w, opens: 2027-05-01T10:00, closes: 2027-05-01T09:00 }]`,
    "E_ORDER 5:55 windows[w].closes",
    null,
  ],
  [
    "window too long",
    `${S}windows: [{ name: w, opens: 2027-05-01T10:00, closes: 2027-05-08T10:01 }]`,
    "E_RANGE 5:55 windows[w].closes",
    null,
  ],
  [
    "window twice",
    `${S}windows:\n${"  - { name: w, opens: 2027-05-01T10:00, closes: 2027-05-01T11:00 }\n".repeat(2)}`,
    "E_DUPLICATE 7:13 windows[w].name",
    null,
  ],
  [
    "correction of no camera",
    `${S}corrections: { cameras: { B: 1 } }`,
    "E_NAME 5:30 corrections.cameras.B",
    null,
  ],
  [
    "correction of no sky",
    `${S}corrections: { sky: { hase: 1 } }`,
    "E_KEY 5:23 corrections.sky.hase",
    "haze",
  ],
  ["settings out of order", `${S}settings: { front: 100, back: 90 }`, "E_ORDER 5:20 settings.front", null],
  ["shaded share", `${S}settings: { shaded: 50 }`, "E_RANGE 5:21 settings.shaded", null],
  ["cover margin", `${S}settings: { cover: 10.1 }`, "E_RANGE 5:20 settings.cover", null],
  ["camera table missing", `${HEAD}cameras-from: c.csv`, "E_FILE 2:15 cameras-from", null],
  ["camera table no csv", `${HEAD}cameras-from: c.ods`, "E_FILE 2:15 cameras-from", null],
];

describe("a wrong site file", () => {
  it.each(ROWS)("%s", (_, text, expected, suggestion) => {
    const problems = problemsOf(text);
    expect(brief(problems)).toEqual([expected]);
    expect(problems[0]?.suggestion).toBe(suggestion);
  });

  it("is a sound file without the mistake", () => {
    expect(problemsOf(S)).toEqual([]);
    expect(problemsOf(withCamera("azimuth: 3"))).toEqual([]);
  });

  it("tells all its problems at once, in the order of the lines", () => {
    const text = `${HEAD.replace("45", "95")}camera: 1\ncameras:\n  - { id: B, azimuth: x, lens: { focal: 0, hod: 1 }, gate: nope }\n  - { id: B }\nwindows: [{ opens: 1, closes: 2 }]\n`;
    expect(brief(problemsOf(text))).toEqual([
      "E_RANGE 1:54 site.latitude",
      "E_KEY 2:1 camera",
      "E_TYPE 4:23 cameras[B].azimuth",
      "E_RANGE 4:41 cameras[B].lens.focal",
      "E_KEY 4:44 cameras[B].lens.hod",
      "E_CHOICE 4:60 cameras[B].gate",
      "E_MISSING 5:5 cameras[B].aim",
      "E_MISSING 5:5 cameras[B].lens.focal",
      "E_MISSING 5:5 cameras[B].gate",
      "E_DUPLICATE 5:11 cameras[B].id",
      "E_TIME 6:20 windows[1].opens",
      "E_TIME 6:31 windows[1].closes",
    ]);
  });

  it("shows the source line, made safe, with the value under its column", () => {
    const [first] = problemsOf(S.replace("latitude: 45", "latitude: 95").replace("Test", '"T\u202e"'));
    expect(first?.place?.sourceLine).toContain('"T\ufffd"');
    const latitude = problemsOf(S.replace("latitude: 45", "latitude: 95"))[0]?.place;
    expect(latitude?.sourceLine?.slice(latitude.column - 1, latitude.column - 1 + latitude.lengthChars)).toBe(
      "95",
    );
  });

  it("cuts the tail of a long line and keeps the column", () => {
    const place = problemsOf(
      `${HEAD}cameras: [${AXIS.replace("full-frame", "nope")}, ${AXIS.padEnd(900, " ")}]`,
    )[0]?.place;
    expect(place?.sourceLine?.length).toBeLessThan(210);
    expect(place?.sourceLine?.slice((place?.column ?? 0) - 1).startsWith("nope")).toBe(true);
  });

  it("repeats no control character of a name", () => {
    const names = `media: { "m\\e[31m": { speed: x, kind: sensor } }\n"k\\e[31m": 1\n"k\\e[31m": 1\n`;
    for (const text of [
      S + names,
      S + names.slice(0, -12),
      `${S}corrections: { cameras: { "B\\x9b": 1 } }`,
    ]) {
      const problems = problemsOf(text);
      expect(problems.length).toBeGreaterThan(0);
      for (const p of problems) {
        for (const part of [p.key, p.found, p.accepted, p.suggestion, p.next, p.place?.sourceLine]) {
          expect(part ?? "").not.toMatch(/\p{Cc}/u);
        }
      }
    }
  });

  it("says which line has the other of two equal ids", () => {
    expect(problemsOf(`${S}  - ${AXIS}`)[0]?.found).toContain("site.yaml:4");
  });
});

describe("a hostile text", () => {
  const levels = "bcdefghi"
    .split("")
    .map((c, i) => `${c}: &${c} [${Array(9).fill(`*${"abcdefghi"[i]}`).join(",")}]`);
  const bomb = `a: &a [x,x,x,x,x,x,x,x,x]\n${levels.join("\n")}`;
  const TEXTS: readonly (readonly [string, string, string])[] = [
    ["aliases that multiply", bomb, "E_YAML"],
    ["ten million characters", "a".repeat(10_000_000), "E_SIZE"],
    ["a deep list", "[".repeat(20_000), "E_YAML"],
    ["a deep list of dashes", "- ".repeat(20_000), "E_YAML"],
    ["many aliases", `x: &x 1\ny: [${Array(5000).fill("*x").join(",")}]`, "E_YAML"],
    ["a map inside itself", "site: &a { name: *a }", "E_MISSING"],
    ["__proto__", `${S}__proto__: { zone: x }`, "E_KEY"],
    ["a null character", `${S}\u0000: 1`, "E_KEY"],
  ];
  it.each(TEXTS)("%s is refused quickly", (_, text, code) => {
    const start = performance.now();
    expect(problemsOf(text).map((p) => p.code)).toContain(code);
    expect(performance.now() - start).toBeLessThan(3000);
  });

  it("may use anchors in moderation", () => {
    const text = `${HEAD}defaults: { filters: &f [0, 0.3] }\ncameras:\n${Array.from({ length: 200 }, (_, i) => `  - { id: C${i}, azimuth: 1, lens: { focal: 5 }, gate: 16mm, filters: *f }\n`).join("")}`;
    expect(problemsOf(text)).toEqual([]);
  });
});
