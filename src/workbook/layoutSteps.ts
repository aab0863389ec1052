/**
 * How the tables of a workbook came to be as they are: what each layout brought that the one before lacked. A workbook keeps the
 * layout it was set up or brought up to date with; what was made before layouts were written down counts as of the first.
 */
import { lackingHeaders } from './headings';
import { LAYOUT } from './planPlaces';
import { SETTING_ROWS, TABLES } from './schema';
import type { Column, SettingKey, SettingRow, TableSchema } from './schema';

/** What a layout brought, by our names: these never change. */
export interface LayoutStep {
  readonly layout: number;
  readonly tables: readonly string[];
  readonly columns: Readonly<Record<string, readonly string[]>>;
  readonly settings: readonly SettingKey[];
}

/** In order; a column, a setting or a table that comes later belongs into a step of its own at the end, and `LAYOUT` goes up by one. */
export const LAYOUT_STEPS: readonly LayoutStep[] = [
  {
    // Choosing: hands, size guide, single weighed grips, models.
    layout: 2,
    tables: ['Sizes'],
    columns: {
      Stock: ['model', 'texture', 'use', 'fittedUpper', 'fittedLower', 'fittedButt', 'fittedLayers'],
      Jobs: ['lowerHandLength', 'lowerFingerLength'],
      Clubs: ['newMass'],
      Tape: ['weighedStrip', 'weighedLength'],
    },
    settings: ['sizeTolerance', 'mostLayers'],
  },
  {
    // The bench: ticket and check-in.
    layout: 3,
    tables: ['Checkin'],
    columns: { Clubs: ['takeOff', 'logo', 'shaft'], Weights: ['material'] },
    settings: ['slipsWith', 'solvent', 'solventPerGrip', 'takeOff', 'offWith', 'solventOff'],
  },
  {
    // The work around it: intake, quotes, stock, own constants.
    layout: 4,
    tables: ['Taxes', 'Quotes', 'Movements', 'Scale'],
    columns: {
      Stock: ['tax'],
      Jobs: ['discountAmount', 'gripDiscount', 'deposit', 'received', 'authorisedBy', 'closed'],
      Clubs: ['ownGrip', 'tag', 'damage', 'rib'],
      Rates: ['use', 'kind', 'includedLayers', 'cost', 'tax'],
      Tape: ['onHand', 'reorderAt', 'supplier'],
      Weights: ['cost', 'tax', 'onHand', 'reorderAt', 'pack', 'packCost', 'supplier'],
      Checkin: ['round', 'grip', 'layers', 'weightOn', 'weightAt', 'weighting', 'predictedMass', 'massDifference'],
    },
    settings: [
      ...(['cureHours', 'currency', 'pricesAre', 'rounding', 'roundedAt', 'minimumCharge', 'deposit'] as const),
      ...(['validDays', 'terms', 'address', 'gripBalance', 'remindAfter', 'referenceReads', 'scaleDivision'] as const),
    ],
  },
  {
    // Discounts by line, and orders that are waited for.
    layout: 5,
    tables: ['Discounts'],
    columns: { Jobs: ['gripDiscountAmount'], Movements: ['order', 'supplier'] },
    settings: [],
  },
];

/** The headings and settings of a workbook, as far as they are ours: what a step starts from and ends with. */
export interface Shape {
  /** By the table's name; a table that is not there is left out. */
  readonly headings: Readonly<Record<string, readonly string[]>>;
  readonly settings: readonly string[];
}

/** What a step adds to a shape; nothing that is there already, under our heading or another that means the same. */
export interface Addition {
  readonly tables: readonly TableSchema[];
  readonly columns: readonly { readonly schema: TableSchema; readonly columns: readonly Column[] }[];
  readonly settings: readonly SettingRow[];
}

/** From one layout to the next. Pure: the shape is left as it is. */
export function stepFrom(shape: Shape, step: LayoutStep): { readonly shape: Shape; readonly adds: Addition } {
  const tables = TABLES.filter(({ name }) => step.tables.includes(name) && !(name in shape.headings));
  const columns = TABLES.flatMap((schema) => {
    const headings = shape.headings[schema.name];
    const keys = step.columns[schema.name] ?? [];
    const lacking = headings ? new Set(lackingHeaders(headings, schema, false)) : new Set<string>();
    const adding = schema.columns.filter(({ key, header }) => keys.includes(key) && lacking.has(header));
    return adding.length > 0 ? [{ schema, columns: adding }] : [];
  });
  const known = new Set(shape.settings);
  const hasSettings = 'Settings' in shape.headings;
  const settings = SETTING_ROWS.filter(
    ({ key, name }) => hasSettings && step.settings.includes(key) && !known.has(name),
  );
  return { shape: afterAdding(shape, { tables, columns, settings }), adds: { tables, columns, settings } };
}

function afterAdding(shape: Shape, { tables, columns, settings }: Addition): Shape {
  const made = tables.map(({ name, columns: all }) => [name, all.map(({ header }) => header)] as const);
  const wider = columns.map(({ schema: { name }, columns: more }) => {
    return [name, [...(shape.headings[name] ?? []), ...more.map(({ header }) => header)]] as const;
  });
  return {
    headings: { ...shape.headings, ...Object.fromEntries([...made, ...wider]) },
    settings: [...shape.settings, ...settings.map(({ name }) => name)],
  };
}

/** All that came after a layout and that a shape lacks, the steps one after the other. */
export function additionsSince(layout: number | null, shape: Shape): Addition {
  let now = shape;
  const all: Addition[] = [];
  for (const step of LAYOUT_STEPS) {
    if (step.layout <= (layout ?? 1) || step.layout > LAYOUT) continue;
    const { shape: next, adds } = stepFrom(now, step);
    now = next;
    all.push(adds);
  }
  const schemas = TABLES.filter((schema) => all.some(({ columns }) => columns.some((each) => each.schema === schema)));
  return {
    tables: all.flatMap(({ tables }) => tables),
    columns: schemas.map((schema) => ({
      schema,
      columns: all.flatMap(({ columns }) => columns.flatMap((each) => (each.schema === schema ? each.columns : []))),
    })),
    settings: all.flatMap(({ settings }) => settings),
  };
}
