import { describe, expect, test } from 'vitest';
import { runBatch, type BatchAsked, type BatchGoing } from '../../src/workbook/batch';
import { batchLines, isPartly, sayBatch } from '../../src/words/batch';
import { issueQuote } from '../../src/workbook/issueQuote';
import type { MemoryPort } from './memoryPort';
import { pricedWorkshop, set } from './pricedWorkshop';
import { undoLast } from '../../src/workbook/undo';

const TODAY = 46_000;
const ALL: BatchAsked = { jobs: ['1042', '1043'], quote: true, reserve: true, plan: true, today: TODAY };

const quiet = (over: Partial<BatchGoing> = {}): BatchGoing => ({
  step: () => undefined,
  signal: new AbortController().signal,
  rest: () => Promise.resolve(),
  ...over,
});

/** The priced workshop with a grip chosen for every club of both jobs. */
async function ready(): Promise<MemoryPort> {
  const port = await pricedWorkshop();
  port.fillTable('Clubs', [{}, {}, {}, { 'New grip': 'MOSS-S' }]);
  return port;
}

function column(port: MemoryPort, table: string, header: string) {
  const seen = port.tableSeen(table);
  const at = seen?.headers.indexOf(header) ?? -1;
  return (seen?.rows ?? []).map((row) => row[at] ?? null).filter((cell) => cell !== null);
}

describe('a batch', () => {
  test('issues a quote for each job, reserves for all, and fills every plan', async () => {
    const port = await ready();
    const end = await runBatch(port, ALL, quiet());
    expect([...(end.quotes ?? [])].map(([job, quote]) => [job, quote.done && quote.number])).toEqual([
      ['1042', 1],
      ['1043', 2],
    ]);
    expect(column(port, 'Quotes', 'No.')).toEqual([1, 2]);
    expect(column(port, 'Quotes', 'Job')).toEqual(['1042', '1043']);
    expect(new Set(column(port, 'Movements', 'Job'))).toEqual(new Set(['1042', '1043']));
    expect(port.shows('Plan 1042', 1, 0)).toBe('Regrip plan');
    expect(port.shows('Plan 1043', 1, 0)).toBe('Regrip plan');
    expect(port.shows('Quote 2', 0, 0)).not.toBeNull();
    expect(isPartly(end)).toBe(false);
    expect(sayBatch(end)).toMatch(/^2 quotes issued\. 2 plans filled\. Reserved .* for 2 jobs\.$/);
    expect(batchLines(end)).toEqual([
      expect.stringMatching(/^1042: quote 1 over 48\.60 EUR\.$/),
      expect.stringMatching(/^1043: quote 2 over /),
    ]);
  });

  test('takes as many trips for two jobs as for twenty', async () => {
    const trips = async (jobs: number) => {
      const port = await ready();
      const names = Array.from({ length: jobs }, (_, at) => String(2000 + at));
      port.fillTable('Jobs', [{}, {}, ...names.map((job) => ({ Job: job, Customer: 'Ivo Brandt' }))]);
      port.fillTable('Clubs', [
        {},
        {},
        {},
        {},
        {},
        ...names.map((job) => ({
          Job: job,
          Club: '7 iron',
          Kind: 'Iron',
          'Length (in)': 37,
          'New grip': 'MOSS-S',
        })),
      ]);
      [port.reads, port.applies] = [0, 0];
      const end = await runBatch(port, { ...ALL, jobs: names }, quiet());
      expect(end.quotes?.size).toBe(jobs);
      expect(end.plans && 'filled' in end.plans && end.plans.filled.size).toBe(jobs);
      return [port.reads, port.applies];
    };
    expect(await trips(20)).toEqual(await trips(2));
  });

  test('done again gives no number twice and changes nothing', async () => {
    const port = await ready();
    await runBatch(port, ALL, quiet());
    const [quotes, movements] = [column(port, 'Quotes', 'No.'), column(port, 'Movements', 'Job')];
    const end = await runBatch(port, ALL, quiet());
    expect(sayBatch(end)).toContain('0 quotes issued, 2 still as issued before.');
    expect([column(port, 'Quotes', 'No.'), column(port, 'Movements', 'Job')]).toEqual([quotes, movements]);
  });

  test('a quote that holds is left, even where the tables say another total by now; one that holds no longer becomes a revision', async () => {
    const port = await ready();
    await issueQuote(port, { what: { job: '1042' }, terms: { issued: TODAY, discountPercent: 10 }, shown: null });
    const end = await runBatch(port, ALL, quiet());
    expect([...(end.quotes ?? [])]).toMatchObject([
      ['1042', { done: false, reason: 'saysOther', number: 1, revision: 1, was: 43.74 }],
      ['1043', { done: true, number: 2, revision: 1 }],
    ]);
    expect(batchLines(end)).toContain(
      '1042: quote 1 holds and says 43.74; the tables say 48.60 EUR by now. It was left: issue a revision under Quote if it is to change.',
    );
    const later = await runBatch(port, { ...ALL, today: TODAY + 31 }, quiet());
    expect([...(later.quotes ?? [])]).toMatchObject([
      ['1042', { number: 1, revision: 2 }],
      ['1043', { number: 2, revision: 2 }],
    ]);
  });

  describe('a quote that holds is compared line by line', () => {
    const asked: BatchAsked = { jobs: ['1042'], quote: true, reserve: false, plan: false, today: TODAY };
    async function issued(terms: object = {}): Promise<MemoryPort> {
      const port = await ready();
      await issueQuote(port, { what: { job: '1042' }, terms: { issued: TODAY, ...terms }, shown: null });
      return port;
    }
    const again = async (port: MemoryPort) => {
      const before = port.content();
      const end = await runBatch(port, asked, quiet());
      expect(port.content()).toEqual(before);
      return { end: end.quotes?.get('1042'), said: batchLines(end).join(' ') };
    };
    /** Row and column of a cell of the quote's sheet that holds this. */
    async function findOn(port: MemoryPort, text: unknown): Promise<{ row: number; column: number }> {
      const at = { sheet: 'Quote 1', row: 0, column: 0, rows: 40, columns: 5 };
      const [seen] = await port.read([{ read: 'block', at }]);
      const row = seen.values.findIndex((cells) => cells.includes(text as never));
      return { row, column: seen.values[row]?.indexOf(text as never) ?? -1 };
    }

    test('the same lines are the same, also in another order', async () => {
      const port = await issued();
      expect((await again(port)).end).toEqual({ done: true, stands: true, number: 1, revision: 1 });
      const grip = await findOn(port, 'FERN-M');
      const work = await findOn(port, 'Fit a grip');
      const at = { sheet: 'Quote 1', row: 0, column: 0, rows: 40, columns: 5 };
      const [{ values }] = await port.read([{ read: 'block', at }]);
      [0, 1, 2, 3, 4].forEach((column) => {
        port.type('Quote 1', grip.row, column, values[work.row]?.[column] ?? null);
        port.type('Quote 1', work.row, column, values[grip.row]?.[column] ?? null);
      });
      expect((await again(port)).end).toMatchObject({ stands: true });
    });

    test('other lines of the same total are told, and nothing is issued', async () => {
      const port = await issued();
      // 3 × 0.50 more for grips, 3 × 0.50 less for fitting
      port.fillTable('Stock', [{ Price: 7 }]);
      port.fillTable('Rates', [{ Price: 3 }]);
      const { end, said } = await again(port);
      expect(end).toEqual({ done: false, reason: 'linesOther', number: 1, revision: 1, what: 'FERN-M' });
      expect(said).toContain('1042: quote 1 holds and comes to the same, but the tables say it otherwise by now');
      expect(said).toContain('“FERN-M” is not alike on both');
    });

    test('a deposit that is asked for by now is told', async () => {
      const port = await issued();
      set(port, 'Deposit', 30);
      expect((await again(port)).end).toMatchObject({ reason: 'linesOther', what: 'Deposit on ordering' });
    });

    test.each(['an amount', 'the total'])('%s that somebody wrote over on the sheet is told', async (which) => {
      const port = await issued();
      const { row } = await findOn(port, which === 'the total' ? 'Total, EUR' : 'FERN-M');
      port.type('Quote 1', row, 4, 40);
      const { end, said } = await again(port);
      expect(end).toMatchObject({ done: false, reason: 'sheetEdited', sheet: 'Quote 1' });
      expect(said).toContain('Quote 1 does not say any more what was issued');
    });

    test('a quantity that somebody wrote over is told as another line', async () => {
      const port = await issued();
      const { row } = await findOn(port, 'FERN-M');
      port.type('Quote 1', row, 1, 4);
      expect((await again(port)).end).toMatchObject({ reason: 'linesOther', what: 'FERN-M' });
    });

    test('one whose sheet is gone is compared by its total, and that is told', async () => {
      const port = await issued();
      const at = port.tableSeen('Quotes')?.headers.indexOf('Sheet') ?? -1;
      port.type('Quotes', 1, at, 'Elsewhere');
      const { end, said } = await again(port);
      expect(end).toMatchObject({ done: true, stands: true, byTotal: 'Elsewhere' });
      expect(said).toContain('1042: quote 1 holds by its total');
    });
  });

  test('a job that cannot be quoted is named and left out, and the others go on', async () => {
    const port = await ready();
    port.fillTable('Stock', [{}, { Price: null }]);
    const end = await runBatch(port, ALL, quiet());
    expect(column(port, 'Quotes', 'Job')).toEqual(['1042']);
    expect([...(end.quotes ?? [])][1]).toMatchObject(['1043', { done: false, reason: 'notQuoted' }]);
    expect(isPartly(end)).toBe(true);
    expect(sayBatch(end)).toContain('1 quote issued, 1 not issued.');
    expect(batchLines(end)[0]).toMatch(/^1043: .*MOSS-S/);
    expect(port.shows('Plan 1043', 1, 0)).toBe('Regrip plan');
  });

  test('what is lacked is told by job', async () => {
    const port = await ready();
    port.fillTable('Stock', [{ 'On hand': 1 }]);
    const end = await runBatch(port, { ...ALL, quote: false, plan: false }, quiet());
    expect(batchLines(end)).toEqual(['1042 lacks 2 of FERN-M.']);
    expect(isPartly(end)).toBe(true);
  });

  test('stopped while quoting nothing is written; stopped after it, the quotes stay and nothing else begins', async () => {
    const port = await ready();
    const stop = new AbortController();
    const before = port.content();
    const early = await runBatch(port, ALL, quiet({ signal: stop.signal, step: () => stop.abort() }));
    expect(early).toMatchObject({ stopped: true, quotes: undefined, reserved: undefined, plans: undefined });
    expect(sayBatch(early)).toBe('Stopped. Nothing was written.');
    expect(port.content()).toEqual(before);
    const later = new AbortController();
    const step: BatchGoing['step'] = (what) => {
      if (what === 'reserve') later.abort();
    };
    const end = await runBatch(port, ALL, quiet({ signal: later.signal, step }));
    expect(end.stopped).toBe(true);
    expect(column(port, 'Quotes', 'No.')).toEqual([1, 2]);
    expect(end.plans).toBeUndefined();
    expect(sayBatch(end)).toMatch(/Stopped there; nothing more was written\.$/);
  });

  test('stopped within reserving or planning, it writes nothing of that, and what was written before stays', async () => {
    for (const [what, applies] of [
      ['reserve', 1],
      ['plan', 2],
    ] as const) {
      // after each step in turn, up to the last before the write
      for (let nth = 1; ; nth += 1) {
        const port = await ready();
        const stop = new AbortController();
        let steps = 0;
        const step: BatchGoing['step'] = (now) => {
          if (now === what && (steps += 1) === nth) stop.abort();
        };
        port.applies = 0;
        const end = await runBatch(port, ALL, quiet({ signal: stop.signal, step }));
        if (!stop.signal.aborted) {
          expect(nth).toBeGreaterThan(3);
          break;
        }
        expect([end.stopped, port.applies]).toEqual([true, applies]);
        expect(end[what === 'reserve' ? 'reserved' : 'plans']).toBeUndefined();
        expect(column(port, 'Movements', 'Job').length > 0).toBe(what === 'plan');
        expect(port.shows('Plan 1042', 1, 0)).toBeNull();
        expect(sayBatch(end)).toContain('Stopped there; nothing more was written.');
      }
    }
  });

  test('rests whenever a slice of time is used up, and only then', async () => {
    let clock = 0;
    const rested = async (passes: number) => {
      let rests = 0;
      const now = () => (clock += passes);
      await runBatch(await ready(), ALL, quiet({ now, rest: async () => void (rests += 1) }));
      return rests;
    };
    // a clock that stands still and one on which every step is long
    expect(await rested(0)).toBe(1);
    expect(await rested(100)).toBeGreaterThan(12);
  });

  test('tells how far it is', async () => {
    const port = await ready();
    const told: string[] = [];
    await runBatch(port, ALL, quiet({ step: (what, worked) => told.push(`${what} ${worked}`) }));
    expect(told).toEqual(expect.arrayContaining(['quote 0', 'quote 1', 'reserve 0', 'plan 0']));
  });

  test('Undo takes back the plans, and no quote', async () => {
    const port = await ready();
    await runBatch(port, ALL, quiet());
    expect(await undoLast(port)).toMatchObject({ done: true, reverted: { label: 'Plans of 2 jobs' } });
    expect(column(port, 'Quotes', 'No.')).toEqual([1, 2]);
  });

  test('without a currency no quote is issued, and each job says so', async () => {
    const port = await ready();
    set(port, 'Currency', '');
    const end = await runBatch(port, { ...ALL, reserve: false, plan: false }, quiet());
    expect(batchLines(end)).toHaveLength(2);
    expect(column(port, 'Quotes', 'No.')).toEqual([]);
  });
});
