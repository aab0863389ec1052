/** Every word the pane shows that is not a sentence about a note, an issue or an outcome: those stand in `src/words`. */
import type { Hold, Verdict } from '../core/index';
import type { ClubChoices } from '../workbook/choices';
import { gramsText, readingText, signed, thousandths } from '../words/readings';
import { VERDICT_WORDS } from '../words/notes';
import { FIELD_RANGES, type FieldFault, type FormField } from './state/form';
import type { DecisionTopic } from './state/decisions';
import type { PlotModel, PlotRow } from './state/plot';
import type { Summary } from './state/summary';
import type { Screen } from './state/tools';
import type { FillAsked, GripSeen, JobSeen, ShopSeen, Who } from './state/work';
import type { Task } from './state/paneState';

/** `1 club`, `13 clubs`, `5,000 clubs`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count.toLocaleString('en-US')} ${count === 1 ? one : many}`;
}

/** Decimals as they are needed, a true minus sign: `−3.5`. */
export function numberText(value: number, decimals = 1): string {
  return signed(value, decimals, false);
}

/** `+3.5`, `−0.4`, `0.0`. */
export function signedText(value: number, decimals = 1): string {
  return signed(value, decimals);
}

export function verdictWord(verdict: Verdict): string {
  return VERDICT_WORDS[verdict];
}

/** `7 iron, 8 iron and PW`, the rest counted when there are many. */
export function namesText(names: readonly string[], most = 6): string {
  const shown = names.slice(0, names.length > most ? most - 1 : most);
  const rest = names.length - shown.length;
  const all = rest ? [...shown, `${rest} more`] : shown;
  return all.length < 2 ? (all[0] ?? '') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;
}

export const COMMON = {
  name: 'Setwright',
  help: 'Help',
  loading: 'Reading the workbook…',
  opening: 'Opening…',
  planning: 'Planning…',
  unread: 'The workbook could not be read',
  unreadText: 'What happened stands below. Nothing was changed.',
  again: 'Read again',
  lists: 'Look at the lists',
  dismiss: 'Close this message',
  status: 'What happened',
} as const;

export const FIRST_RUN = {
  title: 'Plan a regrip in this workbook',
  what: 'Setwright works out what every club of a set will weigh and read with its new grip, and how many grams put it right.',
  makes:
    'It keeps jobs, clubs, stock and rates in tables, each on a sheet of its own. Nothing that is there now is changed.',
  setUp: 'Set up this workbook',
  ownLists: 'Use lists of my own',
  notNow: 'Not now',
  skipped: 'The worksheet functions work without any table. Set the workbook up when you want whole sets planned.',
} as const;

/** The screens by their tabs. */
export const SCREEN_WORDS: Readonly<Record<Screen, string>> = {
  plan: 'Plan',
  hand: 'Hand',
  compare: 'Compare',
  even: 'Even out',
  place: 'Place',
  intake: 'Intake',
  quote: 'Quote',
  stock: 'Stock',
  bench: 'Bench',
  week: 'Week',
  lists: 'Lists',
};

export const SCREENS_LABEL = 'What to work on';

export const WHO = {
  label: 'Plan for',
  selection: 'Selected clubs',
  selectionNow: (rows: number) =>
    rows ? `${counted(rows, 'row')} of Clubs selected` : 'Select cells in the rows of Clubs that you want planned.',
  job: ({ job, customer }: JobSeen) => (customer ? `${job} · ${customer}` : job),
  jobDetail: ({ rows, done }: JobSeen) => `${counted(rows.length, 'club')}${done ? ' · done' : ''}`,
  none: 'No jobs yet',
} as const;

export const WHAT = {
  title: 'What to fit',
  grip: 'Grip',
  size: 'Size',
  hold: 'Hold',
  asInSheet: 'As in the sheet',
  more: 'Lower hand, tolerance, weighting',
  lower: 'Lower hand',
  lowerUnit: 'layers',
  perClub: (clubs: number, from: readonly Screen[]) =>
    `${counted(clubs, 'club')} with choices of their own, from ${namesText(from.map((screen) => SCREEN_WORDS[screen]))}.`,
  dropPerClub: 'Drop them',
  tolerance: 'Tolerance',
  toleranceUnit: 'pt',
  weighting: 'Weighting',
  layers: 'Layers',
  layersLabel: 'Layers of build-up tape',
  diameter: 'Diameter',
  diameterLabel: 'Target diameter in inches',
  puttersToo: (putters: number) => (putters === 1 ? 'Change the putter too' : 'Change the putters too'),
  targetLabel: 'Target reading',
  targetPlaceholder: 'sheet’s',
  noGrip: 'No grip in Stock has these letters.',
  moreGrips: (count: number) => `${count} more: keep typing`,
  noStock: 'Stock is empty. Add a row for each grip you keep: Item, Core and Mass are enough.',
  gripDetail: ({ size, coreInches, gripGrams, onHand }: GripSeen) =>
    [
      size,
      coreInches === undefined ? '' : `${thousandths(coreInches)} in`,
      gripGrams === undefined ? '' : `${numberText(gripGrams)} g`,
      onHand === undefined ? '' : `${onHand} on hand`,
    ]
      .filter(Boolean)
      .join(' · '),
  gripName: ({ item, description }: GripSeen) => (description ? `${item} · ${description}` : item),
} as const;

export const SIZES = { sheet: WHAT.asInSheet, layers: WHAT.layers, diameter: WHAT.diameter } as const;
export const HOLDS_SHOWN = {
  sheet: WHAT.asInSheet,
  asArrived: 'As it was',
  target: 'Target',
  nothing: 'Nothing',
} as const;

const FIELD_SAYS: Record<FormField, string> = {
  layers: `Whole layers, ${FIELD_RANGES.layers.low} to ${FIELD_RANGES.layers.high}.`,
  lowerLayers: `Whole layers, ${FIELD_RANGES.lowerLayers.low} to ${FIELD_RANGES.lowerLayers.high}.`,
  diameter: `Inches, ${FIELD_RANGES.diameter.low} to ${FIELD_RANGES.diameter.high}, such as 0.920.`,
  target: 'A letter A to G and a number, such as D2.',
  tolerance: `Points, ${FIELD_RANGES.tolerance.low} to ${FIELD_RANGES.tolerance.high}, such as 0.5.`,
};

/** Under a field: what is accepted, and that the sheet's value counts until then. */
export function faultText(field: FormField, fault: FieldFault): string {
  return fault === 'blank' ? FIELD_SAYS[field] : `${FIELD_SAYS[field]} Until then the sheet counts.`;
}

/** `13 clubs: 9 within, 2 likely, 2 out`. */
export function summaryText({ clubs, counts }: Summary): string {
  const parts = counts.map(
    ({ verdict, clubs: some }) => `${some.toLocaleString('en-US')} ${VERDICT_WORDS[verdict].toLowerCase()}`,
  );
  return `${counted(clubs, 'club')}: ${parts.join(', ')}`;
}

/** `41 g at the heads, 6 g in the butts`. */
export function addedText({ headGrams, buttGrams }: Summary): string {
  const parts = [
    headGrams ? `${gramsText(headGrams)} at the heads` : '',
    buttGrams ? `${gramsText(buttGrams)} in the butts` : '',
  ];
  return parts.filter(Boolean).join(', ') || 'no weight to add';
}

export const PREVIEW = {
  title: 'Preview',
  decide: (clubs: number) => `${counted(clubs, 'club')} ${clubs === 1 ? 'needs' : 'need'} a decision`,
  mend: (count: number) => `${counted(count, 'problem')} in the shop’s tables`,
  more: (shown: number, all: number) => `Showing ${shown} of ${all.toLocaleString('en-US')} clubs`,
  moreButton: 'Show more',
} as const;

export const PLOT = {
  before: 'as arrived',
  gripped: 'with the grip',
  after: 'with the weight',
  band: 'tolerance',
  spread: '± range',
  scale: { reading: 'Reading', change: 'Change, pt' },
  notHeld: 'nothing held',
  noReading: 'no reading',
  noChange: 'change not known',
} as const;

/** A tick: a reading's letter and number, or signed points. */
export function tickText(tick: number, scale: PlotModel['scale']): string {
  return scale === 'reading' ? readingText(tick, 0) : signedText(tick, 0);
}

/** What stands in a row whose marks the scale cannot show. */
export function asideText({ aside, verdict }: PlotRow): string {
  if (!aside) return '';
  if (aside.change === undefined)
    return aside.reading === undefined ? PLOT.noReading : `${readingText(aside.reading)}, ${PLOT.noChange}`;
  return `${signedText(aside.change)} pt${verdict === 'notHeld' ? `, ${PLOT.notHeld}` : ''}`;
}

/** The plot in words, for those who do not see it. */
export function plotText(plot: PlotModel, summary: Summary): string {
  const outside = plot.rows.filter(({ verdict }) => verdict === 'out').map(({ name }) => name);
  const what = plot.scale === 'reading' ? 'Swing weight by club' : 'Change in points by club';
  const out = outside.length ? ` Out of tolerance: ${namesText(outside)}.` : '';
  return `${what}: as arrived, with the grip, with the weight. ${summaryText(summary)}.${out} The table below holds the same figures.`;
}

export const TABLE = {
  caption: 'Each club',
  club: 'Club',
  layers: 'Layers',
  reading: 'Reading',
  add: 'Add, g',
  verdict: 'Verdict',
  arrow: '→',
  to: 'to',
  none: '–',
  flagged: 'needs a decision',
} as const;

export const DETAIL = {
  basis: 'Known from',
  spread: 'Confidence',
  held: 'Held at',
  size: 'Upper hand',
  lower: 'Lower hand',
  grip: 'Grip and tape',
  club: 'Whole club',
  add: 'Weight',
  inertia: 'Inertia',
  tape: 'Tape used',
  shift: 'What moves it',
  reading: 'Reading',
  grip_: 'New grip',
} as const;

export const HELD: Record<Hold, string> = { asArrived: 'as it was', target: 'target', nothing: 'nothing' };

/** What each part of a shift is called. */
export const SHIFTS = {
  grip: 'grip',
  tape: 'tape',
  twoWay: 'two-way strip',
  cap: 'cap',
  length: 'length',
  buttWeight: 'butt weight',
} as const;

/** What is wrong outside the clubs that are planned. */
export const PROBLEMS = { title: 'To mend in the shop’s tables' } as const;

export const DECISIONS = {
  title: 'Needs a decision',
  likewise: (clubs: readonly string[]) => `Likewise ${namesText(clubs)}, each with figures of its own.`,
} as const;

export const TOPICS: Record<DecisionTopic, string> = {
  issue: 'A cell could not be read',
  noGrip: 'No new grip',
  readingUnknown: 'Reading not known',
  heldUnknown: 'Nothing to hold it to',
  massUnknown: 'Club mass not known',
  massContradicts: 'Masses that do not fit together',
  oldGripUnknown: 'Old grip not known',
  bareMassUnknown: 'Bare mass not known',
  lengthUnknown: 'Length not known',
  bareContradicts: 'Readings that do not fit together',
  targetUnknown: 'Target not known',
  looseCore: 'Grip would be loose',
  tightCore: 'Tight fit',
  overTarget: 'Larger than the target',
  tooManyLayers: 'Too many layers',
  sizeUnknown: 'Size not known',
  overLimit: 'More weight than your limit',
  offScale: 'Off the scale',
  mixedProfiles: 'Round and ribbed mixed',
  stockShort: 'Stock is short',
  duplicateClub: 'The same club twice',
  breach: 'Rules of the game',
};

export const LESSON = {
  title: (club: string) => `What the stripped ${club} taught`,
  text: (grams: number, inches: number) =>
    `Its old grip weighed ${numberText(grams)} g and balanced at ${numberText(inches)} in.`,
  ask: (clubs: number) => `Use this for the ${clubs === 1 ? 'other club' : `${clubs} other clubs`} with the same grip?`,
  use: (clubs: number) => `Use for ${counted(clubs, 'club')}`,
} as const;

const NOTHING_TO_UNDO = 'Nothing to undo';

export const ACTIONS = {
  fill: 'Fill plan',
  freeze: 'Freeze to values',
  undo: (label: string | null | undefined) =>
    label === null ? NOTHING_TO_UNDO : label === undefined ? 'Undo last fill' : `Undo: ${label}`,
  where: 'Where the plan goes',
  planSheet: 'Own sheet',
  openSheet: 'Selected cell',
  nothing: 'Nothing to fill yet.',
  andMore: (count: number) => `and ${count} more`,
  writeOver: 'Write over them',
  keep: 'Leave them',
  stop: 'Stop',
  occupied: 'Something stands there already',
  occupiedText: (count: number) =>
    `This would write over ${counted(count, 'cell')}. Nothing was written. Write over ${count === 1 ? 'it' : 'them'}, or make room first.`,
} as const;

const CHOSEN: readonly (readonly [keyof ClubChoices, string])[] = [
  ['newItem', 'grip'],
  ['newMass', 'weighed mass'],
  ['layers', 'layers'],
  ['lowerLayers', 'lower layers'],
  ['targetDiameter', 'target diameter'],
  ['hold', 'hold'],
  ['target', 'target reading'],
  ['tolerance', 'tolerance'],
  ['weighting', 'weighting'],
];

/** What *Fill plan* will write and blank, before it does. */
export function willWriteText(choices: FillAsked['choices'], clubs: number, place: string): string {
  const all: readonly ClubChoices[] = [choices, ...(choices.perClub?.values() ?? [])];
  const words = (which: (value: unknown) => boolean) =>
    CHOSEN.filter(([key]) => all.some((each) => which(each[key]))).map(([, word]) => word);
  const chosen = words((value) => value !== undefined && value !== null);
  const blanked = words((value) => value === null).filter((word) => !chosen.includes(word));
  const plan = `the plan into ${place}`;
  if (!chosen.length) return `Writes ${plan}. Clubs stays as it is.`;
  const writes = `Writes the ${namesText(chosen)} of ${counted(clubs, 'club')} into Clubs`;
  return blanked.length
    ? `${writes}, blanks the ${namesText(blanked)} there, and writes ${plan}.`
    : `${writes}, and ${plan}.`;
}

/** Where the plan goes, inside a sentence. */
export function placeText(where: FillAsked['where'], sheet: string): string {
  return where === 'planSheet' ? `sheet ‘${sheet}’` : 'the open sheet, from the selected cell';
}

/** How what was asked ended, above the sentence that says more. */
export const ENDS = {
  look: { failed: 'The workbook could not be read' },
  setUp: {
    done: 'The workbook is set up',
    partly: 'Set up, but for what was in the way',
    failed: 'The workbook was not set up',
  },
  fill: { done: 'Plan filled', failed: 'The plan was not filled' },
  columns: { done: 'Columns added', failed: 'No column was added' },
  freeze: { done: 'The plan holds values now', failed: 'The plan was not frozen' },
  undo: { done: 'Last fill undone', nothing: NOTHING_TO_UNDO, failed: 'Nothing was taken back' },
  lesson: { done: 'Old grips are known now', failed: 'The old grips stay as they were' },
  noPlan: 'There is no plan of these clubs in the workbook. Fill it first, then freeze it.',
  chosenClubs: 'of chosen clubs',
  ourMistake: (said: string) =>
    `Setwright made a mistake (${said}). Look at the sheet, use Undo if something was written, and read the workbook again.`,
} as const;

export const TASKS: Record<Exclude<Task, 'deed'>, string> = {
  look: COMMON.loading,
  setUp: 'Setting up the workbook…',
  fill: 'Filling the plan…',
  freeze: 'Turning the plan into values…',
  undo: 'Taking back the last fill…',
  lesson: 'Writing the old grip’s mass…',
};

export const EMPTY = {
  noJobs: 'No jobs yet',
  noJobsText:
    'Add a row to Jobs with the job’s number and its customer, then a row to Clubs for each club, with that number under Job. It shows here at once.',
  noClubs: (who: Who) => (who.by === 'job' ? `No clubs in job ${who.job} yet` : 'No clubs selected'),
  noClubsText: (who: Who) =>
    who.by === 'job'
      ? `Add a row to Clubs for each club, with ${who.job} under Job. Its length, reading and old grip are a good start.`
      : 'Select cells in the rows of Clubs that you want planned. Any column will do.',
  jobless: (list: string) =>
    list === ''
      ? 'The heading Job of the table Clubs is gone, so its clubs belong to no job. They stand there as they were: type Job over the column of their job numbers.'
      : `No heading of your list “${list}” stands for Job. Plan for selected clubs, or say on the tab Lists which heading is Job.`,
  cannot: 'This cannot be planned yet',
  lost: 'A list of yours is not as it was when it was connected. What was planned from it before may be wrong and is not shown.',
  missing: (tables: readonly string[]) =>
    tables.length === 1 ? `Table ${tables[0]} is missing` : `Tables ${namesText(tables)} are missing`,
  missingText:
    'Where it has another name now, give it this one back under Table Design. Or set the workbook up again; tables that are there are kept.',
  goingOn: (table: string, rows: number) =>
    `${counted(rows, 'row')} right below your list for ${table} ${rows === 1 ? 'is' : 'are'} not read. The tab Lists takes them in.`,
  missingHint:
    'The tab Lists makes what is missing. A table that has another name now gets its own back under Table Design.',
} as const;

/** Why there is no club to plan, and what to do. */
export function nothingToPlan(who: Who, { jobs, jobless }: Pick<ShopSeen, 'jobs' | 'jobless'>) {
  const none = who.by === 'job' && jobs.length === 0;
  if (who.by === 'job' && jobless !== undefined) return { title: EMPTY.cannot, text: EMPTY.jobless(jobless) };
  return none
    ? { title: EMPTY.noJobs, text: EMPTY.noJobsText }
    : { title: EMPTY.noClubs(who), text: EMPTY.noClubsText(who) };
}

export const OUTSIDE = {
  text: 'This page is the task pane of an Excel add-in: it has no workbook to work on here.',
  tooOld:
    'This Excel is too old for the pane (it lacks ExcelApi 1.9). Update Excel, or open the workbook in Excel on the web. The worksheet functions may work all the same.',
  link: 'Try Setwright without Excel',
} as const;
