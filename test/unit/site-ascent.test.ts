/** Ascents and trackers in a site file: what each form gives, and where it is refused. */

import { describe, expect, it } from "vitest";
import { parseSite, referencedFiles } from "../../src/site/parseSite.ts";
import { trackedUpM } from "../../src/site/trackedPoint.ts";
import { type Ascent, TRACK_PARTS } from "../../src/site/types.ts";
import { brief, CAMERAS, HEAD, problemsOf, VEHICLE, withCamera } from "./siteText.ts";

const DOWNRANGE = "t (s),downrange (m),altitude (m)\n0,0,0\n1,0.5,3\n";
const ENU = "t_s,east_m,north_m,up_m\n0,0,0,0\n1,1,2,3\n";
const FILES = { "enu.csv": ENU, "down.csv": DOWNRANGE, "bad.csv": ENU.replace("1,1", "1,x") };
const siteWith = (ascent: string, head = HEAD): string =>
  head + VEHICLE.replace("base: 5", `ascent: ${ascent}`) + CAMERAS;
const ascentOf = (ascent: string, head = HEAD): Ascent | null | undefined =>
  parseSite(siteWith(ascent, head), FILES).vehicle?.ascent;
const problemsWith = (ascent: string): readonly string[] => brief(problemsOf(siteWith(ascent), FILES));

describe("an ascent", () => {
  it.each(["enu.csv", "{ table: enu.csv }"])("as %s is the table", (written) => {
    const rest = { tPlusS: 0, eastM: 0, northM: 0, upM: 0 };
    expect(ascentOf(written)).toEqual({
      kind: "table",
      fileName: "enu.csv",
      headingDeg: null,
      table: { kind: "enu", points: [rest, { tPlusS: 1, eastM: 1, northM: 2, upM: 3 }] },
    });
  });

  it("of downrange has a true heading", () => {
    const magnetic = HEAD.replace("name: Test", "name: T, bearings: -10");
    expect(ascentOf("{ table: down.csv, heading: 5 }", magnetic)).toMatchObject({
      headingDeg: 355,
      table: { kind: "downrange", points: [{ downrangeM: 0 }, { tPlusS: 1, downrangeM: 0.5, altitudeM: 3 }] },
    });
  });

  it("of parameters has them in SI, and null for what is not given", () => {
    expect(ascentOf("{ thrustToWeight: 1.3 }")).toEqual({
      kind: "parameters",
      headingDeg: null,
      thrustToWeight: 1.3,
      massFlowPerS: null,
      burnS: null,
      pitch: null,
    });
    const written =
      '{ heading: 82, thrustToWeight: 1.35, massFlow: 0.45%, burn: 2.5 min, pitch: [[0, 90], [12 s, 90], [60, "62°"], [150, -30]] }';
    expect(ascentOf(written)).toEqual({
      kind: "parameters",
      headingDeg: 82,
      thrustToWeight: 1.35,
      massFlowPerS: expect.closeTo(0.0045, 12),
      burnS: 150,
      pitch: [
        [0, 90],
        [12, 90],
        [60, 62],
        [150, -30],
      ].map(([tPlusS, pitchDeg]) => ({ tPlusS, pitchDeg })),
    });
    expect(ascentOf("{ thrustToWeight: 2, massFlow: 0, burn: 1000 }")).toMatchObject({ massFlowPerS: 0 });
  });

  it.each([
    ["3", ["E_TYPE 2:45 vehicle.ascent"]],
    ["up.csv", ["E_FILE 2:45 vehicle.ascent"]],
    ["{ table: up.csv }", ["E_FILE 2:54 vehicle.ascent.table"]],
    ["{ table: up.txt }", ["E_FILE 2:54 vehicle.ascent.table"]],
    ["{ heading: 82 }", ["E_MISSING 2:45 vehicle.ascent"]],
    ["{ heading: 82, burn: 9 }", ["E_MISSING 2:45 vehicle.ascent.thrustToWeight"]],
    ["{ table: enu.csv, burn: 9 }", ["E_CONFLICT 2:69 vehicle.ascent.burn"]],
    ["{ table: enu.csv, headin: 9 }", ["E_KEY 2:63 vehicle.ascent.headin"]],
    ["down.csv", ["E_MISSING 2:45 vehicle.ascent"]],
    ["{ table: down.csv }", ["E_MISSING 2:45 vehicle.ascent"]],
    ["{ table: enu.csv, heading: 9 }", ["E_CONFLICT 2:72 vehicle.ascent.heading"]],
    ["bad.csv", ["E_TYPE 3:3 east_m"]],
    ["{ thrustToWeight: 2, massFlow: 0.0501 }", ["E_RANGE 2:76 vehicle.ascent.massFlow"]],
    ["{ thrustToWeight: 2, burn: 0.9 }", ["E_RANGE 2:72 vehicle.ascent.burn"]],
    ["{ thrustToWeight: 2, burn: 1001 }", ["E_RANGE 2:72 vehicle.ascent.burn"]],
    ["{ thrustToWeight: 2, massFlow: 1%, burn: 95 }", ["E_CONFLICT 2:86 vehicle.ascent.burn"]],
    ["{ thrustToWeight: 2, pitch: [[0, 90]] }", ["E_CONFLICT 2:73 vehicle.ascent.pitch"]],
    ["{ heading: 1, thrustToWeight: 2, pitch: [] }", ["E_EMPTY 2:85 vehicle.ascent.pitch"]],
    ["{ heading: 1, thrustToWeight: 2, pitch: [[0]] }", ["E_TYPE 2:86 vehicle.ascent.pitch[1]"]],
    ["{ heading: 1, thrustToWeight: 2, pitch: [[-1, 90]] }", ["E_RANGE 2:87 vehicle.ascent.pitch[1][1]"]],
    ["{ heading: 1, thrustToWeight: 2, pitch: [[0, 91]] }", ["E_RANGE 2:90 vehicle.ascent.pitch[1][2]"]],
    ["{ heading: 1, thrustToWeight: 2, pitch: [[3, 9], [3, 8]] }", ["E_ORDER 2:94 vehicle.ascent.pitch[2]"]],
  ])("as %s is refused", (written, expected) => {
    expect(problemsWith(written)).toEqual(expected);
  });

  it("without a heading that it needs tells how to write it", () => {
    const [missing] = problemsOf(siteWith("down.csv"), FILES);
    expect(missing?.next).toBe("write ascent: { table: down.csv, heading: 82 }");
    const [burned] = problemsOf(siteWith("{ thrustToWeight: 2, massFlow: 1%, burn: 96 }"), FILES);
    expect(burned?.found).toBe("massFlow 0.01 for a burn of 96 s: 96 % of the lift-off mass");
  });

  it("names its table among the files of the site", () => {
    expect(referencedFiles(siteWith("{ table: down.csv, heading: 5 }"))).toEqual(["down.csv"]);
    expect(referencedFiles(siteWith("enu.csv"))).toEqual(["enu.csv"]);
    expect(referencedFiles(siteWith("{ table: [a.csv] }"))).toEqual([]);
  });
});

describe("a tracker", () => {
  const AT = "at: { bearing: 90, range: 300 }";
  const trackOf = (track: string) => parseSite(withCamera(`${AT}, track: ${track}`)).cameras[0];

  it("has where its point stands in the picture, and what its mount can do", () => {
    expect(trackOf("{ part: nose }")?.track).toEqual({
      kind: "part",
      part: "nose",
      offsetShare: 0,
      mostAzimuthDegS: null,
      mostElevationDegS: null,
    });
    expect(trackOf("{ up: 30, offset: 20%, slew: { azimuth: 20, elevation: 12.5 deg/s } }")?.track).toEqual({
      kind: "up",
      upM: 30,
      offsetShare: expect.closeTo(0.2, 12),
      mostAzimuthDegS: 20,
      mostElevationDegS: 12.5,
    });
  });

  it("aims at the part it follows: halves at their middles", () => {
    const ups = TRACK_PARTS.map((part) => trackedUpM({ kind: "part", part }, { heightM: 48 }));
    expect(Object.fromEntries(TRACK_PARTS.map((part, i) => [part, ups[i]]))).toEqual({
      nose: 48,
      middle: 24,
      base: 0,
      "upper-half": 36,
      "lower-half": 12,
    });
    // The vehicle is 50 m high, its foot 5 m above the datum.
    expect(trackOf("{ part: upper-half }")?.aim).toEqual({ kind: "vehicle", upM: 42.5 });
    expect(trackOf("{ up: 30 }")?.aim).toEqual({ kind: "vehicle", upM: 35 });
  });

  it("may stand in the camera table", () => {
    const table =
      "id,at.bearing,at.range,lens.focal,gate,track.part,track.offset,track.slew.azimuth,track.slew.elevation\nT,9,900,500,16mm,lower-half,-0.1,20,\n";
    const site = parseSite(`${HEAD}${VEHICLE}cameras-from: c.csv\n`, { "c.csv": table });
    expect(site.cameras[0]?.track).toEqual({
      kind: "part",
      part: "lower-half",
      offsetShare: -0.1,
      mostAzimuthDegS: 20,
      mostElevationDegS: null,
    });
  });

  it.each([
    ["{ offset: 0.1 }", "E_MISSING 4:93 cameras[C].track"],
    ["{ part: nose, offset: 0.51 }", "E_RANGE 4:115 cameras[C].track.offset"],
    ["{ part: nose, slew: {} }", "E_MISSING 4:113 cameras[C].track.slew"],
    ["{ part: nose, slew: { azimuth: 0 } }", "E_RANGE 4:124 cameras[C].track.slew.azimuth"],
    ["{ part: nose, slew: { elevation: 1001 } }", "E_RANGE 4:126 cameras[C].track.slew.elevation"],
    ["{ part: nose, slew: { azimuth: 3 m/s } }", "E_UNIT 4:124 cameras[C].track.slew.azimuth"],
  ])("with %s is refused", (track, expected) => {
    expect(brief(problemsOf(withCamera(`${AT}, track: ${track}`)))).toEqual([expected]);
  });
});
