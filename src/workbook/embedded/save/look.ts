/** What a cell looks like, in the terms of a workbook file. */
import type { IBorderData, IColorStyle, IStyleData, ITextRotation, Nullable } from '@univerjs/core';
import {
  BaselineOffset,
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  TextDecoration,
  VerticalAlign,
  WrapStrategy,
} from '@univerjs/core';
import type { CellStyle } from 'hucre/xlsx';
import { INDENT_PIXELS } from '../open/looks';

type Font = NonNullable<CellStyle['font']>;
type Fill = NonNullable<CellStyle['fill']>;
type Border = NonNullable<CellStyle['border']>;
type BorderSide = NonNullable<Border['top']>;
type Alignment = NonNullable<CellStyle['alignment']>;

/** Font of a cell that says nothing else. */
export const USUAL_FONT = { name: 'Calibri', size: 11 } as const;

const across: Partial<Record<HorizontalAlign, Alignment['horizontal']>> = {
  [HorizontalAlign.LEFT]: 'left',
  [HorizontalAlign.CENTER]: 'center',
  [HorizontalAlign.RIGHT]: 'right',
  [HorizontalAlign.JUSTIFIED]: 'justify',
  [HorizontalAlign.DISTRIBUTED]: 'distributed',
};
const down: Partial<Record<VerticalAlign, Alignment['vertical']>> = {
  [VerticalAlign.TOP]: 'top',
  [VerticalAlign.MIDDLE]: 'center',
  [VerticalAlign.BOTTOM]: 'bottom',
};
const lines: Partial<Record<BorderStyleTypes, BorderSide['style']>> = {
  [BorderStyleTypes.THIN]: 'thin',
  [BorderStyleTypes.HAIR]: 'hair',
  [BorderStyleTypes.DOTTED]: 'dotted',
  [BorderStyleTypes.DASHED]: 'dashed',
  [BorderStyleTypes.DASH_DOT]: 'dashDot',
  [BorderStyleTypes.DASH_DOT_DOT]: 'dashDotDot',
  [BorderStyleTypes.DOUBLE]: 'double',
  [BorderStyleTypes.MEDIUM]: 'medium',
  [BorderStyleTypes.MEDIUM_DASHED]: 'mediumDashed',
  [BorderStyleTypes.MEDIUM_DASH_DOT]: 'mediumDashDot',
  [BorderStyleTypes.MEDIUM_DASH_DOT_DOT]: 'mediumDashDotDot',
  [BorderStyleTypes.SLANT_DASH_DOT]: 'slantDashDot',
  [BorderStyleTypes.THICK]: 'thick',
};

/** A style of the embedded spreadsheet for a file; parts that say what every cell has are left out. */
export function lookOf(style: IStyleData): CellStyle {
  const pattern = style.n?.pattern;
  const font = fontOf(style);
  const fill = solid(style.bg, 'fgColor');
  const border = borderOf(style.bd);
  const alignment = alignmentOf(style);
  return {
    ...(pattern && pattern !== 'General' && { numFmt: pattern }),
    ...(font && { font: { ...USUAL_FONT, ...font } }),
    ...(fill && { fill }),
    ...(border && { border }),
    ...(alignment && { alignment }),
  };
}

/** Kinds of alignment that nothing here shows as they are. */
const UNSHOWN_ACROSS: readonly Alignment['horizontal'][] = ['fill', 'centerContinuous'];

/** A cell's look with what nothing here shows of the look that the file has for it: the look must be the file's still. */
export function withFiledLook(look: CellStyle, { fill, border, alignment, font }: CellStyle): CellStyle {
  const { diagonal, diagonalUp, diagonalDown } = border ?? {};
  const { shrinkToFit, readingOrder, horizontal } = alignment ?? {};
  const accounting = font?.underline === 'singleAccounting' || font?.underline === 'doubleAccounting';
  const across = UNSHOWN_ACROSS.includes(horizontal) ? horizontal : undefined;
  const patterned = fill?.type === 'gradient' || (fill?.pattern !== 'solid' && fill?.pattern !== 'none');
  return {
    ...look,
    ...(fill && patterned && { fill }),
    ...(diagonal && {
      border: { ...look.border, diagonal, ...(diagonalUp && { diagonalUp }), ...(diagonalDown && { diagonalDown }) },
    }),
    ...((shrinkToFit ?? readingOrder ?? across) !== undefined && {
      alignment: {
        ...look.alignment,
        ...(shrinkToFit && { shrinkToFit }),
        ...(readingOrder && { readingOrder }),
        ...(across && { horizontal: across }),
      },
    }),
    ...(accounting && { font: { ...USUAL_FONT, ...look.font, underline: font.underline } }),
  };
}

/** The looks that a highlight lays over a cell. */
export function highlightLook(style: IStyleData): CellStyle {
  const font = fontOf(style);
  // In a highlight it is the background colour that fills; in a cell it is the foreground.
  const fill = solid(style.bg, 'bgColor');
  return { ...(font && { font }), ...(fill && { fill }) };
}

function fontOf(style: IStyleData): Font | null {
  const color = colorOf(style.cl);
  const font: Font = {
    ...(style.ff && { name: style.ff }),
    ...(style.fs !== undefined && style.fs !== USUAL_FONT.size && { size: style.fs }),
    ...(style.bl === BooleanNumber.TRUE && { bold: true }),
    ...(style.it === BooleanNumber.TRUE && { italic: true }),
    ...(style.ul?.s === BooleanNumber.TRUE && { underline: style.ul.t === TextDecoration.DOUBLE ? 'double' : true }),
    ...raised(style.va),
    ...(style.st?.s === BooleanNumber.TRUE && { strikethrough: true }),
    ...(color && { color }),
  };
  return Object.keys(font).length > 0 ? font : null;
}

function raised(offset: Nullable<BaselineOffset>): Pick<Font, 'vertAlign'> {
  if (offset === BaselineOffset.SUPERSCRIPT) return { vertAlign: 'superscript' };
  return offset === BaselineOffset.SUBSCRIPT ? { vertAlign: 'subscript' } : {};
}

function solid(color: Nullable<IColorStyle>, part: 'fgColor' | 'bgColor'): Fill | null {
  const found = colorOf(color);
  return found && { type: 'pattern', pattern: 'solid', [part]: found };
}

function borderOf(sides: Nullable<IBorderData>): Border | null {
  const border: Border = {};
  for (const [name, side] of [
    ['top', sides?.t],
    ['right', sides?.r],
    ['bottom', sides?.b],
    ['left', sides?.l],
  ] as const) {
    const style = side && lines[side.s];
    const color = colorOf(side?.cl);
    if (style) border[name] = { style, ...(color && { color }) };
  }
  return Object.keys(border).length > 0 ? border : null;
}

function alignmentOf({ ht, vt, tb, tr, pd }: IStyleData): Alignment | null {
  const horizontal = ht ? across[ht] : undefined;
  const vertical = vt ? down[vt] : undefined;
  const indent = Math.round((pd?.l ?? pd?.r ?? 0) / INDENT_PIXELS);
  const alignment: Alignment = {
    ...(horizontal && { horizontal }),
    ...(vertical && { vertical }),
    ...(tb === WrapStrategy.WRAP && { wrapText: true }),
    ...(tr && turned(tr)),
    ...(indent > 0 && { indent }),
  };
  return Object.keys(alignment).length > 0 ? alignment : null;
}

/** A file counts upwards to 90 and from there on downwards; letters below each other are 255. */
function turned({ a, v }: ITextRotation): Pick<Alignment, 'textRotation'> {
  if (v === BooleanNumber.TRUE) return { textRotation: 255 };
  return a === 0 ? {} : { textRotation: a < 0 ? -a : 90 + a };
}

/** Six digits, from `#rrggbb`, `#rgb` or `rgb(r, g, b)`; null for what is none of these. */
function colorOf(color: Nullable<IColorStyle>): { rgb: string } | null {
  const text = color?.rgb?.trim() ?? '';
  const six = /^#([0-9a-f]{6})$/i.exec(text)?.[1];
  if (six !== undefined) return { rgb: six.toUpperCase() };
  const three = /^#([0-9a-f]{3})$/i.exec(text)?.[1];
  if (three !== undefined) return { rgb: three.replace(/./g, '$&$&').toUpperCase() };
  const parts = /^rgba?\(\s*(\d+)\s*,\s*(\d+)\s*,\s*(\d+)/i.exec(text)?.slice(1);
  if (!parts) return null;
  const hex = parts.map((part) => Math.min(255, Number(part)).toString(16).padStart(2, '0'));
  return { rgb: hex.join('').toUpperCase() };
}
