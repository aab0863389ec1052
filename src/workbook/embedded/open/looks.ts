/** What a cell of a file looks like, in the embedded spreadsheet's terms. */
import type { IBorderData, IStyleData } from '@univerjs/core';
import {
  BaselineOffset,
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  TextDecoration,
  VerticalAlign,
  WrapStrategy,
} from '@univerjs/core';
import type { CellStyle } from './book';

type Font = NonNullable<CellStyle['font']>;
type Alignment = NonNullable<CellStyle['alignment']>;
type Border = NonNullable<CellStyle['border']>;

/** A step of indentation in pixels: three digits of the usual font. */
export const INDENT_PIXELS = 21;

const across: Partial<Record<NonNullable<Alignment['horizontal']>, HorizontalAlign>> = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  centerContinuous: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
  justify: HorizontalAlign.JUSTIFIED,
  distributed: HorizontalAlign.DISTRIBUTED,
};
const down: Record<NonNullable<Alignment['vertical']>, VerticalAlign> = {
  top: VerticalAlign.TOP,
  center: VerticalAlign.MIDDLE,
  bottom: VerticalAlign.BOTTOM,
  justify: VerticalAlign.TOP,
  distributed: VerticalAlign.MIDDLE,
};
const lines: Record<NonNullable<Border['top']>['style'], BorderStyleTypes> = {
  thin: BorderStyleTypes.THIN,
  hair: BorderStyleTypes.HAIR,
  dotted: BorderStyleTypes.DOTTED,
  dashed: BorderStyleTypes.DASHED,
  dashDot: BorderStyleTypes.DASH_DOT,
  dashDotDot: BorderStyleTypes.DASH_DOT_DOT,
  double: BorderStyleTypes.DOUBLE,
  medium: BorderStyleTypes.MEDIUM,
  mediumDashed: BorderStyleTypes.MEDIUM_DASHED,
  mediumDashDot: BorderStyleTypes.MEDIUM_DASH_DOT,
  mediumDashDotDot: BorderStyleTypes.MEDIUM_DASH_DOT_DOT,
  slantDashDot: BorderStyleTypes.SLANT_DASH_DOT,
  thick: BorderStyleTypes.THICK,
};

/** The look of a cell; what every cell of the file has anyway is left out. */
export function styleOfLook(look: CellStyle, usual: { readonly name: string; readonly size: number }): IStyleData {
  const { font, fill, border, alignment, numFmt } = look;
  const background = fillColour(fill);
  return {
    ...(numFmt !== undefined && numFmt !== 'General' && { n: { pattern: numFmt } }),
    ...(font && fontStyle(font, usual)),
    ...(background !== null && { bg: { rgb: background } }),
    ...(border && borderStyle(border)),
    ...(alignment && alignmentStyle(alignment)),
  };
}

/** The look that a highlight lays over a cell. */
export function styleOfHighlight(look: CellStyle): IStyleData {
  const { font, fill } = look;
  const background = fillColour(fill, 'bgColor');
  return {
    ...(font && fontStyle({ ...font, name: undefined, size: undefined } as Font, { name: '', size: 0 })),
    ...(background !== null && { bg: { rgb: background } }),
  };
}

function fontStyle(font: Font, usual: { readonly name: string; readonly size: number }): IStyleData {
  const { underline, color, vertAlign } = font;
  const double = underline === 'double' || underline === 'doubleAccounting';
  return {
    ...(font.name !== undefined && font.name !== usual.name && { ff: font.name }),
    ...(font.size !== undefined && font.size !== usual.size && { fs: font.size }),
    ...(font.bold && { bl: BooleanNumber.TRUE }),
    ...(font.italic && { it: BooleanNumber.TRUE }),
    ...(underline && { ul: { s: BooleanNumber.TRUE, ...(double && { t: TextDecoration.DOUBLE }) } }),
    ...(font.strikethrough && { st: { s: BooleanNumber.TRUE } }),
    ...(color?.rgb !== undefined && { cl: { rgb: `#${color.rgb}` } }),
    ...(vertAlign && { va: vertAlign === 'superscript' ? BaselineOffset.SUPERSCRIPT : BaselineOffset.SUBSCRIPT }),
  };
}

/** One colour for a fill; a pattern or a run of colours shows its first. */
function fillColour(fill: CellStyle['fill'], solid: 'fgColor' | 'bgColor' = 'fgColor'): string | null {
  if (!fill) return null;
  if (fill.type === 'gradient') return hash(fill.stops[0]?.color.rgb);
  if (fill.pattern === 'none') return null;
  // A highlight's fill may leave its pattern unsaid.
  return hash(fill[solid]?.rgb ?? fill.fgColor?.rgb ?? fill.bgColor?.rgb);
}

function hash(rgb: string | undefined): string | null {
  return rgb === undefined ? null : `#${rgb}`;
}

function borderStyle(border: Border): IStyleData {
  const sides: IBorderData = {};
  for (const [key, side] of [
    ['t', border.top],
    ['r', border.right],
    ['b', border.bottom],
    ['l', border.left],
  ] as const) {
    if (side) sides[key] = { s: lines[side.style], cl: { rgb: hash(side.color?.rgb) ?? '#000000' } };
  }
  return Object.keys(sides).length > 0 ? { bd: sides } : {};
}

function alignmentStyle({ horizontal, vertical, wrapText, textRotation, indent }: Alignment): IStyleData {
  const ht = horizontal ? across[horizontal] : undefined;
  const side = horizontal === 'right' ? 'r' : 'l';
  return {
    ...(ht !== undefined && { ht }),
    ...(vertical && { vt: down[vertical] }),
    ...(wrapText && { tb: WrapStrategy.WRAP }),
    ...(textRotation && { tr: rotation(textRotation) }),
    ...(indent && { pd: { [side]: indent * INDENT_PIXELS } }),
  };
}

/** Letters below each other. */
const STACKED = 255;

/** A file counts upwards to 90 and from there on downwards; here upwards is negative. */
function rotation(turned: number): { a: number; v?: BooleanNumber } {
  if (turned === STACKED) return { a: 0, v: BooleanNumber.TRUE };
  return { a: turned > 90 ? turned - 90 : -turned };
}
