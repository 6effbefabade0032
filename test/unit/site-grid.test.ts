/**
 * UTM and MGRS in a site file: what is read and refused, and that a site so written is the same site. Where a fault tells a
 * latitude or a distance, it was worked out from what GeographicLib gives for the same text.
 */

import { describe, expect, it } from "vitest";
import { squareNotes, squareWords } from "../../src/plan/placeNotes.ts";
import type { GridResult } from "../../src/site/gridZones.ts";
import { parseMgrs } from "../../src/site/mgrsText.ts";
import { padDistanceM } from "../../src/site/padDistance.ts";
import { parseSite } from "../../src/site/parseSite.ts";
import type { Site, Spot } from "../../src/site/types.ts";
import { parseUtm } from "../../src/site/utmText.ts";
import { problemsOf, VEHICLE } from "./siteText.ts";

const faultOf = (result: GridResult): string =>
  result.ok ? "no fault" : `${result.fault.code} ${result.fault.found}`;
const nextOf = (result: GridResult): string => (result.ok ? "" : (result.fault.next ?? ""));

describe("UTM", () => {
  const LIKE = parseUtm("26 north 317000 5011000");

  it.each([
    "26N 317000 5011000",
    "26T 317000 5011000",
    "26 t 317000, 5011000",
    "26 North,317000,5011000",
    "26T 317000.0 5011000.00",
    "26T 317000mE 5011000mN",
    " 26 n  317000 m 5011000 m ",
  ])("reads %s", (text) => expect(parseUtm(text)).toEqual(LIKE));

  it("knows the south by word, by band, and by S where no band S is possible", () => {
    const south = parseUtm("29 south 468230 4998120");
    expect(parseUtm("29G 468230 4998120")).toEqual(south);
    expect(parseUtm("29S 468230 4998120")).toEqual(south);
    expect(south.ok && south.place.latitude).toBeCloseTo(-45.1696848, 6);
  });

  it("refuses a lone S that can be both, with both", () => {
    const both = parseUtm("29S 468230 4098120");
    expect(faultOf(both)).toBe(
      "E_CONFLICT 29S, which can be latitude band S (37.0° N) or the southern hemisphere (53.3° S)",
    );
    expect(nextOf(both)).toBe("write 29 north or 29 south");
    expect(parseUtm("29 north 468230 4098120").ok).toBe(true);
  });

  it.each([
    ["0 north 468230 4998120", "E_RANGE zone 0"],
    ["61T 468230 4998120", "E_RANGE zone 61"],
    ["29I 468230 4998120", "E_CHOICE latitude band I"],
    ["29O 468230 4998120", "E_CHOICE latitude band O"],
    ["29A 468230 4998120", "E_CHOICE latitude band A"],
    ["29 up 468230 4998120", "E_CHOICE latitude band UP"],
    ["29T 99999 4998120", "E_RANGE easting 99999 m"],
    ["29T 4998120 468230", "E_RANGE easting 4998120 m"],
    ["29T 468230 10000001", "E_RANGE northing 10000001 m"],
    ["29 north 468230 9400000", "E_RANGE 29 north 468230 9400000, at 84.6° N"],
    ["29 south 468230 900000", "E_RANGE 29 south 468230 900000, at 82.0° S"],
    ["29U 468230 4998120", "E_CONFLICT band U and northing 4998120 m, at 45.1° N in band T"],
    ["29 north 110000 7200000", "E_RANGE 29 north 110000 7200000, 247 km outside zone 29"],
    ["29 468230 4998120", "E_TYPE 29 468230 4998120"],
    ["29T 468230,5 4998120,0", "E_TYPE 29T 468230,5 4998120,0"],
    ["29T -468230 4998120", "E_TYPE 29T -468230 4998120"],
    ["north", "E_TYPE north"],
    ["", "E_TYPE "],
  ])("refuses %s", (text, fault) => expect(faultOf(parseUtm(text))).toBe(fault));

  it("says what to do", () => {
    expect(nextOf(parseUtm("29 468230 4998120"))).toBe("write north or south after the zone");
    expect(nextOf(parseUtm("29T 4998120 468230"))).toContain("before the northing");
    expect(nextOf(parseUtm("29A 468230 4998120"))).toContain("latitude and longitude");
  });
});

describe("MGRS", () => {
  it.each(["26TLR1700011000", "26T LR 17000 11000", "26tlr 17000 11000", "26 T L R 1700011000"])(
    "reads %s",
    (text) => {
      const read = parseMgrs(text);
      // The middle of its metre.
      const middle = parseUtm("26 north 317000.5 5011000.5");
      expect(read.ok && { ...read.place, squareM: null }).toEqual(middle.ok && middle.place);
      expect(read.ok && read.place.squareM).toBe(1);
    },
  );

  it.each([
    ["0TLR1700011000", "E_RANGE zone 0"],
    ["61TLR1700011000", "E_RANGE zone 61"],
    ["26ILR1700011000", "E_CHOICE latitude band I"],
    ["26TIR1700011000", "E_CHOICE column letter I in zone 26"],
    ["26TAR1700011000", "E_CHOICE column letter A in zone 26"],
    ["26TLO1700011000", "E_CHOICE row letter O"],
    ["26TLW1700011000", "E_CHOICE row letter W"],
    ["26TLR170001100", "E_TYPE 9 digits"],
    ["26TLR 17000 1100", "E_TYPE 5 digits east and 4 north"],
    ["26TLR", "E_RANGE no digits"],
    ["26TLR11", "E_RANGE 2 digits"],
    ["26TLR170001110001", "E_RANGE 12 digits"],
    ["26TLA1700011000", "E_RANGE 26TLA1700011000, whose square LA lies outside band T"],
    ["36XVN1700011000", "E_RANGE zone 36X, which does not exist"],
    ["31VHH9900011000", "E_RANGE 31VHH9900011000, 399 km outside zone 31"],
    ["ZAH1700011000", "E_TYPE ZAH1700011000"],
    ["26TLR17000.5 11000", "E_TYPE 26TLR17000.5 11000"],
    ["somewhere", "E_TYPE SOMEWHERE"],
  ])("refuses %s", (text, fault) => expect(faultOf(parseMgrs(text))).toBe(fault));
});

const CAMERA = "lens: { focal: 50 }, gate: full-frame";
const siteText = (pad: string, at: string, aim: string, structure: string): string =>
  `site: { name: Test, zone: Atlantic/Azores, ${pad}, height: 30 }
${VEHICLE}structures: [{ name: s, at: ${structure}, width: 1, depth: 1, height: 1 }]
cameras: [{ id: A, at: ${at}, aim: ${aim}, ${CAMERA} }]`;

/** Pad, camera, aim and structure of a site. */
const spotsOf = (site: Site): readonly Spot[] => {
  const [camera, structure] = [site.cameras[0]!, site.structures[0]!];
  const aim = camera.aim.kind === "place" ? camera.aim : camera.at!;
  return [{ kind: "place", place: site.place }, camera.at!, aim, structure.at];
};

describe("a site in grid coordinates", () => {
  // From GeographicLib: echo LAT LON | GeoConvert -u -p 3 (and -m -p 0).
  const degrees = parseSite(
    siteText(
      "latitude: 45.2318, longitude: -27.4127",
      "{ latitude: 45.2353, longitude: -27.4089, height: 33 }",
      "{ latitude: 45.2319, longitude: -27.4128 }",
      "{ latitude: 45.2321, longitude: -27.4131 }",
    ),
  );
  it("in UTM is the one in degrees, to the millimetre", () => {
    const utm = parseSite(
      siteText(
        "utm: 26 north 467604.3486 5008783.8006",
        '{ utm: "26 north 467904.6067 5009171.1038", height: 33 }',
        '{ utm: "26 north 467596.5557 5008794.9500" }',
        '{ utm: "26 north 467573.1204 5008817.2888" }',
      ),
    );
    expect(utm).not.toHaveProperty("squareM");
    for (const [i, spot] of spotsOf(utm).entries()) {
      const expected = spotsOf(degrees)[i]!;
      if (expected.kind !== "place" || spot.kind !== "place") throw new Error("no place");
      expect(padDistanceM(spot, expected.place)).toBeLessThan(0.001);
      expect(spot.place.heightM).toBe(expected.place.heightM);
    }
  });

  it("in MGRS is it to the metre, and knows its squares", () => {
    const mgrs = parseSite(
      siteText(
        "mgrs: 26TMR6760408783",
        "{ mgrs: 26TMR6790409171, height: 33 }",
        "{ mgrs: 26TMR6759608794 }",
        "{ mgrs: 26TMR6757308817 }",
      ),
    );
    for (const [i, spot] of spotsOf(mgrs).entries()) {
      const expected = spotsOf(degrees)[i]!;
      if (expected.kind !== "place" || spot.kind !== "place") throw new Error("no place");
      expect(padDistanceM(spot, expected.place)).toBeLessThan(0.71);
    }
    expect(squareWords(mgrs)).toEqual([
      "taken at the middle of an MGRS square 1 m wide: pad, structure s, A, aim of A",
    ]);
    expect(squareNotes(mgrs, mgrs.cameras[0]!)).toEqual([]);
  });

  it("tells of a wide square near the pad how far the view may be turned", () => {
    const wide = parseSite(
      siteText(
        "latitude: 45.2318, longitude: -27.4127",
        "{ mgrs: 26TMR679091, height: 33 }",
        "{ up: 20 }",
        "{ bearing: 0, range: 9 }",
      ),
    );
    const [camera] = wide.cameras;
    const rangeM = padDistanceM(camera!.at!, wide.place);
    expect(rangeM).toBeGreaterThan(300);
    expect(rangeM).toBeLessThan(600);
    const turnDeg = Math.ceil((Math.atan(70.711 / rangeM) * 180) / Math.PI);
    expect(squareNotes(wide, camera!)).toEqual([
      `placed by an MGRS square 100 m wide, ${Math.round(rangeM)} m from the pad: its azimuth is good to some ${turnDeg} degrees; give more digits`,
    ]);
    const far = {
      ...camera!,
      at: { kind: "place", place: { ...wide.place, latitudeDeg: 45.25 }, squareM: 100 },
    } as const;
    expect(squareNotes(wide, far)).toEqual([]);
  });

  it("is read from a camera table", () => {
    const text = `site: { name: T, zone: UTC, latitude: 45.2318, longitude: -27.4127 }\n${VEHICLE}cameras-from: c.csv\n`;
    const csv =
      'id,at.utm,at.mgrs,aim.utm,aim.up,lens.focal,gate\nA,26 north 467904.6067 5009171.1038,,26 north 467596.5557 5008794.9500,,50,16mm\nB,,26TMR6790409171,,20,50,16mm\nC,"26 north, 467904.6067, 5009171.1038",,,20,50,16mm\n';
    const [a, b, c] = parseSite(text, { "c.csv": csv }).cameras;
    expect(a!.aim.kind).toBe("place");
    expect(b!.at).toMatchObject({ squareM: 1 });
    expect(c!.at).toEqual(a!.at);
    const wrong = csv.replace("26TMR6790409171", "26TLR170001100");
    expect(problemsOf(text, { "c.csv": wrong }).map(({ code, key }) => `${code} ${key}`)).toEqual([
      "E_TYPE cameras[B].at.mgrs",
    ]);
  });
});
