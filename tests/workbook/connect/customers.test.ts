import { describe, expect, test } from 'vitest';
import { jobFacts } from '../../../src/workbook/jobFacts';
import { openJobs } from '../../../src/workbook/openJobs';
import { jobRows } from '../../../src/workbook/shopRows';
import { readShop } from '../../../src/workbook/shop';
import type { Seen } from '../../../src/workbook/port';
import { MemoryPort } from '../memoryPort';
import { connectedClubs } from './rack';

const NAMED = 'Ines Marlow';

/** Clubs of two bags, with whose they are, as a shop keeps them. */
async function bags(headings: readonly string[], rows: readonly (readonly Seen[])[]) {
  const bare = new MemoryPort();
  bare.typeTable('Bags', 'In work', [headings, ...rows]);
  const at = { sheet: 'In work', row: 0, column: 0, rows: rows.length + 1, columns: headings.length };
  return connectedClubs(bare, { table: 'Bags', at });
}

const ROWS: Seen[][] = [
  [NAMED, 'B-17', 'Driver', 45.5, 'D3', 312, 'FERN-M'],
  [NAMED, 'B-17', '7 iron', 37, 'D2', 427, 'FERN-M'],
  ['T. Okonjo', 'B-18', '7 iron', 37, 'C9', 410, 'FERN-M'],
];
const ENGLISH = ['Client', 'Bag number', 'Club', 'Length (in)', 'SW', 'Total weight (g)', 'New grip'];

describe('whose clubs they are', () => {
  test.each([
    ['English', ENGLISH],
    ['English, other words', ['Golfer', 'Bag', 'Club', 'Length (in)', 'SW', 'Total weight (g)', 'New grip']],
    ['German', ['Kunde', 'Auftrag', 'Schläger', 'Länge (in)', 'Schwunggewicht', 'Gesamtgewicht (g)', 'Neuer Griff']],
    ['Spanish', ['Nombre del cliente', 'Trabajo', 'Palo', 'Largo (in)', 'SW', 'Peso total (g)', 'Empuñadura nueva']],
  ])('is taken over from a list of clubs, headed in %s', async (_, headings) => {
    const { port, match } = await bags(headings, ROWS);
    expect(match.picks.get('customer')?.position).toBe(0);
    const { jobs } = await readShop(port);
    expect(jobs).toEqual([
      { job: 'B-17', customer: NAMED, due: null, clubs: 2 },
      { job: 'B-18', customer: 'T. Okonjo', due: null, clubs: 1 },
    ]);
  });

  test('stands at the head of pages and among the open jobs; the list stays as it is', async () => {
    const { bare, port } = await bags(ENGLISH, ROWS);
    const before = bare.tableSeen('Bags')?.rows;
    const { tables } = await readShop(port);
    expect(jobFacts(tables, 'b-17')).toMatchObject({ job: 'b-17', customer: NAMED });
    expect(jobFacts(tables, null).customer).toBe('');
    const open = openJobs(tables);
    expect(open.ok && open.value.jobs.map(({ job, customer }) => [job, customer])).toEqual([
      ['B-17', NAMED],
      ['B-18', 'T. Okonjo'],
    ]);
    expect(bare.tableSeen('Bags')?.rows).toEqual(before);
  });

  test('is what Jobs says, where Jobs says it', async () => {
    const { bare, port } = await bags(ENGLISH, ROWS);
    bare.fillTable('Jobs', [
      { Job: 'B-17', Customer: 'Marlow Golf Club' },
      { Job: 'B-18', Customer: null },
    ]);
    const { tables, jobs } = await readShop(port);
    const said = ['Marlow Golf Club', 'T. Okonjo'];
    expect(jobs.map(({ customer }) => customer)).toEqual(said);
    expect(jobRows(tables).map(({ customer }) => customer)).toEqual(said);
    expect(['B-17', 'B-18'].map((job) => jobFacts(tables, job).customer)).toEqual(said);
    const open = openJobs(tables);
    expect(open.ok && open.value.jobs.map(({ customer }) => customer)).toEqual(said);
  });

  test('is nobody where a list names two for one job', async () => {
    const two = ROWS.map(([, ...rest], at) => [at === 1 ? 'Zoë Tarn' : NAMED, ...rest]);
    const { port } = await bags(ENGLISH, two);
    expect((await readShop(port)).jobs.map(({ job, customer }) => [job, customer])).toEqual([
      ['B-17', ''],
      ['B-18', NAMED],
    ]);
  });

  test('is one customer, however the name is typed; blanks among them name nobody', async () => {
    const typed = [[null, ...(ROWS[0] as Seen[]).slice(1)], ...ROWS.slice(0, 2)].map(([name, ...rest], at) => [
      at === 2 ? '  ines  MARLOW' : (name ?? null),
      ...rest,
    ]);
    const { port } = await bags(ENGLISH, typed);
    expect((await readShop(port)).jobs).toEqual([{ job: 'B-17', customer: NAMED, due: null, clubs: 3 }]);
  });
});
