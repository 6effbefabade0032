/** How a table beside the site file was read: what a spreadsheet may have meant otherwise is told, never guessed in silence. */

export type Separator = "comma" | "semicolon" | "tab";

/** A header that names a unit, or its key in other words. */
export interface ReadColumn {
  /** As written. */
  readonly header: string;
  readonly key: string;
  /** Unit taken for bare numbers of the column, from the header; null when it names none. */
  readonly unit: string | null;
}

export interface TableReading {
  /** As the site file names it. */
  readonly fileName: string;
  readonly of: "cameras" | "ascent";
  /** Rows with something in them, without the header. */
  readonly rows: number;
  /** Null when the text was handed over as text. */
  readonly encoding: TableEncoding | null;
  readonly separator: Separator;
  readonly decimalMark: "point" | "comma";
  /** The first number with a decimal comma, as written; null when there is none. */
  readonly commaExample: string | null;
  /**
   * The first number with a point when every one of them could part thousands too ("1.250") and the columns are not parted by
   * commas; it is read as a decimal point. Else null.
   */
  readonly unclearPoint: string | null;
  /** Only for cameras. */
  readonly columns: readonly ReadColumn[];
}

export type TableEncoding = "UTF-8" | "UTF-16";

/** The text of a table and how its bytes were read. */
export interface TableText {
  readonly text: string;
  readonly encoding: TableEncoding;
}

/**
 * Bytes as spreadsheets write them: UTF-16 of either order behind its mark, else UTF-8, with or without a mark. Null when
 * they are neither.
 */
export function decodeTable(bytes: Uint8Array): TableText | null {
  const [first, second] = bytes;
  const isLittle = first === 0xff && second === 0xfe;
  const isBig = first === 0xfe && second === 0xff;
  const label = isLittle ? "utf-16le" : isBig ? "utf-16be" : "utf-8";
  try {
    // The decoder takes the mark away itself.
    const text = new TextDecoder(label, { fatal: true }).decode(bytes);
    return { text, encoding: isLittle || isBig ? "UTF-16" : "UTF-8" };
  } catch {
    return null;
  }
}
