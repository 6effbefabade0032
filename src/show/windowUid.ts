/** The UID of a window's calendar event: the same for the same site, window and times, on every machine and in every version. */

const FNV_OFFSET = 14695981039346656037n;
const FNV_PRIME = 1099511628211n;
const MASK_64 = (1n << 64n) - 1n;

/** FNV-1a, 64 bits, over the text in UTF-8 (IETF draft-eastlake-fnv), as 16 hexadecimal digits. */
export function fnv1aHex(text: string): string {
  let hash = FNV_OFFSET;
  for (const byte of new TextEncoder().encode(text)) hash = ((hash ^ BigInt(byte)) * FNV_PRIME) & MASK_64;
  return hash.toString(16).padStart(16, "0");
}

/**
 * "padstop-20270418T171000Z-20270418T194000Z-" and the hash of site, window and both times to the millisecond, each in a
 * line of its own. Nothing else goes into it: a new plan of the same window takes the place of the old one in a calendar.
 */
export function windowUid(
  siteName: string,
  windowName: string | null,
  { opens, closes }: { readonly opens: Date; readonly closes: Date },
): string {
  const named = [siteName, windowName ?? "", opens.toISOString(), closes.toISOString()].join("\n");
  return `padstop-${compact(opens)}-${compact(closes)}-${fnv1aHex(named)}`;
}

/** "20270418T171000Z". */
const compact = (at: Date): string => `${at.toISOString().slice(0, 19).replaceAll(/[-:]/g, "")}Z`;
