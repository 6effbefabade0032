/** The starter site file: small, commented, and complete enough to check and plan at once. */

/** Text of a new site file for a site of that name. */
export function starterSite(name: string): string {
  return STARTER.replace("NAME", () => JSON.stringify(name.trim() === "" ? "New site" : name.trim()));
}

const STARTER = `# A padstop site file. Numbers are metres, millimetres (optics), degrees, seconds and frames/s;
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

structures:                     # what hides the sun or shades the body
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

windows:                        # possible T-0s
  - { name: first, opens: 2027-04-18T17:10, closes: 2027-04-18T19:40 }
`;
