/** How wide a text is in the spreadsheet's default font. */

/** As the spreadsheet asks for it; which letters come depends on what the machine has. */
const FONT = '11pt Arial';
/** Where nothing can be measured: digits of that font, and what bold letters are wider. */
const PIXELS_PER_CHARACTER = 8;
const BOLD_FACTOR = 1.08;

type Measure = (text: string, bold: boolean) => number;

const estimated: Measure = (text, bold) => [...text].length * PIXELS_PER_CHARACTER * (bold ? BOLD_FACTOR : 1);

let measure: Measure | undefined;

/** Measured where that is possible, for a heading that needs a line more than its row has is cut off. */
export function textPixels(text: string, bold: boolean): number {
  measure ??= measured() ?? estimated;
  return measure(text, bold);
}

function measured(): Measure | null {
  const context = typeof OffscreenCanvas === 'undefined' ? null : new OffscreenCanvas(1, 1).getContext('2d');
  if (!context) return null;
  const known = new Map<string, number>();
  return (text, bold) => {
    const key = `${bold ? 'bold ' : ''}${FONT} ${text}`;
    const pixels = known.get(key) ?? widthOf(context, text, bold);
    known.set(key, pixels);
    return pixels;
  };
}

function widthOf(context: OffscreenCanvasRenderingContext2D, text: string, bold: boolean): number {
  context.font = bold ? `bold ${FONT}` : FONT;
  return context.measureText(text).width;
}
