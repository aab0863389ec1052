/** A sentence for every reason the core gives: what was wrong, where, and what to do. */
import type { Issue, IssueCode } from '../core/index';
import { countOf, signed, thousandths } from './readings';

type Sayer = (issue: Issue) => string;

const SENTENCES: Readonly<Record<IssueCode, Sayer>> = {
  blank: ({ field, expected }) => `${field} is blank. Give ${expected ?? 'a value'}.`,
  notNumber: ({ field, got, expected }) => `${field} is ${shown(got)}, not a number. Give ${expected ?? 'a number'}.`,
  ambiguous: ({ field, got, expected }) =>
    `${field} is ${shown(got)}, which can be read in two ways. Give ${expected ?? 'it with its decimals'}.`,
  unknownChoice: ({ field, got, expected }) =>
    `${field} is ${shown(got)}. Give ${expected ?? 'one of the known words'}.`,
  outOfRange: ({ field, got, expected }) => `${field} is ${shown(got)}. Give ${expected ?? 'a value within range'}.`,
  unitMistaken: ({ field, got, expected, detail }) =>
    `${field} is ${shown(got)}: that looks like ${expected === 'cm' ? 'centimetres' : 'millimetres'}. ${shown(got)} ${expected ?? 'mm'} is ${(detail ?? 0).toFixed(2)} in: type that, or wrap it in CONVERT.`,
  notWhole: ({ field, got, expected }) =>
    `${field} is ${shown(got)}. Give a whole number${expected ? `, ${expected}` : ''}.`,
  notReading: ({ field, got, expected }) =>
    `${field} is ${shown(got)}, which is not a reading. Give ${expected ?? 'a letter A to G and a number, such as D2.5'}.`,
  offScale: ({ field, detail, got }) => {
    const points = detail ?? got;
    const shownPoints = typeof points === 'number' ? `${signed(points, 1, false)} points from A0, ` : '';
    return `${field === 'points' ? 'The result' : field} is ${shownPoints}off the scale (A0 to G9.9). Work with the points.`;
  },
  looseCore: ({ field, got, detail }) =>
    `${field}${typeof got === 'number' ? ` ${thousandths(got)}` : ''} is larger than the butt with its tape: the grip would turn. ${countOf(detail ?? 0, 'layer')} in all fill it.`,
  overTarget: ({ got, detail, expected }) =>
    `Even with ${countOf(detail ?? 0, 'layer')} the grip measures ${typeof got === 'number' ? thousandths(got) : shown(got)}, over the target${expected ? ` ${expected}` : ''}. Choose a smaller grip.`,
  tooManyLayers: ({ got, detail }) =>
    `${typeof got === 'number' ? thousandths(got) : shown(got)} in would need more than ${countOf(detail ?? 0, 'layer')}. Choose a larger grip.`,
  atFulcrum: ({ field, got }) =>
    `${field} is ${shown(got)}: at the fulcrum (14 in) no mass changes the reading. Give a place nearer the head or the butt.`,
  unknownItem: ({ field, got, list = 'Stock' }) =>
    `${field} is ${shown(got)}, which ${list} does not list. Add it to ${list} or choose another.`,
  unknownWay: ({ field, got, list = 'Weights' }) =>
    `${field} is ${shown(got)}, which ${list} does not list. Add it to ${list} or choose another.`,
  duplicate: ({ field, got }) =>
    `${field}: ${shown(got)} is there twice; the first one counts. Rename or remove this one.`,
  missingColumn: ({ field, expected }) =>
    `There is no column ${expected ? `“${expected}” in ${field}` : `“${field}”`}. Add it, or give the header row too.`,
  noRows: ({ field, expected }) => `${field} has no ${expected ?? 'rows'}. Add at least one.`,
  contradiction: ({ field, expected }) => `${field} does not fit: ${expected ?? 'two cells cannot both be true'}.`,
  tooFew: ({ field, got, expected, detail }) =>
    `${field}: ${shown(got)} ${expected ?? 'measurements'} so far, too few to tell. It takes at least ${detail ?? 'a few more'}.`,
  inseparable: ({ field, got, expected, detail }) =>
    `${field} cannot be told apart from what changes with it${conditionText(got, detail)}. ${expected ?? 'Vary what was measured'}.`,
  cellError: ({ field, got }) => `${field} holds the error ${shown(got)}. Mend that cell first.`,
};

/** One or two sentences for an issue. */
export function sayIssue(issue: Issue): string {
  return SENTENCES[issue.code](issue);
}

/** As many as a row of a plan has room for, and where the others are told. */
const SAID = 2;

/** What is wrong outside the clubs, for a cell: a few of it, and how much more the pane tells. */
export function sayProblems(problems: readonly Issue[]): string {
  const more = problems.length - SAID;
  const said = problems.slice(0, SAID).map(sayIssue);
  return [...said, ...(more > 0 ? [`And ${more} more: see the tab Plan.`] : [])].join(' ');
}

/** A condition number in brackets; beyond a million it says no more than that. */
function conditionText(got: Issue['got'], most: number | undefined): string {
  if (typeof got !== 'number' || most === undefined) return '';
  return ` (condition number ${got < 1e6 ? Math.round(got) : 'over a million'}, at most ${most})`;
}

function shown(got: Issue['got']): string {
  if (got === undefined || got === null || got === '') return 'blank';
  if (typeof got === 'number') return String(Number(got.toPrecision(12))).replace('-', '−');
  if (typeof got === 'boolean') return got ? 'TRUE' : 'FALSE';
  const text = got.length > 40 ? `${got.slice(0, 39)}…` : got;
  return `“${text}”`;
}
