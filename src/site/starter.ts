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

const PLACE = `  latitude: 45.2                # the pad; degrees, north positive
  longitude: -27.4              # east positive
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

const HEAD = `# A padstop site file: one pad, its cameras and the windows. Everything in it is an example; replace it part by part,
# in this order, and run "padstop check" on the file after each: it says what is wrong, or what it understood.
#   1 site      2 vehicle      3 media, defaults, cameras      4 structures, floodlights      5 windows
# Then "padstop plan" gives the settings, "padstop rank" compares the windows, "padstop sweep" follows the trackers,
# and "padstop report FILE -o plan.html" makes the pages to look at and to print.
#
# A number is in metres, millimetres (optics), degrees, seconds or frames/s; a text may name another unit:
# "1340 ft", "0.4 km", "12°30'". Bearings and azimuths are degrees clockwise from north. Indent with blanks, not tabs.

site:
  name: NAME
  zone: Atlantic/Azores         # IANA time zone; the times below are its wall time
  latitude: 45.2                # the pad; degrees, north positive
  longitude: -27.4              # east positive
  height: 10                    # of the pad datum; all "up" and "base" below count from there
  bearings: true                # from true north; or the declination that is added, east positive: -8.5

vehicle:
  height: 40                    # length of the body
  diameter: 3
  base: 4                       # its foot above the pad datum
  reflectance: 0.8              # of the body: white paint 0.8, bare metal and dark paint less
  plume: { propellant: kerolox, length: 45, width: 5 }   # solid, kerolox, methalox, hydrolox, hypergolic; or luminance: 4e6 cd/m2
  # The way it flies, for trackers. This is a rough guess from three numbers; a table is better:
  # ascent: ascent.csv          # beside this file, with headings t (s), east (m), north (m), up (m)
  ascent: { heading: 95, thrustToWeight: 1.35 }

`;

const GEAR = `structures:                     # what hides the sun, or shades the body; [] when there is nothing
  - { name: tower, at: { bearing: 300, range: 15 }, width: 8, depth: 8, height: 50, solidity: 0.6 }   # 1 is opaque

# floodlights: { illuminance: 300, deck: 150 }   # lx on the body and the deck, for windows at night

media:                          # "kind" takes a range of common practice; better your own: under: 3, over: 4 (stops)
  film: { speed: 200, kind: negative }           # negative, reversal or sensor

defaults:                       # holds for every camera that does not say it itself
  medium: film
  gate: 35mm 4-perf             # or { width: 24.89, height: 18.67 }
  lens: { stops: [2.8, 4, 5.6, 8, 11, 16, 22] }  # as engraved
  filters: [0, 0.3, 0.6, 0.9, 1.2]               # densities in the bag
  rate: 96                      # frames/s
  shutter: { angle: [172.8, 120, 45] }           # those that can be set; or { time: [1/500, 1/1000] }

cameras:
  - id: P1                      # "at": bearing and distance as seen from the pad, "up" above its level
    at: { bearing: 140, range: 400, up: 2 }
    aim: { up: 24 }             # at this height of the vehicle
    lens: { focal: 100 }
    keep: [body]                # what has to stay in the range of the medium: body, plume, sky, deck
  - id: P2                      # keeps the burning plume, too: planned for after ignition
    at: { bearing: 205, range: 350, up: 2 }
    aim: { up: 12 }
    lens: { focal: 75, hood: { length: 80, diameter: 110 } }
    keep: [plume]
  - id: T1                      # a tracker follows the vehicle along its ascent
    at: { bearing: 75, range: 5 km }
    track: { part: nose }       # nose, upper-half, middle, lower-half, base
    lens: { focal: 600 }
  - id: A1                      # the least that works: a direction, from the pad's place
    azimuth: 214
    elevation: 3
    lens: { focal: 50 }

`;

const WINDOWS = `windows:                        # when T-0 may be; "padstop plan" takes the first, or the one named with --window
  - { name: first, opens: 2027-04-18T17:10, closes: 2027-04-18T19:40 }
  - { name: second, opens: 2027-04-20T08:30, closes: 2027-04-20T11:00 }
`;
