/**
 * Text that a spreadsheet would take for a formula, made safe and read back. The beginnings are those OWASP lists ("CSV
 * Injection": = + - @, tab, carriage return, line feed, and the wide forms); the apostrophe makes a spreadsheet take it for text.
 */

/**
 * Where a cell may begin: the text itself, or behind a mark at which a spreadsheet of another country parts columns and rows.
 * Then a formula, or one that is guarded already, so that one apostrophe can be taken away again.
 */
const BEGINNING = /^(?='*[=+\-@\t\r\n＝＋－＠])|(?<=[;\t\r\n])(?='*[=+\-@＝＋－＠])/g;
const GUARDED = /^'(?='*[=+\-@\t\r\n＝＋－＠])|(?<=[;\t\r\n])'(?='*[=+\-@＝＋－＠])/g;

/** The text with an apostrophe before each formula that it might be taken for. */
export const guarded = (text: string): string => text.replace(BEGINNING, "'");

/** The text that `guarded` made this of. */
export const unguarded = (text: string): string => text.replace(GUARDED, "");
