/** How a table was read, in words: for `check`, and for everyone where a spreadsheet's number could mean another. */

import type { Separator, TableReading } from "../site/tableReading.ts";

const PARTED: Readonly<Record<Separator, string>> = Object.freeze({
  comma: "commas",
  semicolon: "semicolons",
  tab: "tabs",
});

/** True for a table read without any guess: nothing to tell. */
const isPlain = ({ encoding, separator, decimalMark, columns }: TableReading): boolean =>
  encoding !== "UTF-16" && separator === "comma" && decimalMark === "point" && columns.length === 0;

/** "cameras from cameras.csv: 26 rows, columns parted by semicolons, decimal commas (1,5 is read as 1.5); ..."; null when plain. */
export function tableWords(reading: TableReading): string | null {
  const { of, fileName, rows, encoding, separator, decimalMark, columns } = reading;
  if (of === "ascent" && isPlain(reading)) return null;
  const how = [
    `${rows} row${rows === 1 ? "" : "s"}`,
    ...(encoding === "UTF-16" ? [encoding] : []),
    `columns parted by ${PARTED[separator]}`,
    ...(separator === "comma" ? [] : [`decimal ${decimalMark}s${exampleIn(reading)}`]),
  ];
  const heads = columns.map(
    ({ header, key, unit }) => `"${header}" is ${key}${unit === null ? "" : ` in ${unit}`}`,
  );
  return `${of} from ${fileName}: ${[how.join(", "), ...(heads.length > 0 ? [heads.join(", ")] : [])].join("; ")}`;
}

function exampleIn(reading: TableReading): string {
  const example = readAs(reading);
  return example === null ? "" : ` (${example})`;
}

/** "1,5 is read as 1.5"; null where no number could be meant otherwise. */
function readAs({ commaExample, unclearPoint }: TableReading): string | null {
  const written = commaExample ?? unclearPoint;
  if (written === null) return null;
  return `${written} is read as ${Number(written.replace(",", "."))}`;
}

/** What every command tells of the tables: lines for stderr. */
export function tableNotes(tables: readonly TableReading[]): string[] {
  return tables.flatMap((reading) => {
    const example = readAs(reading);
    return example === null ? [] : [`${reading.fileName}: decimal ${reading.decimalMark}s, ${example}.`];
  });
}
