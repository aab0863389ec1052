/** Words of the screens that help choosing; sentences about what was found stand in `src/words`. */
import { MM_PER_INCH } from '../core/index';
import type { LengthUnit } from './state/tools';
import type { MeasureFault } from './state/handModel';
import { thousandths } from '../words/readings';
import { counted, namesText, numberText } from './words';

export const HAND_WORDS = {
  title: 'The hand',
  unit: 'Unit',
  units: { in: 'Inches', mm: 'Millimetres' },
  how: 'Hand: wrist crease to the tip of the middle finger. Measure the hand that is uppermost on the grip.',
  hand: 'Hand length',
  finger: 'Middle finger',
  differ: 'The lower hand measures otherwise',
  lowerHand: 'Lower hand',
  lowerFinger: 'Its middle finger',
  useInches: (inches: number) => `Use ${inches.toFixed(2)} in`,
  useMillimetres: (inches: number) => `Use ${(inches * MM_PER_INCH).toFixed(0)} mm`,
  measureFirst: 'Measure the hand to see a size to start from.',
  start: (inches: string) => `Starts from ${inches} in.`,
  sampleTitle: 'On a sample grip',
  sampleHow: 'Let the player hold a grip of about that size. What the hand shows counts for more than any table.',
  notTried: 'Not tried',
  fingertips: 'Fingertips',
  fingertipsOptions: {
    '': 'Not tried',
    press: 'press into the palm',
    touch: 'just touch it',
    gap: 'leave a clear gap',
  },
  littleFinger: 'Little finger',
  littleFingerOptions: { '': 'Not tried', past: 'wraps past the centre line', short: 'stops short of it' },
  lowerIndex: 'Lower index',
  lowerIndexOptions: { '': 'Not tried', sits: 'sits round the grip', reaches: 'has to reach' },
  squeezes: 'The player squeezes the grip',
  pain: 'Pain in hand or elbow',
  errLarger: 'Err larger',
  errLargerOptions: { '0': 'No', '1': 'by one layer', '2': 'by two layers' },
  target: 'Target',
  lowerLayers: (layers: number) => `and ${counted(layers, 'layer')} more under the lower hand`,
  reachTitle: 'What reaches it',
  noneOnHand: 'none on hand',
  butt: 'On butt',
  buttOption: (butt: number, clubs: number) => `${thousandths(butt)} in (${counted(clubs, 'club')})`,
  noButt: 'No club has its butt measured: give Butt in Clubs, and what reaches the target shows here.',
  more: (count: number) => `${counted(count, 'grip')} more reach it.`,
  compare: (target: string) => `Compare grips at ${target}`,
  plan: (target: string) => `Plan at ${target}`,
  fit: 'Fit this',
  keep: 'Keep the hand in Jobs',
  guide: 'The size guide in Sizes',
  guideProblems: 'To mend in Sizes',
} as const;

/** What a measure wants, while it holds something else. */
export function measureFaultText(fault: MeasureFault, unit: LengthUnit): string {
  switch (fault.fault) {
    case 'notNumber':
      return unit === 'mm' ? 'Give a number alone, such as 193.' : 'Give a number alone, such as 7.6 or 7,6.';
    case 'unit':
      return `${numberText(fault.typed, 2).replace(/\.?0+$/, '')} looks like ${{ mm: 'millimetres', cm: 'centimetres', in: 'inches' }[fault.seems]}.`;
    case 'outOfRange':
      return unit === 'mm'
        ? `${Math.round(fault.low)} to ${Math.round(fault.high)} mm are accepted. Measure again.`
        : `${fault.low} to ${fault.high} in are accepted. Measure again.`;
  }
}

export const PLACE_WORDS = {
  title: 'Weighed grips',
  how: 'Weigh each loose grip, number it, and type the masses in that order; or paste a column. Where the set takes several items, put the item before the mass.',
  label: 'Masses in grams, one a line',
  example: '50.8\n51.6\n49.9',
  read: (grips: number, low: number, high: number) =>
    grips === 1
      ? `1 grip, ${numberText(low)} g.`
      : `${counted(grips, 'grip')}, ${numberText(low)} to ${numberText(high)} g.`,
  none: 'Type or paste masses to see which grip suits which club.',
  inOrder: 'In order',
  placed: 'Placed',
  largest: 'Largest miss, pt',
  usual: 'Usual miss, pt',
  head: 'Add at the heads, g',
  butt: 'Add in the butts, g',
  caption: 'As typed and as placed',
  tableCaption: 'Which grip goes on which club',
  club: 'Club',
  grip: 'Grip',
  mass: 'Mass, g',
  reading: 'Gripped',
  miss: 'Off, pt',
  number: 'no. ',
  noGrip: 'none',
  result: 'Which grip where',
  take: 'Use this placing',
  taken: 'The masses then stand in Clubs, so that plan and ticket name the very grip.',
} as const;

export const EVEN_WORDS = {
  title: 'Even out the readings',
  how: 'Choose what the clubs of a group are to read. Putters and juniors are left as they are.',
  options: { sheet: 'As in the sheet', own: 'Each as it was', one: 'One value', line: 'A line by length' },
  value: 'Reading',
  ownValue: (group: string) => `Reading for the ${group.toLowerCase()}`,
  group: (name: string, clubs: number, low: string, high: string) =>
    low === high
      ? `${name}: ${counted(clubs, 'club')}, ${low}`
      : `${name}: ${counted(clubs, 'club')}, ${low} to ${high}`,
  costs: (name: string) => `What each choice would take: ${name}`,
  add: 'Add, g',
  mostOff: 'Most off, pt',
  tooHeavy: 'Too heavy',
  unread: (name: string) => `${name}: no readings yet`,
  none: 'No woods, irons or wedges among these clubs.',
  nothing: 'Every group stays as in the sheet. Choose One value or A line by length for one of them.',
  notReading: 'A letter A to G and a number, such as D2. Until then the middle of the group counts.',
  result: 'With these targets',
  take: 'Use these targets',
} as const;

export const COMPARE_WORDS = {
  title: 'Every grip on these clubs',
  narrow: 'Narrow down',
  profile: 'Profile',
  profiles: { '': 'Any', round: 'Round', ribbed: 'Ribbed' },
  texture: 'Texture',
  core: 'Core',
  any: 'Any',
  mostPrice: 'Price up to',
  priceFault: 'A price, such as 8.50. Until then any price counts.',
  onHandOnly: 'Only what is on hand for all of them',
  orderBy: 'Order by',
  unbeatenFirst: 'Unbeaten first',
  working: (done: number, of: number) => `Trying grips: ${done} of ${of}`,
  caption: 'Grips tried on the whole set',
  grip: 'Grip',
  size: 'Size',
  change: 'Change',
  out: 'Out',
  add: 'Add, g',
  tick: (name: string) => `Put ${name} on the shortlist`,
  layers: 'Layers',
  bestAt: 'Best at',
  bestAtNothing: 'nothing alone',
  unbeaten: 'unbeaten',
  found: (tried: readonly { readonly unbeaten: boolean }[]) =>
    `${counted(tried.length, 'grip')} tried, ${tried.filter(({ unbeaten }) => unbeaten).length} unbeaten.`,
  unbeatenMeaning: 'Unbeaten: no other grip is at least as good on every count and better on one.',
  noneTried: 'No grip of Stock can be tried on these clubs.',
  allNarrowed: 'Nothing of Stock is left: narrow down less.',
  notTried: (count: number) => `${counted(count, 'grip')} not tried`,
  more: (shown: number, all: number) => `Showing ${shown} of ${all}`,
  moreButton: 'Show more',
  fit: 'Fit this grip',
  fill: 'Fill Compare sheet',
  noTarget: 'No target diameter is set, so sizes are not judged. Take one from Hand, or choose Size: Diameter in Plan.',
  plotX: 'Size error, thousandths',
  plotY: 'Largest change, pt',
  plotMass: 'Mass added to the set, g',
  plotText: (grips: number, unbeaten: number, xIs: 'size' | 'mass') =>
    `${counted(grips, 'grip')} by ${xIs === 'size' ? 'size error' : 'mass added'} and by largest change of a reading; ${unbeaten} unbeaten. The table below holds the same figures.`,
  beatenKey: 'beaten',
  bandKey: 'within size and reading tolerance',
} as const;

export const SOLVE_WORDS = {
  title: 'The best grip for each club',
  from: 'From',
  fromOptions: (ticked: number) => ({
    stock: 'All of Stock',
    shortlist: ticked ? `The ${counted(ticked, 'ticked grip')}` : 'Ticked grips',
  }),
  aims: ['First', 'Then', 'Last'],
  sizes: 'Sizes',
  go: 'Find it',
  stop: 'Stop',
  working: (done: number, of: number) => `Looking for it: ${done} of ${of}`,
  caption: 'Grip and layers for each club',
  club: 'Club',
  grip: 'Grip',
  layers: 'Layers',
  measures: 'Measures',
  reading: 'Finished',
  take: 'Use these grips',
  noTicks: 'Tick grips in the table above first, or choose from all of Stock.',
  cannotTitle: 'What kept the others out',
  stale: 'The clubs or choices have changed since: find it again.',
  losingTarget: (clubs: readonly string[]) =>
    `${namesText(clubs)}: no tape is right here, though the plan would find some for the target diameter. Taken over, that target goes from Clubs.`,
} as const;
