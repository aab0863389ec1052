/**
 * Our tables and their columns: what a shop sees as header, which unit it is in, what may stand in it, and under which
 * other headings a shop may already keep it. Pure data; everything that reads or makes a table reads this.
 */

import { CAP_THICKNESS, DEFAULT_SETTINGS, RANGES, TAPED_LENGTH } from '../core/index';

export type ColumnKind = 'text' | 'number' | 'count' | 'reading' | 'money' | 'date' | 'choice' | 'yesNo';

export interface Column {
  /** Our name for it; never changes. */
  readonly key: string;
  /** What stands in the header row, with its unit. */
  readonly header: string;
  readonly unit?: string;
  readonly kind: ColumnKind;
  /** The words of a choice, as written in the sheet. */
  readonly choices?: readonly string[];
  /** A drop-down fed by another table's column. */
  readonly from?: { readonly table: string; readonly key: string };
  /** What input checks accept, in the column's unit. */
  readonly low?: number;
  readonly high?: number;
  readonly needed?: boolean;
  /** Width in characters. */
  readonly width: number;
  /** Excel number format. */
  readonly format?: string;
  /** Other headings that mean the same, lower case. */
  readonly synonyms: readonly string[];
  /** One sentence: what it is, and what a blank means. */
  readonly help: string;
}

export interface TableSchema {
  /** The table's name in the workbook, and its sheet's. */
  readonly name: string;
  /** One sentence for the first run and the help. */
  readonly purpose: string;
  readonly columns: readonly Column[];
}

/** Kinds of club, heaviest reading last; the plan's groups and defaults follow from them. */
export const CLUB_KINDS = ['Driver', 'Wood', 'Hybrid', 'Iron', 'Wedge', 'Putter', 'Junior'] as const;
export const HANDS = ['Right', 'Left'] as const;
export const CATALOGUE_MASS = 'Catalogue';
export const WEIGHED_MASS = 'Weighed';
/** Another club's grip of the same model showed it when that club was stripped. */
export const ALIKE_MASS = 'Like one stripped';
export const MASS_KNOWN = [CATALOGUE_MASS, WEIGHED_MASS, ALIKE_MASS] as const;
export const HOLDS = ['As it was', 'Target', 'Nothing'] as const;
export const YES_NO = ['Yes', 'No'] as const;
export const PROFILES = ['Round', 'Ribbed'] as const;
export const SIZE_CLASSES = ['Undersize', 'Standard', 'Midsize', 'Jumbo'] as const;
export const WEIGHT_ENDS = ['Head', 'Butt'] as const;
export const JOB_STATES = ['Open', 'Waiting', 'Done'] as const;
export const ESTIMATORS = ['By volume', 'Additive'] as const;
export const PUT_RIGHT = ['When out of tolerance', 'Whenever a step helps'] as const;

/** What an input check of the core accepts, as a column's ends. */
function limits({ low, high }: { readonly low: number; readonly high: number }): { low: number; high: number } {
  return { low, high };
}

const CORE_SIZES = '.580, .600 or .620 in';

export const STOCK = {
  name: 'Stock',
  purpose: 'Every grip you keep: size, core, mass and how many are on hand.',
  columns: [
    {
      key: 'item',
      header: 'Item',
      kind: 'text',
      needed: true,
      width: 12,
      format: '@',
      synonyms: ['sku', 'code', 'part', 'part no', 'article', 'grip'],
      help: 'Your own code for the grip; Clubs names grips by it.',
    },
    {
      key: 'description',
      header: 'Description',
      kind: 'text',
      width: 30,
      synonyms: ['name', 'model', 'product'],
      help: 'What the grip is called.',
    },
    {
      key: 'size',
      header: 'Size',
      kind: 'choice',
      choices: SIZE_CLASSES,
      width: 11,
      synonyms: ['size class', 'moulded size', 'molded size'],
      help: 'Moulded size.',
    },
    {
      key: 'core',
      header: 'Core (in)',
      unit: 'in',
      kind: 'number',
      ...limits(RANGES.coreInches),
      needed: true,
      width: 9,
      format: '.000',
      synonyms: ['core', 'core size', 'bore', 'inner diameter'],
      help: `The bore the grip is made for: ${CORE_SIZES}.`,
    },
    {
      key: 'profile',
      header: 'Profile',
      kind: 'choice',
      choices: PROFILES,
      width: 11,
      synonyms: ['rib', 'reminder', 'round/ribbed'],
      help: 'Round, or ribbed along the back.',
    },
    {
      key: 'mass',
      header: 'Mass (g)',
      unit: 'g',
      kind: 'number',
      ...limits(RANGES.gripGrams),
      needed: true,
      width: 9,
      format: '0.0',
      synonyms: ['mass', 'weight', 'wt', 'grip weight', 'grams'],
      help: 'Mass of one loose grip.',
    },
    {
      key: 'massSpread',
      header: 'Mass ± (g)',
      unit: 'g',
      kind: 'number',
      low: 0.1,
      high: 20,
      width: 10,
      format: '0.0',
      synonyms: ['tolerance', 'mass tolerance', 'weight tolerance', '±'],
      help: 'How far single grips of this item scatter; blank: as in Settings.',
    },
    {
      key: 'upperDiameter',
      header: 'Upper diameter (in)',
      unit: 'in',
      kind: 'number',
      low: 0.7,
      high: 1.8,
      width: 12,
      format: '.000',
      synonyms: ['upper diameter', 'outside diameter', 'od', 'diameter', 'diameter at 2 in'],
      help: 'Outside diameter 2 in below the cap, on a butt of its own core size.',
    },
    {
      key: 'lowerDiameter',
      header: 'Lower diameter (in)',
      unit: 'in',
      kind: 'number',
      low: 0.6,
      high: 1.8,
      width: 12,
      format: '.000',
      synonyms: ['lower diameter', 'lower od', 'diameter at 6 in'],
      help: 'Outside diameter 6 in below the cap, on a butt of its own core size.',
    },
    {
      key: 'length',
      header: 'Length (in)',
      unit: 'in',
      kind: 'number',
      ...limits(RANGES.gripLengthInches),
      width: 10,
      format: '0.00',
      synonyms: ['length', 'grip length'],
      help: 'Length of the grip; blank: the taped length in Settings.',
    },
    {
      key: 'balance',
      header: 'Balance point (in)',
      unit: 'in',
      kind: 'number',
      ...limits(RANGES.gripBalanceInches),
      width: 12,
      format: '0.0',
      synonyms: ['balance', 'balance point', 'cg'],
      help: 'Where the loose grip balances on an edge, from the cap; blank: 0.40 of its length.',
    },
    {
      key: 'cap',
      header: 'Cap (in)',
      unit: 'in',
      kind: 'number',
      low: 0.01,
      high: 1,
      width: 9,
      format: '.000',
      synonyms: ['cap', 'cap thickness', 'end cap'],
      help: 'Thickness of the closed end; blank: as in Settings.',
    },
    {
      key: 'cost',
      header: 'Cost',
      kind: 'money',
      low: 0,
      width: 9,
      format: '#,##0.00',
      synonyms: ['cost', 'cost price', 'buy', 'unit cost'],
      help: 'What one costs you.',
    },
    {
      key: 'price',
      header: 'Price',
      kind: 'money',
      low: 0,
      width: 9,
      format: '#,##0.00',
      synonyms: ['price', 'retail', 'sell', 'sale price'],
      help: 'What you charge for one.',
    },
    {
      key: 'onHand',
      header: 'On hand',
      kind: 'count',
      low: 0,
      high: 100000,
      width: 9,
      format: '0',
      synonyms: ['qty', 'quantity', 'stock', 'in stock', 'count', 'on hand qty'],
      help: 'How many there are; blank: not counted.',
    },
    {
      key: 'reorderAt',
      header: 'Reorder at',
      kind: 'count',
      low: 0,
      high: 100000,
      width: 11,
      format: '0',
      synonyms: ['reorder', 'reorder point', 'min', 'minimum'],
      help: 'Order when no more than this many are free.',
    },
    {
      key: 'pack',
      header: 'Pack',
      kind: 'count',
      low: 1,
      high: 1000,
      width: 8,
      format: '0',
      synonyms: ['pack size', 'per pack', 'case'],
      help: 'How many come in one pack.',
    },
    {
      key: 'supplier',
      header: 'Supplier',
      kind: 'text',
      width: 18,
      synonyms: ['vendor', 'source'],
      help: 'Where you buy it.',
    },
  ],
} as const satisfies TableSchema;

export const JOBS = {
  name: 'Jobs',
  purpose: 'One row for each bag on the counter.',
  columns: [
    {
      key: 'job',
      header: 'Job',
      kind: 'text',
      needed: true,
      width: 9,
      format: '@',
      synonyms: ['job no', 'job number', 'ticket', 'order', 'work order'],
      help: 'Your number or name for the job; Clubs refers to it.',
    },
    {
      key: 'customer',
      header: 'Customer',
      kind: 'text',
      width: 24,
      synonyms: ['client', 'name', 'player'],
      help: 'Whose clubs they are.',
    },
    {
      key: 'due',
      header: 'Due',
      kind: 'date',
      width: 12,
      format: 'yyyy-mm-dd',
      synonyms: ['due date', 'ready by', 'promised'],
      help: 'When the clubs are promised.',
    },
    {
      key: 'handLength',
      header: 'Hand length (in)',
      unit: 'in',
      kind: 'number',
      low: 5,
      high: 10,
      width: 10,
      format: '0.00',
      synonyms: ['hand', 'hand size', 'hand length'],
      help: 'Wrist crease to the tip of the middle finger.',
    },
    {
      key: 'fingerLength',
      header: 'Middle finger (in)',
      unit: 'in',
      kind: 'number',
      low: 2,
      high: 5,
      width: 10,
      format: '0.00',
      synonyms: ['finger', 'finger length', 'middle finger'],
      help: 'Length of the middle finger.',
    },
    {
      key: 'notes',
      header: 'Notes',
      kind: 'text',
      width: 40,
      synonyms: ['note', 'remarks', 'comment', 'comments'],
      help: 'Anything to remember.',
    },
    {
      key: 'discount',
      header: 'Discount (%)',
      unit: '%',
      kind: 'number',
      low: 0,
      high: 100,
      width: 12,
      format: '0.0',
      synonyms: ['discount', 'rebate'],
      help: 'Taken off the whole job.',
    },
    {
      key: 'status',
      header: 'Status',
      kind: 'choice',
      choices: JOB_STATES,
      width: 10,
      synonyms: ['state', 'stage'],
      help: 'Open, waiting for something, or done.',
    },
  ],
} as const satisfies TableSchema;

export const CLUBS = {
  name: 'Clubs',
  purpose: 'One row for each club: what it is, how it arrived, what it will get.',
  columns: [
    {
      key: 'job',
      header: 'Job',
      kind: 'text',
      from: { table: 'Jobs', key: 'job' },
      width: 9,
      format: '@',
      synonyms: ['job no', 'job number', 'ticket', 'order', 'work order'],
      help: 'Which job the club belongs to.',
    },
    {
      key: 'club',
      header: 'Club',
      kind: 'text',
      needed: true,
      width: 12,
      format: '@',
      synonyms: ['club name', 'no', 'number', 'iron'],
      help: 'What you call it: 7 iron, driver.',
    },
    {
      key: 'kind',
      header: 'Kind',
      kind: 'choice',
      choices: CLUB_KINDS,
      width: 9,
      synonyms: ['type', 'club type', 'category'],
      help: 'Sets what is held when Hold is blank.',
    },
    {
      key: 'hand',
      header: 'Hand',
      kind: 'choice',
      choices: HANDS,
      width: 8,
      synonyms: ['handed', 'lh/rh', 'r/l'],
      help: 'Right or left handed.',
    },
    {
      key: 'newItem',
      header: 'New grip',
      kind: 'text',
      from: { table: 'Stock', key: 'item' },
      width: 12,
      format: '@',
      synonyms: ['new item', 'fit', 'grip to fit', 'item'],
      help: 'Item from Stock that will be fitted.',
    },
    {
      key: 'layers',
      header: 'Layers',
      kind: 'count',
      ...limits(RANGES.layers),
      width: 10,
      format: '0',
      synonyms: ['tape layers', 'wraps', 'build-up', 'layers of tape'],
      help: 'Build-up layers under the new grip; blank, or 0 beside a target diameter: found from that diameter; else none.',
    },
    {
      key: 'lowerLayers',
      header: 'Lower layers',
      kind: 'count',
      ...limits(RANGES.layers),
      width: 10,
      format: '0',
      synonyms: ['lower hand layers', 'layers lower hand', 'lower build-up'],
      help: 'Further layers under the lower hand only.',
    },
    {
      key: 'targetDiameter',
      header: 'Target diameter (in)',
      unit: 'in',
      kind: 'number',
      low: 0.7,
      high: 1.8,
      width: 12,
      format: '.000',
      synonyms: ['target size', 'size wanted', 'target diameter', 'diameter wanted'],
      help: 'Upper diameter wanted; used where Layers is blank.',
    },
    {
      key: 'hold',
      header: 'Hold',
      kind: 'choice',
      choices: HOLDS,
      width: 10,
      synonyms: ['keep', 'hold reading'],
      help: 'What the finished club must read; blank: the default of its kind.',
    },
    {
      key: 'target',
      header: 'Target reading',
      kind: 'reading',
      width: 11,
      format: '@',
      synonyms: ['target swing weight', 'target sw', 'wanted reading'],
      help: 'Reading wanted when Hold is Target.',
    },
    {
      key: 'tolerance',
      header: 'Tolerance (pt)',
      unit: 'pt',
      kind: 'number',
      low: 0.1,
      high: 10,
      width: 13,
      format: '0.0',
      synonyms: ['tolerance', 'tol'],
      help: 'Points either way that still count as right; blank: as in Settings.',
    },
    {
      key: 'weighting',
      header: 'Weighting',
      kind: 'text',
      from: { table: 'Weights', key: 'way' },
      width: 14,
      synonyms: ['way of weighting', 'weight way'],
      help: 'Where head weight goes; blank: as in Settings.',
    },
    {
      key: 'lengthChange',
      header: 'Length change (in)',
      unit: 'in',
      kind: 'number',
      ...limits(RANGES.addedInches),
      width: 10,
      format: '0.00',
      synonyms: ['length change', 'extend', 'extension', 'trim'],
      help: 'Added at the butt; negative: trimmed.',
    },
    {
      key: 'length',
      header: 'Length (in)',
      unit: 'in',
      kind: 'number',
      ...limits(RANGES.clubInches),
      width: 10,
      format: '0.00',
      synonyms: ['play length', 'club length', 'length'],
      help: 'Club length as it arrived.',
    },
    {
      key: 'butt',
      header: 'Butt (in)',
      unit: 'in',
      kind: 'number',
      ...limits(RANGES.buttInches),
      width: 8,
      format: '.000',
      synonyms: ['butt', 'butt diameter', 'butt size', 'shaft butt'],
      help: 'Calliper reading of the bare butt 2 in below its end.',
    },
    {
      key: 'taper',
      header: 'Taper (in/in)',
      unit: 'in/in',
      kind: 'number',
      low: 0,
      high: 0.03,
      width: 11,
      format: '0.000',
      synonyms: ['taper', 'butt taper'],
      help: 'How fast the butt thins toward the head; blank: none.',
    },
    {
      key: 'reading',
      header: 'Reading',
      kind: 'reading',
      width: 11,
      format: '@',
      synonyms: ['swing weight', 'swingweight', 'sw', 'reading as arrived', 'sw in'],
      help: 'Swing weight as it arrived: D2.4, or points above A0 as a number.',
    },
    {
      key: 'mass',
      header: 'Club mass (g)',
      unit: 'g',
      kind: 'number',
      ...limits(RANGES.clubGrams),
      width: 9,
      format: '0.0',
      synonyms: ['mass', 'total weight', 'club weight', 'total mass', 'mass as arrived'],
      help: 'Whole club as it arrived.',
    },
    {
      key: 'oldItem',
      header: 'Old grip',
      kind: 'text',
      width: 16,
      format: '@',
      synonyms: ['old item', 'grip as arrived', 'grip fitted'],
      help: 'What is on it now; an item of Stock fills in its mass, length, balance point and cap.',
    },
    {
      key: 'oldMass',
      header: 'Old grip mass (g)',
      unit: 'g',
      kind: 'number',
      ...limits(RANGES.gripGrams),
      width: 9,
      format: '0.0',
      synonyms: ['old mass', 'old grip weight', 'old weight'],
      help: 'Mass of the old grip without tape; blank: as in Stock.',
    },
    {
      key: 'oldMassKnown',
      header: 'Old mass from',
      kind: 'choice',
      choices: MASS_KNOWN,
      width: 16,
      synonyms: ['old mass basis', 'known from'],
      help: 'Weighed once it was off whole, like one that was stripped off another club, or from a catalogue (also when blank).',
    },
    {
      key: 'oldLayers',
      header: 'Old layers',
      kind: 'count',
      ...limits(RANGES.layers),
      width: 10,
      format: '0',
      synonyms: ['old wraps', 'old tape layers'],
      help: 'Build-up layers under the old grip; blank: none.',
    },
    {
      key: 'oldBalance',
      header: 'Old balance point (in)',
      unit: 'in',
      kind: 'number',
      ...limits(RANGES.gripBalanceInches),
      width: 11,
      format: '0.0',
      synonyms: ['old balance', 'old balance point'],
      help: 'Balance point of the old grip from its cap; blank: as in Stock, else 0.40 of its length.',
    },
    {
      key: 'oldCap',
      header: 'Old cap (in)',
      unit: 'in',
      kind: 'number',
      low: 0.01,
      high: 1,
      width: 9,
      format: '.000',
      synonyms: ['old cap', 'old cap thickness'],
      help: 'Thickness of the old cap; blank: as in Stock, else as in Settings.',
    },
    {
      key: 'buttWeight',
      header: 'Butt weight (g)',
      unit: 'g',
      kind: 'number',
      low: 0,
      high: 150,
      width: 10,
      format: '0.0',
      synonyms: ['butt weight', 'counterweight'],
      help: 'A weight in the butt end, if there is one.',
    },
    {
      key: 'buttWeightLeaves',
      header: 'Leaves with grip',
      kind: 'yesNo',
      choices: YES_NO,
      width: 10,
      synonyms: ['weight leaves', 'leaves with the grip'],
      help: 'Whether that weight belongs to the old grip and goes with it.',
    },
    {
      key: 'bareReading',
      header: 'Bare reading',
      kind: 'reading',
      width: 11,
      format: '@',
      synonyms: ['bare sw', 'reading bare', 'stripped reading'],
      help: 'Reading after stripping, no grip and no tape.',
    },
    {
      key: 'bareMass',
      header: 'Bare mass (g)',
      unit: 'g',
      kind: 'number',
      low: 120,
      high: 900,
      width: 9,
      format: '0.0',
      synonyms: ['bare mass', 'bare weight', 'stripped mass'],
      help: 'Mass after stripping.',
    },
    {
      key: 'plug',
      header: 'Plug mass (g)',
      unit: 'g',
      kind: 'number',
      ...limits(RANGES.plugGrams),
      width: 9,
      format: '0.0',
      synonyms: ['plug', 'plug mass', 'extension mass'],
      help: 'Mass an extension adds at the butt; for a trim, the piece cut off as a negative number.',
    },
  ],
} as const satisfies TableSchema;

export const RATES = {
  name: 'Rates',
  purpose: 'What you charge for work.',
  columns: [
    {
      key: 'work',
      header: 'Work',
      kind: 'text',
      needed: true,
      width: 30,
      synonyms: ['service', 'labour', 'labor', 'task'],
      help: 'What is done.',
    },
    {
      key: 'unit',
      header: 'Per',
      kind: 'choice',
      choices: ['Club', 'Job', 'Layer', 'Gram'],
      width: 8,
      synonyms: ['unit', 'each'],
      help: 'What it is counted by.',
    },
    {
      key: 'price',
      header: 'Price',
      kind: 'money',
      low: 0,
      width: 9,
      format: '#,##0.00',
      synonyms: ['price', 'rate', 'charge'],
      help: 'Price of one.',
    },
    {
      key: 'minutes',
      header: 'Minutes',
      unit: 'min',
      kind: 'number',
      low: 0,
      high: 600,
      width: 11,
      format: '0.0',
      synonyms: ['time', 'min'],
      help: 'Bench time for one.',
    },
  ],
} as const satisfies TableSchema;

export const TAPE = {
  name: 'Tape',
  purpose: 'The tapes on the bench and what they weigh.',
  columns: [
    {
      key: 'tape',
      header: 'Tape',
      kind: 'text',
      needed: true,
      width: 22,
      synonyms: ['name', 'tape name'],
      help: 'What you call it.',
    },
    {
      key: 'use',
      header: 'Use',
      kind: 'choice',
      choices: ['Build-up', 'Two-way'],
      width: 10,
      synonyms: ['purpose', 'type'],
      help: 'Build-up under the grip, or the two-way strip that holds it.',
    },
    {
      key: 'strip',
      header: 'Strip width (in)',
      unit: 'in',
      kind: 'number',
      ...limits(RANGES.stripInches),
      width: 10,
      format: '0.00',
      synonyms: ['width', 'strip'],
      help: 'Width of one strip laid lengthwise.',
    },
    {
      key: 'gsm',
      header: 'Mass per area (g/m²)',
      unit: 'g/m²',
      kind: 'number',
      ...limits(RANGES.gsm),
      width: 11,
      format: '0',
      synonyms: ['gsm', 'g/m2', 'grammage'],
      help: 'Weigh ten strips to find it.',
    },
    {
      key: 'thickness',
      header: 'Thickness (in)',
      unit: 'in',
      kind: 'number',
      low: 0.001,
      high: 0.02,
      width: 13,
      format: '.0000',
      synonyms: ['thickness'],
      help: 'One layer adds twice this to the seat; blank: .005.',
    },
    {
      key: 'roll',
      header: 'Roll (yd)',
      kind: 'number',
      low: 1,
      high: 1000,
      width: 8,
      format: '0',
      synonyms: ['roll length', 'roll'],
      help: 'Length of one roll.',
    },
    {
      key: 'price',
      header: 'Price',
      kind: 'money',
      low: 0,
      width: 9,
      format: '#,##0.00',
      synonyms: ['price'],
      help: 'Price of one roll.',
    },
  ],
} as const satisfies TableSchema;

export const WEIGHTS = {
  name: 'Weights',
  purpose: 'The ways you put weight on a club.',
  columns: [
    {
      key: 'way',
      header: 'Way',
      kind: 'text',
      needed: true,
      width: 22,
      synonyms: ['name', 'method', 'weighting'],
      help: 'What you call it; Clubs and Settings name it.',
    },
    {
      key: 'end',
      header: 'End',
      kind: 'choice',
      choices: WEIGHT_ENDS,
      needed: true,
      width: 8,
      synonyms: ['at', 'which end'],
      help: 'Head or butt.',
    },
    {
      key: 'position',
      header: 'From that end (in)',
      unit: 'in',
      kind: 'number',
      low: 0,
      high: 20,
      needed: true,
      width: 11,
      format: '0.0',
      synonyms: ['position', 'distance'],
      help: 'How far from that end of the club its mass sits.',
    },
    {
      key: 'step',
      header: 'Smallest step (g)',
      unit: 'g',
      kind: 'number',
      low: 0.1,
      high: 20,
      width: 12,
      format: '0.0',
      synonyms: ['step', 'smallest step', 'increment'],
      help: 'Weights come in multiples of this.',
    },
    {
      key: 'gripOff',
      header: 'Grip off',
      kind: 'yesNo',
      choices: YES_NO,
      width: 9,
      synonyms: ['while grip is off', 'needs grip off'],
      help: 'Yes when it must go in while the grip is off.',
    },
    {
      key: 'limit',
      header: 'Limit (g)',
      unit: 'g',
      kind: 'number',
      low: 0,
      high: 100,
      width: 9,
      format: '0.0',
      synonyms: ['limit', 'most'],
      help: 'The most you put on one club this way; blank: as in Settings.',
    },
    {
      key: 'price',
      header: 'Price',
      kind: 'money',
      low: 0,
      width: 9,
      format: '#,##0.00',
      synonyms: ['price'],
      help: 'Price for one club.',
    },
    {
      key: 'minutes',
      header: 'Minutes',
      unit: 'min',
      kind: 'number',
      low: 0,
      high: 600,
      width: 11,
      format: '0.0',
      synonyms: ['time', 'min'],
      help: 'Bench time for one club.',
    },
  ],
} as const satisfies TableSchema;

export const SETTINGS = {
  name: 'Settings',
  purpose: 'How your shop works: one row for each habit.',
  columns: [
    {
      key: 'setting',
      header: 'Setting',
      kind: 'text',
      needed: true,
      width: 34,
      synonyms: ['name', 'key', 'option'],
      help: 'Which habit.',
    },
    {
      key: 'value',
      header: 'Value',
      kind: 'text',
      width: 22,
      synonyms: ['value'],
      help: 'How it is at your shop; blank or 0: the default.',
    },
    { key: 'unit', header: 'Unit', kind: 'text', width: 8, synonyms: ['unit'], help: 'What the value is measured in.' },
    {
      key: 'meaning',
      header: 'Meaning',
      kind: 'text',
      width: 70,
      synonyms: ['meaning', 'note', 'help'],
      help: 'What it does.',
    },
  ],
} as const satisfies TableSchema;

/** Every table that *Set up this workbook* makes, in the order of their sheets. */
export const TABLES: readonly TableSchema[] = [JOBS, CLUBS, STOCK, WEIGHTS, TAPE, RATES, SETTINGS];

/** One row of the Settings table. */
export interface SettingRow {
  readonly key: string;
  /** What stands in the Setting column; never changes. */
  readonly name: string;
  readonly kind: 'number' | 'choice' | 'text' | 'yesNo';
  readonly unit?: string;
  readonly choices?: readonly string[];
  readonly low?: number;
  readonly high?: number;
  readonly initial: string | number;
  readonly meaning: string;
}

/** The word for nothing at all in a setting whose range begins at 0: some versions of Excel hand a blank over as 0, so 0 is the default. */
export const NO_AMOUNT = 'None';

/** The habits of a shop. Where each initial value comes from stands in the core's defaults and constants. */
export const SETTING_ROWS = [
  { key: 'shop', name: 'Shop name', kind: 'text', initial: '', meaning: 'Stands at the head of printed sheets.' },
  {
    key: 'tolerance',
    name: 'Tolerance',
    kind: 'number',
    unit: 'pt',
    low: 0.1,
    high: 10,
    initial: DEFAULT_SETTINGS.tolerancePoints,
    meaning: 'A club is right when it reads within this many points of what is held. Premium work: 0.5.',
  },
  {
    key: 'putRight',
    name: 'Put right',
    kind: 'choice',
    choices: PUT_RIGHT,
    initial: 'When out of tolerance',
    meaning: 'When weight is recommended.',
  },
  {
    key: 'headWay',
    name: 'Head weighting',
    kind: 'text',
    initial: DEFAULT_SETTINGS.headWay,
    meaning: 'Which row of Weights puts a club right that reads too light.',
  },
  {
    key: 'buttWay',
    name: 'Butt weighting',
    kind: 'text',
    initial: DEFAULT_SETTINGS.buttWay,
    meaning: 'Which row of Weights puts a club right that reads too heavy.',
  },
  {
    key: 'headLimit',
    name: 'Head weight limit',
    kind: 'number',
    unit: 'g',
    low: 0,
    high: 100,
    initial: DEFAULT_SETTINGS.headLimitGrams,
    meaning: 'More than this at the head needs your decision. None: any weight does.',
  },
  {
    key: 'leastWeight',
    name: 'Least weight worth adding',
    kind: 'number',
    unit: 'g',
    low: 0,
    high: 10,
    initial: DEFAULT_SETTINGS.leastGrams,
    meaning: 'Less than this is not worth doing. None: every step is.',
  },
  {
    key: 'tapedLength',
    name: 'Taped length',
    kind: 'number',
    unit: 'in',
    ...limits(TAPED_LENGTH),
    initial: DEFAULT_SETTINGS.tapedInches,
    meaning: 'Where a grip’s length is not known, tape runs this far.',
  },
  {
    key: 'buildUpTape',
    name: 'Build-up tape',
    kind: 'text',
    initial: 'Build-up tape',
    meaning: 'Which row of Tape goes under a grip to make it larger.',
  },
  {
    key: 'twoWayTape',
    name: 'Two-way tape',
    kind: 'text',
    initial: 'Two-way tape',
    meaning: 'Which row of Tape holds the grip; one strip, counted on a bare club.',
  },
  {
    key: 'twoWayUnderNew',
    name: 'Two-way strip under new grips',
    kind: 'yesNo',
    choices: YES_NO,
    initial: 'Yes',
    meaning: 'No when you fit without tape.',
  },
  {
    key: 'cap',
    name: 'Cap thickness when not known',
    kind: 'number',
    unit: 'in',
    ...limits(CAP_THICKNESS),
    initial: DEFAULT_SETTINGS.capInches,
    meaning: 'Used for any grip whose cap is not given. None: no cap.',
  },
  {
    key: 'growth',
    name: 'Size estimator',
    kind: 'choice',
    choices: ESTIMATORS,
    initial: 'By volume',
    meaning: 'How build-up shows outside: rubber keeps its volume (low estimate), or every thousandth shows (high).',
  },
  {
    key: 'lowerTapeStart',
    name: 'Lower-hand tape starts',
    kind: 'number',
    unit: 'in',
    low: 2,
    high: 9,
    initial: DEFAULT_SETTINGS.lowerTapeStartInches,
    meaning: 'How far from the butt the lower-hand layers begin.',
  },
  {
    key: 'oldSpread',
    name: 'Catalogue mass ±',
    kind: 'number',
    unit: 'g',
    low: 0,
    high: 20,
    initial: DEFAULT_SETTINGS.oldSpreadGrams,
    meaning: 'How far an old grip’s true mass may be from its catalogue mass. None: it is exact.',
  },
  {
    key: 'newSpread',
    name: 'New grip mass ±',
    kind: 'number',
    unit: 'g',
    low: 0,
    high: 20,
    initial: DEFAULT_SETTINGS.newSpreadGrams,
    meaning: 'How far single grips of one model scatter, where Stock does not say. None: all alike.',
  },
  {
    key: 'balanceSpread',
    name: 'Balance point ±',
    kind: 'number',
    unit: 'in',
    low: 0,
    high: 2,
    initial: DEFAULT_SETTINGS.balanceSpreadInches,
    meaning: 'How well grip balance points are known. None: exactly.',
  },
  {
    key: 'readingSpread',
    name: 'Scale reading ±',
    kind: 'number',
    unit: 'pt',
    low: 0,
    high: 2,
    initial: DEFAULT_SETTINGS.readingSpreadPoints,
    meaning: 'How well your balance scale repeats. None: exactly.',
  },
  {
    key: 'tapeSpread',
    name: 'Layer mass ±',
    kind: 'number',
    unit: '%',
    low: 0,
    high: 50,
    initial: DEFAULT_SETTINGS.tapeSpread * 100,
    meaning: 'How far the mass of a layer varies. None: not at all.',
  },
  {
    key: 'competition46',
    name: 'Local rule: 46 in limit',
    kind: 'yesNo',
    choices: YES_NO,
    initial: 'No',
    meaning: 'Yes where competitions adopt Model Local Rule G-10.',
  },
] as const satisfies readonly SettingRow[];

export type SettingKey = (typeof SETTING_ROWS)[number]['key'];

/** Rows a new Weights table starts with. */
export const STARTING_WEIGHTS: readonly (readonly (string | number)[])[] = [
  ['Lead tape', 'Head', 0, 0.5, 'No', '', '', 3],
  ['Head screw', 'Head', 0, 1, 'No', '', '', 3],
  ['Tip plug', 'Head', 2, 1, 'Yes', '', '', 5],
  ['Butt plug', 'Butt', 1, 1, 'Yes', '', '', 3],
];

/** Rows a new Tape table starts with. */
export const STARTING_TAPE: readonly (readonly (string | number)[])[] = [
  ['Build-up tape', 'Build-up', 2, 130, 0.005, 36, ''],
  ['Two-way tape', 'Two-way', 2, 133, 0.005, 36, ''],
];

/** Columns of a table by key; a key that does not exist is a mistake in our code. */
export function columnOf(table: TableSchema, key: string): Column {
  const column = table.columns.find((each) => each.key === key);
  if (!column) throw new Error(`${table.name} has no column ${key}`);
  return column;
}
