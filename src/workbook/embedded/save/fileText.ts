/** A file takes four digits between `_x` and `_` for a character (ECMA-376 Part 1, 22.9.2.19). */
const LIKE_CODE = /_(?=x[0-9a-f]{4}_)/gi;

/** Text as a file holds it, so that it reads as it did. @example fileText('_x0041_') //=> '_x005F_x0041_' */
export function fileText(text: string): string {
  return text.replace(LIKE_CODE, '_x005F_');
}
