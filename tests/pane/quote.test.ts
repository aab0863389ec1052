import { describe, expect, test } from 'vitest';
import { parseReading } from '../../src/core/index';
import { readForm, sparingPutters } from '../../src/pane/state/form';
import { seenOf } from '../../src/pane/state/lookAt';
import { plannedRows, puttersBeside, type PaneState } from '../../src/pane/state/paneState';
import { EMPTY_COUNTER, EMPTY_QUOTE, type KeptOption, type QuoteForm } from '../../src/pane/state/quoteForm';
import { forAnotherSet } from '../../src/pane/state/tools';
import type { Outcome } from '../../src/pane/state/work';
import { issueDeed, optionsDeed, voidDeed } from '../../src/pane/view/tools/quoteDeeds';
import {
  blankHead,
  counterSeen,
  issuedSeen,
  MOST_KEPT,
  quoteSeen,
  suggestedName,
  tickedOptions,
  withOption,
  type QuoteSeen,
} from '../../src/pane/view/tools/quoteSeen';
import { QUOTE_WORDS } from '../../src/pane/view/tools/quoteWords';
import { workOn } from '../../src/pane/workOn';
import { readShop, type Shop } from '../../src/workbook/shop';
import { moneyText, sayQuoteIssue } from '../../src/words/money';
import { pricedWorkshop, set } from '../workbook/pricedWorkshop';
import { after, demoPane, planOf } from './demoPane';

const TODAY = 46_000;
const GOING = { say: () => undefined, signal: new AbortController().signal };
const KEYS: ReadonlyMap<number, string> = new Map();

const shopIn = (state: PaneState): Shop => state.shop?.shop as Shop;

function seenIn(state: PaneState, form: Partial<QuoteForm> = {}, job = 'R-201'): QuoteSeen {
  const { choices } = readForm(state.form, (text) => parseReading(text).ok);
  const inPlan = sparingPutters(choices, state.form, puttersBeside(state, plannedRows(state)));
  const keys = state.shop?.clubKeys ?? KEYS;
  return quoteSeen(shopIn(state), job, { ...EMPTY_QUOTE, ...form }, inPlan, keys, TODAY);
}

const totalOf = ({ made }: QuoteSeen): string => (made.quote ? moneyText(made.quote.total) : '');

describe('a quote in the pane', () => {
  test('is at once there for the demo’s jobs', async () => {
    const seen = seenIn(await demoPane('R-201'));
    expect([seen.made.issues, seen.made.uncharged]).toEqual([[], []]);
    // By hand from the demo's prices: 197.80 and a fifth.
    expect(totalOf(seen)).toBe('237.36 EUR');
    expect(seen.options.map(({ key }) => key)).toEqual(['clubs']);
  });

  test('what is chosen in Plan is a second one, and only quoted when it is asked for', async () => {
    const state = await demoPane('R-201', { item: 'OS-M60' });
    expect(totalOf(seenIn(state))).toBe('237.36 EUR');
    expect(seenIn(state).options.map(({ key }) => key)).toEqual(['clubs', 'plan']);
    const inPlan = seenIn(state, { of: 'plan' });
    expect(inPlan.made.quote?.lines.map(({ item }) => item)).toContain('OS-M60');
    expect(inPlan.compared?.total.amounts.map(moneyText)[0]).toBe('237.36 EUR');
  });

  test('terms of this quote alone go before those of the sheet', async () => {
    const state = await demoPane('R-203');
    const plain = seenIn(state, {}, 'R-203');
    // By hand: 49.00 less 2.00 on the grips, less a tenth of that, and a fifth; half of it.
    expect(moneyText(plain.made.quote?.deposit ?? never())).toBe('25.38 EUR');
    const own = seenIn(state, { discount: '0', gripDiscount: '0', deposit: '10', validDays: '7' }, 'R-203');
    // By hand: 49.00 and a fifth; a tenth of that.
    expect(totalOf(own)).toBe('58.80 EUR');
    expect(moneyText(own.made.quote?.deposit ?? never())).toBe('5.88 EUR');
    expect(own.made.quote?.validUntil).toBe(TODAY + 7);
    const line = seenIn(
      state,
      { discount: '0', gripDiscount: '0', lineOff: 'Fit a grip', lineOffPercent: '10' },
      'R-203',
    );
    // By hand: a tenth of 17.50 is 1.75; 47.25 and a fifth.
    expect(totalOf(line)).toBe('56.70 EUR');
  });

  test.each([
    [{ discount: 'ten' }, 'Discount on the job (%) is “ten”'],
    [{ discount: '110' }, 'Discount on the job (%) is “110”'],
    [{ deposit: '-5' }, 'Deposit (%) is “-5”'],
    [{ validDays: '1.5' }, 'Days a quote holds is 1.5. Give a whole number'],
    [{ validDays: 'soon' }, 'Days a quote holds is “soon”'],
    [{ lineOff: 'Fit a grip', lineOffPercent: 'x' }, 'discount (%) is “x”'],
  ] as const)('%j is told, and nothing is quoted', async (form, sentence) => {
    const { made } = seenIn(await demoPane('R-201'), form);
    expect(made.quote).toBeUndefined();
    expect(made.issues.map(sayQuoteIssue).join(' ')).toContain(sentence);
  });

  test('clubs without a new grip are named and not charged', async () => {
    const state = await demoPane('R-201', {}, (port) => {
      const clubs = port.tableSeen('Clubs');
      port.type('Clubs', 1, clubs?.headers.indexOf('New grip') ?? -1, null);
    });
    const { made } = seenIn(state);
    expect(made.uncharged).toEqual(['Driver']);
    expect(made.quote?.lines[0]?.quantity).toEqual({ digits: 11n, scale: 0 });
  });
});

describe('options', () => {
  const kept = (name: string): KeptOption => ({ name, choices: { layers: 2 }, clubKeys: KEYS });

  test('are named for what they change, and no two have one name', () => {
    expect(suggestedName({ newItem: 'OS-M60' })).toBe('OS-M60');
    expect(suggestedName({ layers: 2 })).toBe('With tape');
    expect(suggestedName({ hold: 'Nothing' })).toBe('Other way');
    expect(withOption([kept('With tape')], kept('with tape')).map(({ name }) => name)).toEqual([
      'With tape',
      'with tape 2',
    ]);
    expect(withOption([kept('a'), kept('b')], kept('c'))).toHaveLength(MOST_KEPT);
  });

  test('stand beside what Clubs has, and the one that is chosen is quoted', async () => {
    const state = await demoPane('R-201');
    const keys = state.shop?.clubKeys ?? KEYS;
    const options = [{ name: 'With tape', choices: { layers: 4, exceptPutters: true }, clubKeys: keys }];
    const seen = seenIn(state, { kept: options, of: 'kept 0' });
    expect(seen.compared?.names).toEqual(['As it is', 'With tape']);
    expect(totalOf(seen)).toBe(moneyText(seen.compared?.total.amounts[1] ?? never()));
  });

  test('one for single clubs goes once the rows of Clubs have moved', async () => {
    const state = await demoPane('R-201');
    const keys = state.shop?.clubKeys ?? KEYS;
    const option = { name: 'Own', choices: { perClub: new Map([[1, { layers: 3 }]]) }, clubKeys: keys };
    expect(seenIn(state, { kept: [option] }).options).toHaveLength(2);
    const moved = { ...option, clubKeys: new Map([...keys, [1, 'other']]) };
    expect(seenIn(state, { kept: [moved] }).options).toHaveLength(1);
  });

  test('grips ticked in Compare are kept as Compare would fit them', async () => {
    const state = await demoPane('R-201');
    const { concerned } = planOf(state);
    const ticked = after(state, { on: 'tool', tool: 'compare', change: { shortlist: ['OS-M60', 'OS-S60'] } });
    const options = tickedOptions(ticked, concerned, puttersBeside(state, plannedRows(state)));
    expect(options).toHaveLength(MOST_KEPT);
    for (const { choices } of options)
      expect(JSON.stringify([choices, ...(choices.perClub ?? [])])).toContain('newItem');
  });

  test('go with the bag; a price at the counter stays', async () => {
    const state = after(
      await demoPane('R-201'),
      { on: 'tool', tool: 'quote', change: { discount: '5' } },
      { on: 'tool', tool: 'counter', change: { clubs: '7' } },
    );
    expect(forAnotherSet(state.tools)).toMatchObject({ quote: {}, counter: { clubs: '7' } });
    expect(forAnotherSet(state.tools).quote).toEqual({});
  });
});

describe('a price at the counter', () => {
  test('needs the number of clubs and nothing else', async () => {
    const shop = shopIn(await demoPane('R-201'));
    expect(counterSeen(shop, EMPTY_COUNTER, TODAY)).toBeNull();
    const own = counterSeen(shop, { ...EMPTY_COUNTER, clubs: '7' }, TODAY);
    // By hand: 7 × 5.00 and a fifth.
    expect(own?.made.quote && moneyText(own.made.quote.total)).toBe('42.00 EUR');
    const ours = counterSeen(shop, { ...EMPTY_COUNTER, clubs: '7', item: 'TB-S60', layers: '2', salvage: true }, TODAY);
    // By hand: 7 × (7.50 + 3.50 + 1 layer beyond the included one at 0.40 + 1.50) = 90.30, and a fifth.
    expect(ours?.made.quote && moneyText(ours.made.quote.total)).toBe('108.36 EUR');
    expect(ours?.made.perClub && moneyText(ours.made.perClub)).toBe('12.90 EUR');
  });

  test('one club is raised to the minimum charge', async () => {
    const shop = shopIn(await demoPane('R-201'));
    const one = counterSeen(shop, { ...EMPTY_COUNTER, clubs: '1' }, TODAY);
    // The demo's minimum is 12.00, before tax.
    expect(one?.made.quote && moneyText(one.made.quote.total)).toBe('14.40 EUR');
  });

  test.each([
    [{ clubs: 'x' }, 'Clubs is “x”, not a number. Give a whole number'],
    [{ clubs: '3', layers: 'two' }, 'Layers is “two”, not a number'],
    [{ clubs: '2.5' }, 'Clubs is 2.5. Give a whole number'],
    [{ clubs: '-3' }, 'Clubs is −3'],
    [{ clubs: '3', layers: '99' }, 'Layers is 99'],
    [{ clubs: '3', item: 'gone' }, '“gone”, which Stock does not list'],
    [{ clubs: '3', discount: 'half' }, 'Discount on the job (%) is “half”'],
  ] as const)('%j is told', async (form, sentence) => {
    const seen = counterSeen(shopIn(await demoPane('R-201')), { ...EMPTY_COUNTER, ...form }, TODAY);
    expect(seen?.made.quote).toBeUndefined();
    expect(seen?.made.issues.map(sayQuoteIssue).join(' ')).toContain(sentence);
  });
});

describe('what is done with quotes in the pane', () => {
  const what = { job: '1042' };
  const terms = { issued: TODAY };

  async function working() {
    const port = await pricedWorkshop();
    const work = workOn(port);
    const look = async () => {
      const { shop } = await work.read();
      if (!shop) throw new Error('not read');
      return shop;
    };
    const act = async (deed: Parameters<typeof work.deed>[1]): Promise<Outcome> =>
      work.deed(await look(), deed, null, GOING);
    return { port, act, issued: async () => issuedSeen((await look()).shop as Shop, '1042') };
  }

  test('issued, listed, revised, void', async () => {
    const { act, issued } = await working();
    expect((await issued())?.next).toMatchObject({ number: 1, revision: 1 });
    expect(await act(issueDeed({ what, terms, shown: null }))).toMatchObject({ kind: 'done', title: 'Quote issued' });
    expect((await issued())?.next).toMatchObject({ number: 1, revision: 2 });
    const option = { what: { ...what, choices: { layers: 2 } }, terms, shown: null };
    const end = await act(issueDeed(option));
    expect('text' in end && end.text).toContain('Clubs still has it otherwise');
    expect((await issued())?.quotes.map(({ revision }) => revision)).toEqual([2, 1]);
    expect(await act(voidDeed({ number: 1, revision: 2 }))).toMatchObject({ kind: 'done', title: 'Quote void' });
    expect((await issued())?.quotes.map(({ isVoid }) => isVoid)).toEqual([true, false]);
  });

  test('the latest comes first, however the register was sorted since', async () => {
    const { port, act, issued } = await working();
    for (let revision = 1; revision <= 2; revision += 1) await act(issueDeed({ what, terms, shown: null }));
    const { at, rows = [] } = port.tableSeen('Quotes') ?? {};
    if (!at) throw new Error('no register');
    port.typeRows(at.sheet, at.row + 1, at.column, [...rows.slice(0, 2)].reverse());
    expect((await issued())?.quotes.map(({ revision }) => revision)).toEqual([2, 1]);
  });

  test('what its head will not say is told before it is issued', async () => {
    const { port } = await working();
    const blank = async (): Promise<readonly string[]> => blankHead(await readShop(port), '1042');
    const type = (table: string, row: number, heading: string, value: string | null): void => {
      const seen = port.tableSeen(table);
      port.type(table, row, seen?.headers.indexOf(heading) ?? -1, value);
    };
    const settings = port.tableSeen('Settings')?.rows ?? [];
    const shopRow = settings.findIndex(([name]) => name === 'Shop name') + 1;
    const jobs = port.tableSeen('Jobs')?.rows ?? [];
    const jobRow = jobs.findIndex(([job]) => String(job) === '1042') + 1;
    type('Settings', shopRow, 'Value', ' ');
    type('Jobs', jobRow, 'Customer', null);
    expect(await blank()).toEqual(['shop', 'customer']);
    type('Jobs', jobRow, 'Customer', 'A. Person');
    expect(await blank()).toEqual(['shop']);
    type('Settings', shopRow, 'Value', 'Workshop');
    expect(await blank()).toEqual([]);
    expect(blankHead(await readShop(port), null, ' ')).toEqual(['customer']);
    expect(QUOTE_WORDS.blankAtHead([QUOTE_WORDS.blankHead.customer])).toBe(
      'The page will not say the customer: it is blank. Fill it in first; what is issued is never changed.',
    );
  });

  test('options are written, and a person’s cell among them is asked about', async () => {
    const { port, act } = await working();
    const deed = optionsDeed('1042', terms, [
      { name: 'As it is', choices: {} },
      { name: 'With tape', choices: { layers: 3 } },
    ]);
    expect(await act(deed)).toMatchObject({ kind: 'done', title: 'Options written' });
    port.type('Options 1042', 4, 2, 'mine');
    expect(await act(deed)).toMatchObject({ kind: 'occupied' });
  });

  test('what cannot be issued says why', async () => {
    const { port, act, issued } = await working();
    set(port, 'Currency', null);
    const end = await act(issueDeed({ what, terms, shown: null }));
    expect(end).toMatchObject({ kind: 'failed', title: 'No quote was issued' });
    expect('text' in end && end.text).toContain('Currency in Settings is blank');
    port.deleteSheet('Quotes');
    expect(await issued()).toBeNull();
  });

  test('an older workbook without the tables of quotes names them as missing', async () => {
    const { port } = await working();
    port.deleteSheet('Quotes');
    port.deleteSheet('Taxes');
    expect(seenOf(await readShop(port)).missing).toEqual(expect.arrayContaining(['Quotes', 'Taxes']));
  });
});

function never(): never {
  throw new Error('nothing there');
}
