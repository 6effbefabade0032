/** Colour as an addition to words: nothing is said by colour alone. */

export interface Paint {
  readonly strong: (text: string) => string;
  readonly alarm: (text: string) => string;
  readonly warn: (text: string) => string;
}

const styled = (open: number, close: number) => (text: string) =>
  text === "" ? text : `\u001b[${open}m${text}\u001b[${close}m`;

const plain = (text: string): string => text;

export const PLAIN: Paint = { strong: plain, alarm: plain, warn: plain };
/** Bold, red and yellow of ECMA-48 (select graphic rendition). */
export const COLOURED: Paint = {
  strong: styled(1, 22),
  alarm: styled(31, 39),
  warn: styled(33, 39),
};
