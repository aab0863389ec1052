/**
 * What is kept in a workbook beside its cells, put into a file and found there again: as document properties, which programs that open the
 * file leave alone. Excel's own window takes 255 characters of text there (*from memory*), so longer text goes over several.
 */
import type { PageSetup } from '../port';

/** Settings by their keys, and how sheets are printed by their names. */
export interface KeptState {
  readonly settings: Readonly<Record<string, string>>;
  readonly pages: readonly { readonly sheet: string; readonly setup: PageSetup }[];
}

type Properties = Readonly<Record<string, unknown>>;

const STEM = 'Setwright.';
const LONGEST = 240;
const VERSION = 1;

/** The properties that hold it. @example Object.keys(stateProperties(state)) //=> ['Setwright.1', 'Setwright.2'] */
export function stateProperties(state: KeptState): Record<string, string> {
  const text = JSON.stringify({ version: VERSION, ...state });
  // Nothing but ASCII and no blanks: no letter is cut in two, and none is trimmed at the end of a piece.
  const plain = text.replace(/[^\x21-\x7e]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`);
  const pieces = plain.match(new RegExp(`.{1,${LONGEST}}`, 'g')) ?? [];
  return Object.fromEntries(pieces.map((piece, i) => [`${STEM}${i + 1}`, piece]));
}

/** What was kept; null where nothing was, or where a piece is gone. */
export function stateFrom(properties: Properties): KeptState | null {
  let text = '';
  for (let i = 1; ; i++) {
    const piece = properties[`${STEM}${i}`];
    if (typeof piece !== 'string') break;
    text += piece;
  }
  try {
    const kept = JSON.parse(text) as Partial<KeptState> & { readonly version?: number };
    return kept.version === VERSION && kept.settings && kept.pages
      ? { settings: kept.settings, pages: kept.pages }
      : null;
  } catch {
    return null;
  }
}

/** The properties that are not ours. */
export function othersProperties<P>(properties: Readonly<Record<string, P>>): Record<string, P> {
  return Object.fromEntries(Object.entries(properties).filter(([name]) => !name.startsWith(STEM)));
}
