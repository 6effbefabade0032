/** What RFC 7946 asks of a FeatureCollection, rule by rule; gives the faults found. Written from the standard's text. */

export type Position = readonly number[];

interface Geometry {
  readonly type: string;
  readonly coordinates: unknown;
}

export interface Feature {
  readonly type: "Feature";
  readonly id: string;
  readonly geometry: Geometry | null;
  readonly properties: Readonly<Record<string, unknown>>;
}

export interface Collection {
  readonly type: "FeatureCollection";
  readonly features: readonly Feature[];
}

/** Polygons' rings and lines of a geometry, each a list of positions. */
export const ringsOf = ({ geometry }: Feature): readonly (readonly Position[])[] =>
  geometry?.type === "Polygon"
    ? (geometry.coordinates as Position[][])
    : geometry?.type === "MultiPolygon"
      ? (geometry.coordinates as Position[][][]).flat()
      : [];
export const linesOf = ({ geometry }: Feature): readonly (readonly Position[])[] =>
  geometry?.type === "LineString"
    ? [geometry.coordinates as Position[]]
    : geometry?.type === "MultiLineString"
      ? (geometry.coordinates as Position[][])
      : [];

/** Twice the area in square degrees, above zero counterclockwise; about the first position, so that small rings keep their figures. */
export function signedArea(ring: readonly Position[]): number {
  const [x0, y0] = ring[0]!;
  return ring.slice(1).reduce((sum, [x, y], i) => {
    const [bx, by] = ring[i]!;
    return sum + (bx! - x0!) * (y! - y0!) - (x! - x0!) * (by! - y0!);
  }, 0);
}

const KNOWN = ["Point", "LineString", "MultiLineString", "Polygon", "MultiPolygon"];

export function faultsOf(collection: Collection): string[] {
  const faults: string[] = [];
  // 1.4, 3.3, 7.1: only what the standard names.
  if (Object.keys(collection).join() !== "type,features") faults.push("members of the collection");
  const ids = collection.features.map(({ id }) => id);
  if (new Set(ids).size !== ids.length) faults.push("ids twice");
  for (const feature of collection.features)
    faults.push(...featureFaults(feature).map((fault) => `${feature.id}: ${fault}`));
  return faults;
}

function featureFaults(feature: Feature): string[] {
  const { geometry } = feature;
  const faults: string[] = [];
  if (Object.keys(feature).join() !== "type,id,geometry,properties") faults.push("members");
  if (geometry === null) return faults;
  if (!KNOWN.includes(geometry.type)) faults.push(`type ${geometry.type}`);
  if (Object.keys(geometry).join() !== "type,coordinates") faults.push("members of the geometry");
  const [lines, rings] = [linesOf(feature), ringsOf(feature)];
  const points = geometry.type === "Point" ? [geometry.coordinates as Position] : [];
  if (points.length + lines.length + rings.length === 0) faults.push("no coordinates");
  for (const position of [...points, ...lines.flat(), ...rings.flat()])
    faults.push(...positionFaults(position));
  for (const line of lines) if (line.length < 2) faults.push("a line of one position (3.1.4)");
  for (const ring of rings) faults.push(...ringFaults(ring));
  for (const path of [...lines, ...rings]) if (leaps(path)) faults.push("crosses the antimeridian (3.1.9)");
  return faults;
}

function positionFaults(position: Position): string[] {
  const [longitude, latitude, height] = position;
  const faults: string[] = [];
  if (position.length < 2 || position.length > 3) faults.push("length of a position (3.1.1)");
  if (!position.every((value) => Number.isFinite(value))) faults.push("no number");
  if (!(Math.abs(longitude!) <= 180 && Math.abs(latitude!) <= 90)) faults.push(`outside WGS 84: ${position}`);
  if (position.some((value) => Object.is(value, -0))) faults.push("-0");
  if (decimalsOf(longitude!) > 7 || decimalsOf(latitude!) > 7) faults.push(`digits of ${position}`);
  if (height !== undefined && decimalsOf(height) > 2) faults.push(`digits of height ${height}`);
  return faults;
}

const decimalsOf = (value: number): number =>
  (/\.(\d+)$/.exec(value.toFixed(12).replace(/0+$/, ""))?.[1] ?? "").length;

function ringFaults(ring: readonly Position[]): string[] {
  const faults: string[] = [];
  if (ring.length < 4) faults.push("a ring of under four positions (3.1.6)");
  if (String(ring[0]) !== String(ring.at(-1))) faults.push("an open ring (3.1.6)");
  if (!(signedArea(ring) > 0)) faults.push("a clockwise outer ring (3.1.6)");
  return faults;
}

/** From one side of the antimeridian to the other between two positions; along the pole itself any leap is none. */
const leaps = (path: readonly Position[]): boolean =>
  path.slice(1).some(([longitude, latitude], i) => {
    const [before, at] = path[i]!;
    const alongPole = Math.abs(latitude!) === 90 && Math.abs(at!) === 90;
    return Math.abs(longitude! - before!) > 180 - 1e-9 && !alongPole;
  });
