/** A cell of the simulated workbook. */
export interface CellState {
  value: string | number | boolean;
  /** Whether the value is an error; then `value` is its text. */
  error?: boolean;
  formula?: string;
}

const errors = ['#N/A', '#VALUE!', '#REF!', '#DIV/0!', '#NUM!', '#NAME?', '#NULL!'];
const monthDay = /^(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[ -]\d{1,4}$/i;
const dayMonth = /^\d{1,2}[ -](jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*([ -]\d{2,4})?$/i;

/**
 * What Excel makes of something entered, as far as is modelled (*from memory*): an apostrophe keeps text, `=` begins a formula, numbers,
 * percentages, amounts, times, dates, truth values and errors in text turn into such. There is no calculation: a formula's
 * value is a lie, the number 0. A date's serial is a lie too; all that counts is that the text is lost.
 */
export function enter(typed: unknown, numberFormat: string): CellState {
  if (typeof typed !== 'string') return { value: typed as number | boolean };
  if (typed.startsWith("'")) return { value: typed.slice(1) };
  if (numberFormat === '@') return { value: typed };
  if (typed.startsWith('=') && typed.length > 1) return { value: 0, formula: typed };
  const text = typed.trim();
  if (/^[+-]/.test(text) && !isNumber(text)) return { value: 0, formula: `=${text}` };
  if (errors.includes(text.toUpperCase())) return { value: text.toUpperCase(), error: true };
  if (/^(true|false)$/i.test(text)) return { value: text.toLowerCase() === 'true' };
  const number = asNumber(text);
  return { value: number ?? typed };
}

function isNumber(text: string): boolean {
  return text !== '' && Number.isFinite(Number(text));
}

function asNumber(text: string): number | null {
  if (isNumber(text)) return Number(text);
  const bare = text
    .replace(/^\((.*)\)$/, '-$1')
    .replace(/^(-?)[$€£¥]/, '$1')
    .replaceAll(',', '');
  if (isNumber(bare.replace(/%$/, ''))) return bare.endsWith('%') ? Number(bare.slice(0, -1)) / 100 : Number(bare);
  const dateLike = /^\d{1,4}[-/]\d{1,2}([-/]\d{1,4})?$/.test(text) || monthDay.test(text) || dayMonth.test(text);
  const timeLike = /^\d{1,2}:\d{2}(:\d{2})?( ?[ap]m)?$/i.test(text) || /^\d+ \d+\/\d+$/.test(text);
  return dateLike || timeLike ? 45_000.5 : null;
}
