/** A quote of forty lines with long terms, in the copy: pages begin where we say, so that its sums stay together. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { quoteOf, type QuoteInput } from '../../../src/core/index';
import type { WorkbookPort } from '../../../src/workbook/port';
import { dressQuote, QUOTE_COLUMNS, quotePage } from '../../../src/workbook/quoteSheet';
import { OFFICE_MS, officeCopy, officeIsThere, type OfficeCopy } from './office';

/** Invented work and grips, with names as long as people make them. */
const LINES = Array.from({ length: 40 }, (_, at) => ({
  class: at < 25 ? ('grip' as const) : ('other' as const),
  description:
    at % 5 === 0
      ? `Grip model ${at + 1}, firm with cord, ribbed, of the longer kind that runs on to a second line`
      : `Line of work number ${at + 1}`,
  item: at < 25 ? `G-${at + 1}` : undefined,
  quantity: at + 1,
  unitPrice: 6.5 + at / 10,
  tax: at % 3 === 0 ? 'Work' : 'Goods',
  discount: at % 6 === 1 ? { percent: 10, reason: 'More than six of one grip' } : undefined,
}));

const INPUT: QuoteInput = {
  currency: 'EUR',
  prices: 'beforeTax',
  taxes: [
    { name: 'Goods', percent: 20 },
    { name: 'Work', percent: 10 },
  ],
  rounding: { rule: 'halfUp', at: 'line' },
  setDiscount: { percent: 5 },
  jobDiscount: { percent: 3 },
  deposit: { percent: 30 },
  issued: 46_120,
  validDays: 30,
  lines: LINES,
};

const HEAD = {
  job: 'R-900',
  customer: 'A club of sixty',
  shop: 'Invented workshop',
  due: null,
  number: 77,
  revision: 2,
  option: 'With tape',
  address: ['1 Invented lane', 'Nowhere', 'bench@example.invalid'],
  terms: Array.from({ length: 8 }, (_, at) => `Term ${at + 1}: work is done in the order in which it comes in.`).join(
    '\n',
  ),
};

const LONG = 'Long quote';

/** Writes it and answers the rows that begin a page. */
async function writeLong(port: WorkbookPort): Promise<readonly number[]> {
  const made = quoteOf(INPUT);
  if (!made.ok) throw new Error(made.issue.field);
  const page = quotePage(HEAD, made.value);
  const at = { sheet: LONG, row: 0, column: 0, rows: page.cells.length, columns: QUOTE_COLUMNS };
  const [seen] = await port.read([{ read: 'block', at }]);
  const dressed = dressQuote(at, page, made.value);
  await port.apply([{ do: 'sheet', name: LONG }, ...dressed, { do: 'write', at, cells: page.cells }], [seen], {
    label: LONG,
  });
  return dressed.flatMap((change) => (change.do === 'page' ? (change.setup.breaks ?? []) : []));
}

describe.runIf(officeIsThere)('LibreOffice, given a long quote', () => {
  let copy: OfficeCopy;
  let breaks: readonly number[] = [];
  beforeAll(async () => {
    copy = await officeCopy([LONG], async (port) => {
      breaks = await writeLong(port);
    });
  }, OFFICE_MS);
  afterAll(() => copy.forget());

  test(
    'begins pages where we say, and nowhere else',
    () => {
      expect(breaks.length).toBeGreaterThan(0);
      expect(copy.papers()).toBe(breaks.length + 1);
    },
    OFFICE_MS,
  );
});
