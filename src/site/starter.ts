/** The starter site file: small, commented, and complete enough to check and plan at once. */

/** What a starter with a camera table takes from it. */
export interface StarterTable {
  /** As the site file will name it. */
  readonly fileName: string;
  /** Media that the cameras name. */
  readonly media: readonly string[];
  /** A stand-in for the pad, in degrees, where cameras are placed by coordinates; else null. */
  readonly pad: { readonly latitudeDeg: number; readonly longitudeDeg: number } | null;
}

/** Text of a new site file for a site of that name; with the cameras of a table in place of the examples. */
export function starterSite(name: string, table: StarterTable | null = null): string {
  const title = JSON.stringify(name.trim() === "" ? "New site" : name.trim());
  if (table === null) return HEAD.replace("NAME", () => title) + GEAR + WINDOWS;
  const { pad } = table;
  const head = pad === null ? HEAD : HEAD.replace(PLACE, () => placeText(pad));
  return head.replace("NAME", () => title) + tableText(table) + WINDOWS;
}

const PLACE = `  latitude: 45.2                # degrees, north positive
  longitude: -27.4              # degrees, east positive
`;

const placeText = ({ latitudeDeg, longitudeDeg }: NonNullable<StarterTable["pad"]>): string =>
  `  latitude: ${latitudeDeg}   # degrees, north positive: a stand-in near the cameras, replace it with the pad's
  longitude: ${longitudeDeg}   # degrees, east positive
`;

function tableText({ fileName, media }: StarterTable): string {
  const entries = media.map((name) => `  ${JSON.stringify(name)}: { speed: 200, kind: negative }\n`).join("");
  const mediaText =
    entries === ""
      ? "# media:\n#   film: { speed: 200, kind: negative }\n"
      : `media:                          # named in the table; speed and kind are stand-ins\n${entries}`;
  return `# structures:                   # what hides the sun or shades the body
#   - { name: tower, at: { bearing: 300, range: 15 }, width: 8, depth: 8, height: 50, solidity: 0.6 }

${mediaText}
# defaults:                     # taken where the table is silent
#   gate: 35mm 4-perf
#   lens: { stops: [2.8, 4, 5.6, 8, 11, 16, 22] }
#   shutter: { time: [1/500, 1/1000, 1/2000] }

cameras-from: ${JSON.stringify(fileName)}

`;
}

const HEAD = `# A padstop site file. Numbers are metres, millimetres (optics), degrees, seconds and frames/s;
# text may name another unit: "1340 ft", "0.4 km", "12°30'". Replace every value with your own.

site:
  name: NAME
  zone: Atlantic/Azores         # IANA time zone; times below are wall time here
  latitude: 45.2                # degrees, north positive
  longitude: -27.4              # degrees, east positive
  height: 10

vehicle:
  height: 40
  diameter: 3
  base: 4                       # foot of the body above the pad datum
  plume: { propellant: kerolox }     # solid, kerolox, methalox, hydrolox or hypergolic; or luminance: 4e6 cd/m2
  ascent: { heading: 95, thrustToWeight: 1.35 }   # a rough guess; better the name of a .csv: t (s), east (m), north (m), up (m)

`;

const GEAR = `structures:                     # what hides the sun or shades the body
  - { name: tower, at: { bearing: 300, range: 15 }, width: 8, depth: 8, height: 50, solidity: 0.6 }

media:                          # kind gives a usable range of common practice; under and over are better
  film: { speed: 200, kind: negative }

defaults:                       # taken where a camera is silent
  medium: film
  gate: 35mm 4-perf
  lens: { stops: [2.8, 4, 5.6, 8, 11, 16, 22] }
  filters: [0, 0.3, 0.6, 0.9, 1.2]
  rate: 96
  shutter: { angle: 120 }

cameras:
  - id: P1                      # placed and aimed at the vehicle
    at: { bearing: 140, range: 400, up: 2 }
    aim: { up: 24 }
    lens: { focal: 100 }
    keep: [body, plume]
  - id: T1                      # a tracker follows the vehicle: padstop sweep tells when the sun crosses its frame
    at: { bearing: 75, range: 5 km }
    track: { part: nose }
    lens: { focal: 600 }
  - id: A1                      # the least that works: an axis
    azimuth: 214
    elevation: 3
    lens: { focal: 50 }

`;

const WINDOWS = `windows:                        # possible T-0s
  - { name: first, opens: 2027-04-18T17:10, closes: 2027-04-18T19:40 }
`;
