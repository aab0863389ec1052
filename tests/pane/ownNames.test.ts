import { describe, expect, test } from 'vitest';
import { connectList } from '../../src/workbook/connect/connectList';
import { connecting } from '../../src/workbook/connecting';
import type { Seen, TableSeen } from '../../src/workbook/port';
import { TABLES } from '../../src/workbook/schema';
import { CONNECTABLE } from '../../src/workbook/tables/headings';
import { MemoryPort } from '../workbook/memoryPort';
import { spillPlan } from '../workbook/workshop';
import { ownLists } from '../../src/workbook/ownNames';
import { sayOwn } from '../../src/workbook/ownSentences';
import { callBy } from '../../src/workbook/records';
import { quoteJob } from '../../src/workbook/quoteScope';
import { readShop } from '../../src/workbook/shop';
import { sayQuoteIssue } from '../../src/words/money';
import { EMPTY, WHAT, WHO, willWriteText } from '../../src/pane/words';
import { HAND_WORDS } from '../../src/pane/toolWords';
import { BENCH_WORDS } from '../../src/pane/view/tools/benchWords';
import { INTAKE_WORDS } from '../../src/pane/view/tools/intakeWords';
import { WEEK_WORDS } from '../../src/pane/view/tools/weekWords';
import { makeShop, TODAY } from '../safety/shop';
import { TRIALS } from '../safety/trials';

type Connected = (typeof CONNECTABLE)[number];

/** What the shop calls its lists: none of these words is the name of a table of ours. */
const SHEETS: Readonly<Record<Connected, string>> = {
  Stock: 'Regal',
  Clubs: 'Bags',
  Jobs: 'Tickets',
  Rates: 'Prices',
  Tape: 'Rolls',
  Weights: 'Lead',
  Sizes: 'Hands',
  Taxes: 'VAT',
};

/** A shop in which lists of its own, under headings of its own, stand for every table that they can stand for. */
async function ownShop(): Promise<MemoryPort> {
  const port = new MemoryPort();
  port.calculate = spillPlan;
  await makeShop(port);
  for (const name of CONNECTABLE) {
    const schema = TABLES.find((each) => each.name === name);
    const seen = port.tableSeen(name) as TableSeen;
    if (!schema) throw new Error(`no table ${name}`);
    const headings = seen.headers.map((header) => `Our ${header}`);
    port.typeTable(`List${SHEETS[name]}`, SHEETS[name], [
      headings,
      ...seen.rows.filter((row) => row.some((cell) => cell !== null)),
    ]);
    const list = port.tableSeen(`List${SHEETS[name]}`) as TableSeen;
    const matches = schema.columns.flatMap(({ key, header }) => {
      const position = seen.headers.indexOf(header);
      return position < 0 ? [] : [{ key, heading: headings[position] ?? '', position, unit: null }];
    });
    const asked = { schema, list: { table: list.name, at: list.at }, within: null, matches };
    expect(await connectList(port, asked)).toMatchObject({ done: true });
  }
  return port;
}

type Spoil = (cell: Seen, column: number) => Seen;

function spoil(port: MemoryPort, name: Connected, how: Spoil): void {
  const { at, rows } = port.tableSeen(`List${SHEETS[name]}`) as TableSeen;
  rows.forEach((row, down) =>
    row.forEach((cell, across) =>
      port.type(at.sheet, at.row + 1 + down, at.column + across, how(cell, across) as never),
    ),
  );
}

/** A table of ours that a sentence sends somebody to, or that it says something of. */
const OURS = new RegExp(
  `\\b(?:in|of|to|from|which|complete) (?:${CONNECTABLE.join('|')})\\b|\\b(?:${CONNECTABLE.join('|')}) (?:row \\d|has |gives |lacks )`,
);

/** What a spoilt list is like: its words gone, or words where numbers were. */
const SPOILT: readonly (readonly [string, Spoil])[] = [
  ['without words', (cell) => (typeof cell === 'string' ? null : cell)],
  ['with words for numbers', (cell) => (typeof cell === 'number' ? 'x?' : cell)],
];

/** They speak of what our tables are called, or of no table. */
const APART = /connect|follow|UpToDate|undo|setUp/;

async function saidOf(name: Connected, how: Spoil): Promise<string[]> {
  const bare = await ownShop();
  const port = connecting(bare);
  spoil(bare, name, how);
  const said: string[] = [];
  for (const trial of TRIALS) {
    if (trial.calculates || APART.test(trial.of)) continue;
    // What no earlier one made ready has nothing to say.
    const end = await trial.run(port).catch(() => null);
    if (end && end.kind !== 'occupied') said.push(end.text, ...end.list);
  }
  return said;
}

describe('where lists of the shop’s own stand for every table', () => {
  test.each(CONNECTABLE)(
    'no sentence sends anybody to ours, whatever is wrong with the one for %s',
    async (name) => {
      const said = (await Promise.all(SPOILT.map(([, how]) => saidOf(name, how)))).flat();
      expect(said.length).toBeGreaterThan(40);
      expect(said.filter((text) => OURS.test(text))).toEqual([]);
    },
    120_000,
  );

  test('what a quote lacks is named by the shop’s list and its heading there', async () => {
    const bare = await ownShop();
    const texts = async (): Promise<string[]> => {
      const { tables } = await readShop(connecting(bare));
      return quoteJob(tables, { job: '1042', terms: { issued: TODAY } }).issues.map(sayQuoteIssue);
    };
    expect(await texts()).toEqual([]);
    const { at, headers, rows } = bare.tableSeen('ListRegal') as TableSeen;
    bare.type(at.sheet, at.row + 1, at.column + headers.indexOf('Our Price'), null);
    expect(await texts()).toEqual([
      'Price of FERN-M in “Regal”, under “Our Price”, is blank. Give an amount, 0 where there is none.',
    ]);
    const item = at.column + headers.indexOf('Our Item');
    rows.forEach((_, down) => bare.type(at.sheet, at.row + 1 + down, item, `X${down}`));
    expect((await texts()).filter((text) => text.includes('FERN-M'))).toEqual([
      'New grip is “FERN-M”, which “Regal” does not list. Add it to “Regal” or choose another.',
    ]);
    spoil(bare, 'Rates', () => null);
    expect(await texts()).toContain(
      'Fitting a grip in “Prices”, under “Our Work”, is blank. Give a row with its price.',
    );
  });

  test('fixed sentences that send one to a table send one to the list', () => {
    const called = (list: string) => {
      const headers = ['Heading'];
      callBy(headers, { list, headings: new Map() });
      return headers;
    };
    const all = ownLists({ Stock: called('Regal'), Clubs: called('Bags'), Jobs: called('Tickets') });
    const fixed = [
      WHO.selectionNow(0),
      WHO.selectionNow(2),
      WHAT.noStock,
      EMPTY.noJobsText,
      willWriteText({}, 3, 'Plan'),
      willWriteText({ layers: 1 }, 3, 'Plan'),
      HAND_WORDS.keep,
      INTAKE_WORDS.take,
      BENCH_WORDS.how,
      WEEK_WORDS.how,
    ];
    for (const text of fixed) expect(sayOwn(text, all)).not.toMatch(/\b(Clubs|Stock|Jobs)\b/);
    // what is no table, and what is asked for
    expect(sayOwn('Clubs that came in', all)).toBe('Clubs that came in');
    expect(sayOwn('Stock is short of FERN-M', all)).toBe('Stock is short of FERN-M');
    expect(sayOwn('Bags stands for Clubs now', all)).toBe('Bags stands for Clubs now');
  });

  test('what the shop wrote itself stays as it is', () => {
    const headers = ['Item'];
    callBy(headers, { list: 'Regal', headings: new Map() });
    const own = ownLists({ Stock: headers, Clubs: undefined });
    expect(sayOwn('Stock has no row “in Stock”. Add it to Stock; Clubs has none.', own)).toBe(
      '“Regal” has no row “in Stock”. Add it to “Regal”; Clubs has none.',
    );
    expect(sayOwn('Stock has no row. Add it to Stock.', ownLists({}))).toBe('Stock has no row. Add it to Stock.');
  });
});
