/** Colours of a workbook file, which may point at a theme or a palette, made plain. */
import { resolveThemeColor } from 'hucre/xlsx';
import type { CellStyle } from './book';

/** A colour as the file has it. */
interface FileColour {
  rgb?: string;
  theme?: number;
  tint?: number;
  indexed?: number;
}

/* The old palette (ECMA-376 Part 1, 18.8.27); the first eight stand in it twice. */
const FIRST = '000000 FFFFFF FF0000 00FF00 0000FF FFFF00 FF00FF 00FFFF';
const OTHERS =
  '800000 008000 000080 808000 800080 008080 C0C0C0 808080 9999FF 993366 FFFFCC CCFFFF 660066 FF8080 0066CC CCCCFF ' +
  '000080 FF00FF FFFF00 00FFFF 800080 800000 008080 0000FF 00CCFF CCFFFF CCFFCC FFFF99 99CCFF FF99CC CC99FF FFCC99 ' +
  '3366FF 33CCCC 99CC00 FFCC00 FF9900 FF6600 666699 969696 003366 339966 003300 333300 993300 993366 333399 333333';
const PALETTE = `${FIRST} ${FIRST} ${OTHERS}`.split(' ');

/* A theme names light and dark colours in pairs the other way round than its list has them (Office's known twist; from memory). */
const SWAPPED = [1, 0, 3, 2];

/** Makes every colour of a style plain: six digits, and nothing where the program's own colour is meant. */
export function withPlainColours<Style extends CellStyle>(style: Style, theme: readonly string[]): Style {
  const walk = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(walk);
    if (typeof value !== 'object' || value === null) return value;
    if (isColour(value)) return plainColour(value, theme) ?? undefined;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, walk(inner)]));
  };
  return walk(style) as Style;
}

function isColour(value: object): value is FileColour {
  return 'rgb' in value || 'theme' in value || 'indexed' in value;
}

/** One colour; null for the colour that the program itself has. */
export function plainColour(colour: FileColour, theme: readonly string[]): { rgb: string } | null {
  const { rgb, indexed, tint } = colour;
  if (rgb !== undefined && /^[0-9a-f]{6,8}$/i.test(rgb)) return { rgb: rgb.slice(-6).toUpperCase() };
  if (colour.theme !== undefined && theme.length > 0) {
    return { rgb: resolveThemeColor([...theme], SWAPPED[colour.theme] ?? colour.theme, tint) };
  }
  const fromPalette = indexed === undefined ? undefined : PALETTE[indexed];
  return fromPalette === undefined ? null : { rgb: fromPalette };
}
