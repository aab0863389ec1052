import { describe, expect, it } from 'vitest';
import { columnReference } from '../../src/workbook/excel/dress';
import { canHold } from '../../src/workbook/excel/host';
import { createExcelPort } from '../../src/workbook/excel/port';
import type { Change, Put, WorkbookPort } from '../../src/workbook/port';
import { compareVersions } from '../simulated/library';
import { requirementSets } from '../simulated/requirements';
import { personAt } from '../simulated/person';
import { simulate } from '../simulated/simulated';
import type { Simulated, SimulatedOptions } from '../simulated/simulated';
import { block, look, make, valuesOf, write } from './structureSuite';

interface Bench extends Pick<Simulated, 'book' | 'requests' | 'used' | 'library'> {
  readonly port: WorkbookPort;
}

function bench(options: SimulatedOptions = {}): Bench {
  const { book, host, requests, used, library } = simulate(options);
  return { book, requests, used, library, port: createExcelPort(host) };
}

const plan = (rows: number): Put[][] => [
  Array.from({ length: 20 }, (_, column) => `Head ${column}`),
  ...Array.from({ length: rows }, (_, row) =>
    Array.from({ length: 20 }, (_cell, column) => (column % 4 ? row / 8 : `Club ${row}`)),
  ),
];

const dressed = (sheet: string): Change[] => [
  { do: 'sheet', name: sheet },
  write(sheet, 0, 0, [
    ['Club', 'Verdict', 'Mass (g)'],
    ['7', 'out', 46],
    ['8', 'within', { call: 'GRIPMASS', args: [{ literal: 50 }, null, { literal: 2 }, null] }],
  ]),
  { do: 'table', name: 'Clubs', at: block(sheet, 0, 0, 3, 3) },
  {
    do: 'format',
    at: block(sheet, 0, 0, 1, 3),
    format: {
      bold: true,
      italic: true,
      ink: '#102010',
      size: 12,
      fill: '#DDEBDD',
      wrap: true,
      height: 30,
      align: 'right',
      vertical: 'center',
      rule: '#557755',
      number: '0.0',
    },
  },
  { do: 'widths', sheet, column: 1, widths: [10] },
  { do: 'freezeRows', sheet, rows: 1 },
  { do: 'choices', at: block(sheet, 1, 0, 2, 1), from: ['a', 'b'], hint: 'a or b' },
  { do: 'choices', at: block(sheet, 1, 2, 2, 1), from: { table: 'Clubs', header: 'Mass (g)' }, hint: 'from the table' },
  {
    do: 'highlight',
    at: block(sheet, 1, 0, 2, 3),
    rules: [
      { column: 1, equals: ['out', 'say "no"'], fill: '#FFDDDD', ink: '#660000', bold: true },
      { column: 1, equals: ['within'], fill: '#DDFFDD', ink: '#006600' },
    ],
  },
  {
    do: 'page',
    sheet,
    setup: {
      landscape: true,
      area: block(sheet, 0, 0, 3, 3),
      titleRows: { row: 0, rows: 2 },
      footer: 'A & B',
      breaks: [2],
    },
  },
  { do: 'name', name: 'Plan_J1', at: block(sheet, 0, 0, 3, 3) },
  { do: 'remember', key: 'schema', value: '1' },
  { do: 'show', at: block(sheet, 1, 0, 1, 1) },
];

/** Everything the port can do, once. */
async function lengthen({ port }: Bench): Promise<void> {
  await make(port, [
    write('Sheet1', 40, 0, [['Way'], ['Lead']]),
    { do: 'table', name: 'Ways', at: block('Sheet1', 40, 0, 2, 1) },
  ]);
  const [ways, below] = await port.read([
    { read: 'table', table: 'Ways' },
    { read: 'block', at: block('Sheet1', 42, 0, 1, 1) },
  ]);
  if (ways) await port.apply([{ do: 'lengthen', table: 'Ways', rows: 1 }], [ways, below], { label: 'Rows' });
}

async function doAll({ port, book }: Bench): Promise<void> {
  const stop = port.watch(() => undefined);
  const receipt = await make(port, dressed("Bob's räcke"), 'lastFill');
  await make(port, [
    { do: 'name', name: 'Plan_J1', at: block('Sheet1', 0, 0, 1, 1) },
    { do: 'freezeRows', sheet: 'Sheet1', rows: 0 },
  ]);
  await port.read([{ read: 'sheets' }, { read: 'table', table: 'Clubs' }, { read: 'name', name: 'Plan_J1' }]);
  await port.selection();
  await port.recall('lastFill');
  await port.remember('lastFill', null);
  personAt(book).type("Bob's räcke", 9, 9, 'mine');
  await port.revert(receipt);
  stop();
  await new Promise((done) => setTimeout(done, 20));
}

describe('client contract, simulated workbook: round trips', () => {
  it.each([13, 5000])('a plan of %i clubs is one to read and one to write', async (clubs) => {
    const { port, requests } = bench();
    const cells = plan(clubs);
    const at = block('Plan', 0, 0, clubs + 1, 20);
    const [, , seen] = await port.read([
      { read: 'table', table: 'Clubs' },
      { read: 'name', name: 'Plan_J1' },
      { read: 'block', at },
    ]);
    expect(requests).toHaveLength(1);
    const changes: Change[] = [
      { do: 'sheet', name: 'Plan' },
      { do: 'write', at, cells },
      { do: 'format', at, format: { number: '0.0' } },
      { do: 'name', name: 'Plan_J1', at },
    ];
    const receipt = await port.apply(changes, [seen], { label: 'Fill', receiptKey: 'lastFill' });
    expect(requests).toHaveLength(2);
    expect(requests.at(-1)?.characters).toBeLessThan(4_500_000);
    await port.revert(receipt);
    // One to look, one to write and one in which the sheet goes, once nothing else was found on it. What so many cells hold is too much
    // for one answer with their types: refused, and asked for again without.
    expect(requests).toHaveLength(clubs > 1000 ? 6 : 5);
  });

  it('a plan of 5000 clubs written over another is one to read, one to keep what both of them hold, and one to write', async () => {
    const { port, requests } = bench();
    await make(
      port,
      [
        { do: 'sheet', name: 'Plan' },
        { do: 'write', at: block('Plan', 0, 0, 5001, 20), cells: plan(5000) },
      ],
      'lastFill',
    );
    const before = requests.length;
    await make(port, [{ do: 'write', at: block('Plan', 0, 0, 5001, 20), cells: plan(5000) }], 'lastFill');
    expect(requests.length - before).toBe(3);
  });

  it('cells too many for one request go in parts, all of them', async () => {
    const { port, requests, book } = bench();
    const text = 'x'.repeat(600);
    const cells = Array.from({ length: 5000 }, (_, row): Put[] => [`${text}${row}`, `${text} ${row}`]);
    const receipt = await make(port, [write('Sheet1', 0, 0, cells)]);
    // one to look, then more than one to write
    expect(requests.length).toBeGreaterThan(2);
    expect(requests.every(({ characters }) => characters < 5_000_000)).toBe(true);
    expect(book.active.own(4999, 1).value).toBe(`${text} 4999`);
    expect(receipt.written[0]?.at).toEqual(block('Sheet1', 0, 0, 5000, 2));
  });

  it('what is not plain Latin is counted as Excel counts it, in bytes: a Cyrillic letter has two', async () => {
    const { port, requests, book } = bench();
    const text = 'ж'.repeat(300);
    const cells = Array.from({ length: 5000 }, (_, row): Put[] => [`${text}${row}`, `${text} ${row}`]);
    await make(port, [write('Sheet1', 0, 0, cells)]);
    // 3 million letters, 6 million bytes: one to look, and two to write
    expect(requests).toHaveLength(3);
    expect(book.active.own(4999, 1).value).toBe(`${text} 4999`);
  });

  it('formulas too long for one request go in parts, all of them', async () => {
    const { port, requests, book } = bench();
    const literal = 'x'.repeat(200);
    const cells = Array.from({ length: 9000 }, (): Put[] => {
      return [{ call: 'TAPELAYERS', args: [{ literal }, { literal }, { literal }] }, 1];
    });
    await make(port, [write('Sheet1', 0, 0, cells)]);
    // 9,000 formulas of some 640 characters
    expect(requests).toHaveLength(3);
    for (const row of [0, 4499, 4500, 8999]) expect(book.active.own(row, 0).formula).toContain(literal);
  });

  it('an answer too long comes in pieces', async () => {
    const { book, port, requests } = bench({ answerLimit: 200_000 });
    const cells = Array.from({ length: 9000 }, (_, row): Put[] =>
      Array.from({ length: 10 }, (_cell, i) => (i ? row * i : `c${row}`)),
    );
    cells.forEach((line, row) => line.forEach((cell, column) => book.active.put(row, column, cell)));
    const before = requests.length;
    expect(await valuesOf(port, block('Sheet1', 0, 0, 9000, 10))).toEqual(cells);
    // refused with types and without, asked what stands, asked for all but the cells, then pieces as small as they must be
    expect(requests.length - before).toBeLessThan(30);
    expect(Math.max(...requests.map(({ answered }) => answered))).toBeLessThan(200_000);
  });
});

describe('client contract, simulated workbook: what the host needs', () => {
  const sets = requirementSets();
  // Members with an underscore are the library's own, called by it and not by us.
  const ours = (used: Iterable<string>): string[] => [...used].filter((member) => !member.includes('._'));
  const highest = (used: Iterable<string>): string =>
    ours(used).reduce((most, member) => {
      const set = sets.get(member) ?? '';
      return compareVersions(set, most) > 0 ? set : most;
    }, '1.1');

  it('the descriptions name the requirement sets (Range.values 1.1, Range.getTables 1.9)', () => {
    expect(sets.get('Range.values')).toBe('1.1');
    expect(sets.get('Range.getTables')).toBe('1.9');
    expect(sets.get('Range.getMergedAreasOrNullObject')).toBe('1.13');
  });

  it('does all that is asked of it with ExcelApi 1.9', async () => {
    const old = bench({ excelApi: '1.9' });
    await doAll(old);
    expect(old.used.size).toBeGreaterThan(60);
    expect(ours(old.used).filter((member) => !sets.has(member))).toEqual([]);
    expect(highest(old.used)).toBe('1.9');
    await expect(lengthen(old)).rejects.toMatchObject({ code: 'unsupported', cells: ['Ways'] });
    expect(old.port.capabilities).toEqual({ host: 'excel', spill: false, pageSetup: true, undoGroup: false });
  });

  it('uses of later sets only what it asks for first', async () => {
    const now = bench();
    now.book.active.merged.push({ row: 0, column: 0, rows: 1, columns: 2 });
    await look(now.port, block('Sheet1', 0, 0, 1, 2));
    await doAll(now);
    await lengthen(now);
    const later = [...now.used].filter((member) => compareVersions(sets.get(member) ?? '0', '1.9') > 0).sort();
    expect(later).toEqual([
      'Range.getMergedAreasOrNullObject',
      'Range.getSpillingToRangeOrNullObject',
      'Range.hasSpill',
      'Table.resize',
    ]);
    expect(now.port.capabilities).toMatchObject({ spill: true, undoGroup: true });
  });

  it('models no member that the library does not have', async () => {
    const { used, port, book, library } = bench();
    book.active.merged.push({ row: 0, column: 0, rows: 1, columns: 2 });
    await look(port, block('Sheet1', 0, 0, 1, 2));
    await doAll({ ...bench(), used, port, book });
    await lengthen({ ...bench(), used, port, book });
    const invented = [...used].filter((member) => {
      const [className = '', name = ''] = member.split('.');
      return !(name in (library.Excel[className]?.prototype ?? {}));
    });
    expect(invented).toEqual([]);
  });
});

describe('client contract, simulated workbook: what Excel is told', () => {
  async function filled(): Promise<Bench> {
    const made = bench();
    await make(made.port, dressed("Bob's räcke"));
    return made;
  }

  it('formulas with literals, left-out arguments, tables and blocks', async () => {
    const { port, book } = bench();
    const args = [
      { table: 'Clubs' },
      null,
      { block: block("Bob's räcke", 0, 0, 2, 3) },
      { literal: 'say "no"' },
      { literal: -1.5 },
      null,
      null,
    ];
    await make(port, [write('Sheet1', 1, 1, [['a', { call: 'SETPLAN', args }]])]);
    expect(book.active.own(1, 2).formula).toBe(
      `=REGRIP.SETPLAN(Clubs[#All],,'Bob''s räcke'!$A$1:$C$2,"say ""no""",-1.5)`,
    );
    expect(book.active.own(1, 1).value).toBe('a');
  });

  it('a text longer than a formula takes, in pieces', async () => {
    const { port, book } = bench();
    await make(port, [write('Sheet1', 0, 0, [[{ call: 'TOPOINTS', args: [{ literal: 'x'.repeat(300) }] }]])]);
    expect(book.active.own(0, 0).formula).toBe(`=REGRIP.TOPOINTS("${'x'.repeat(255)}"&"${'x'.repeat(45)}")`);
  });

  it('highlights as formulas of the first row, the first rule before the others', async () => {
    const [first, second] = (await filled()).book.sheet("Bob's räcke")?.highlights ?? [];
    expect(first).toEqual({
      areas: [{ row: 1, column: 0, rows: 2, columns: 3 }],
      parts: {
        formula: '=OR($B2&""="out",$B2&""="say ""no""")',
        'fill.color': '#FFDDDD',
        'font.color': '#660000',
        'font.bold': true,
      },
    });
    expect(second?.parts.formula).toBe('=OR($B2&""="within")');
  });

  it('highlights anew rather than once more', async () => {
    const { port, book } = await filled();
    const again = dressed("Bob's räcke").filter((change) => change.do === 'highlight');
    await port.apply(again, [], { label: 'again' });
    expect(book.sheet("Bob's räcke")?.highlights).toHaveLength(2);
  });

  it('drop-downs that warn and never refuse, fed by words or by a table', async () => {
    const sheet = (await filled()).book.sheet("Bob's räcke");
    expect(sheet?.dressAt('validation.rule', 1, 0)).toEqual({ list: { inCellDropDown: true, source: 'a,b' } });
    expect(sheet?.dressAt('validation.rule', 2, 2)).toEqual({
      list: { inCellDropDown: true, source: '=INDIRECT("Clubs[[Mass (g)]]")' },
    });
    expect(sheet?.dressAt('validation.errorAlert', 1, 0)).toMatchObject({ style: 'Warning', showAlert: true });
    expect(sheet?.dressAt('validation.prompt', 1, 0)).toMatchObject({ message: 'a or b' });
  });

  it.each([
    ['Item', '[Item]'],
    ['Länge', '[Länge]'],
    ['Mass (g)', '[[Mass (g)]]'],
    ["Bob's #1 [x] @2", "[[Bob''s '#1 '[x'] '@2]]"],
  ])('the column %s of a table as %s', (header, reference) => expect(columnReference(header)).toBe(reference));

  it.each([[['a,b', 'c']], [Array.from({ length: 60 }, (_, i) => `choice ${i}`)]])(
    'no drop-down that Excel could not hold',
    async (from) => {
      const { port, requests } = bench();
      const work = port.apply(
        [
          { do: 'sheet', name: 'New' },
          { do: 'choices', at: block('Sheet1', 0, 0, 1, 1), from, hint: '' },
        ],
        [],
        { label: 'x' },
      );
      await expect(work).rejects.toMatchObject({ code: 'unsupported' });
      expect(requests).toHaveLength(1);
    },
  );

  it.each([
    [1, 2],
    [1, undefined],
    [0, 1],
    [0, undefined],
  ])('freezes %s rows and %s columns at once', async (rows, columns) => {
    const { book, host } = simulate();
    const port = createExcelPort(host);
    const [free] = await port.read([
      { read: 'block', at: { sheet: 'Sheet1', row: 0, column: 0, rows: 1, columns: 1 } },
    ]);
    const freeze = { do: 'freezeRows', sheet: 'Sheet1', rows, ...(columns !== undefined && { columns }) } as const;
    await port.apply([freeze], [free], { label: 'Freeze' });
    const sheet = book.sheet('Sheet1');
    expect([sheet?.frozenRows, sheet?.frozenColumns]).toEqual([rows, columns ?? 0]);
  });

  it('page, frozen rows, widths in points, table style', async () => {
    const { book } = await filled();
    const sheet = book.sheet("Bob's räcke");
    expect(sheet?.page).toEqual({
      orientation: 'Landscape',
      zoom: { horizontalFitToPages: 1 },
      printArea: "'Bob''s räcke'!A1:C3",
      printTitleRows: '$1:$2',
      breaks: ['A3'],
      centerFooter: 'A && B',
      rightFooter: '&P / &N',
    });
    expect(sheet?.frozenRows).toBe(1);
    // (10 characters × 7 pixels + 5) × 0.75 points
    expect(sheet?.dressAt('format.columnWidth', 0, 1)).toBe(56.25);
    expect(sheet?.dressAt('format.rowHeight', 0, 2)).toBe(30);
    expect(book.tables[0]).toMatchObject({ style: 'TableStyleLight1', banded: true });
    expect(sheet?.dressAt('numberFormat', 0, 2)).toBe('0.0');
    expect(sheet?.dressAt('border.EdgeBottom.color', 0, 2)).toBe('#557755');
  });
});

describe('client contract, simulated workbook: looks of a person', () => {
  const at = block('Sheet1', 0, 0, 3, 2);
  const { sheet: _, ...area } = at;
  const own = { areas: [area], parts: { formula: '=TRUE' } };
  const highlight: Change = {
    do: 'highlight',
    at,
    rules: [{ column: 0, equals: ['Out'], fill: '#FFDDDD', ink: '#660000' }],
  };
  const format: Change = { do: 'format', at, format: { bold: true, number: '0.0', align: 'right', rule: '#557755' } };

  it('are told of in the read', async () => {
    const { port, book } = bench();
    expect((await look(port, at))[0]?.highlighted).toBeUndefined();
    book.active.highlights.push(own);
    expect((await look(port, at))[0]?.highlighted).toBe(true);
  });

  it('stay when ours come beside them, and when ours are taken back', async () => {
    const { port, book } = bench();
    book.active.highlights.push(own);
    book.active.dress(area, 'fill.color', '#FFFF00');
    book.active.dress(area, 'validation.rule', { list: { source: 'x' } });
    const receipt = await port.apply([format, { ...highlight, beside: true }], await look(port, at), { label: 'Fill' });
    expect(book.active.highlights).toContain(own);
    expect(book.active.dressAt('font.bold', 1, 1)).toBe(true);
    await port.revert(receipt);
    expect(book.active.highlights).toContain(own);
    expect(book.active.dressAt('fill.color', 1, 1)).toBe('#FFFF00');
    expect(book.active.dressAt('validation.rule', 1, 1)).toEqual({ list: { source: 'x' } });
    expect(book.active.dressAt('font.bold', 1, 1)).toBe(false);
    expect(book.active.dressAt('numberFormat', 1, 1)).toBe('General');
    expect(book.active.dressAt('border.EdgeBottom.style', 1, 1)).toBe('None');
  });

  it('stay around the cells that ours take, where they reach further', async () => {
    const { port, book } = bench();
    const wide = { areas: [{ row: 0, column: 0, rows: 5, columns: 4 }], parts: own.parts };
    const apart = { areas: [{ row: 9, column: 0, rows: 1, columns: 1 }], parts: own.parts };
    book.active.highlights.push(wide, apart);
    await port.apply([highlight], await look(port, at), { label: 'Fill' });
    // The three rows and two columns of the block are ours; the rest of the five by four stays the person's.
    expect(book.active.highlights.slice(1)).toEqual([
      {
        areas: [
          { row: 0, column: 2, rows: 3, columns: 2 },
          { row: 3, column: 0, rows: 2, columns: 4 },
        ],
        parts: own.parts,
      },
      apart,
    ]);
  });

  it('are none where ours stood alone: these go', async () => {
    const { port, book } = bench();
    const receipt = await port.apply([format, highlight], await look(port, at), { label: 'Fill' });
    expect(book.active.highlights).toHaveLength(1);
    await port.revert(receipt);
    expect(book.active.highlights).toEqual([]);
  });
});

describe('client contract, simulated workbook: a formula that fills many cells', () => {
  it.each(['value', 'formula'] as const)(
    'is frozen to values and comes back, where spilled cells answer their %s',
    async (spilledFormulas) => {
      const { port, book } = bench({ spilledFormulas });
      await make(port, [write('Sheet1', 2, 1, [[{ call: 'SETPLAN', args: [{ table: 'Clubs' }] }]])]);
      const values = [
        ['Club', 'Mass'],
        ['7', 46],
        ['8', 47],
      ];
      book.active.spills.push({ at: { row: 2, column: 1, rows: 3, columns: 2 }, values });
      const at = block('Sheet1', 2, 1, 3, 2);
      const [seen] = await look(port, at);
      expect(seen?.values).toEqual(values);
      expect(seen?.formulas).toEqual([
        ['=REGRIP.SETPLAN(Clubs[#All])', null],
        [null, null],
        [null, null],
      ]);
      expect(seen?.spills).toEqual([at]);

      const receipt = await port.apply([{ do: 'write', at, cells: values }], seen ? [seen] : [], { label: 'Freeze' });
      expect((await look(port, at))[0]).toMatchObject({
        values,
        formulas: [
          [null, null],
          [null, null],
          [null, null],
        ],
      });
      expect(await port.revert(receipt)).toMatchObject({ restored: 6, left: [] });
      expect((await look(port, at))[0]).toEqual(seen);
    },
  );

  it('is a person’s own, anywhere in a block: it is taken for no change, and comes back', async () => {
    const { port, book, requests } = bench();
    const { active: sheet } = book;
    sheet.put(20, 3, '=SORT(A1:A3)');
    const values = [[3], [4], [5]];
    sheet.spills.push({ at: { row: 20, column: 3, rows: 3, columns: 1 }, values });
    const at = block('Sheet1', 2, 1, 30, 5);
    const before = requests.length;
    const seen = await look(port, at);
    expect(requests.length - before).toBe(2);
    expect(seen[0]?.spills).toEqual([block('Sheet1', 20, 3, 3, 1)]);
    // Calculated anew meanwhile.
    sheet.spills.splice(0, 1, { at: { row: 20, column: 3, rows: 3, columns: 1 }, values: [[6], [7], [8]] });
    const over = write('Sheet1', 21, 2, [['a', 'b']]);
    const receipt = await port.apply([over], seen, { label: 'Over it' });
    expect(await port.revert(receipt)).toMatchObject({ restored: 2, left: [] });
    expect((await look(port, at))[0]?.values[19]?.[2]).toBe(7);
    expect(sheet.own(21, 3).value).toBe('');
  });

  it.each(['value', 'formula'] as const)(
    'is found after thousands of formulas that fill their own cell, where spilled cells answer their %s',
    async (spilledFormulas) => {
      const { port, book, requests } = bench({ spilledFormulas });
      const { active: sheet } = book;
      const rows = 3000;
      for (let row = 0; row < rows; row += 1) sheet.put(row, 0, `=ROW()+${row}`);
      sheet.put(rows - 900, 1, '=SORT(A1:A800)');
      const values = Array.from({ length: 800 }, (_, row) => [row]);
      const area = { row: rows - 900, column: 1, rows: 800, columns: 1 };
      sheet.spills.push({ at: area, values });
      const before = requests.length;
      const [seen] = await look(port, block('Sheet1', 0, 0, rows, 2));
      expect(seen?.spills).toEqual([{ sheet: 'Sheet1', ...area }]);
      expect(seen?.formulas.filter(([, formula]) => formula !== null)).toHaveLength(1);
      // One to look, one for the parts of the block, and the formulas of those that hold a spill, some hundreds in each.
      expect(requests.length - before).toBeLessThan(6);
      expect(Math.max(...requests.map(({ characters }) => characters))).toBeLessThan(1_500_000);
    },
  );

  it('is taken back with the sheet it filled', async () => {
    const { port, book } = bench();
    const receipt = await make(port, [
      { do: 'sheet', name: 'Plan' },
      write('Plan', 1, 1, [[{ call: 'SETPLAN', args: [] }]]),
    ]);
    book.sheet('Plan')?.spills.push({
      at: { row: 1, column: 1, rows: 9, columns: 4 },
      values: Array.from({ length: 9 }, () => [1, 2, 3, 4]),
    });
    expect(await port.revert(receipt)).toMatchObject({ restored: 1, left: [] });
    expect(book.sheets.map((sheet) => sheet.name)).toEqual(['Sheet1']);
  });

  it('leaves a sheet that holds a chart, or is the only one to be seen', async () => {
    const { port, book } = bench();
    const receipt = await make(port, [{ do: 'sheet', name: 'Plan' }, write('Plan', 1, 1, [['a']])]);
    book.sheet('Plan')?.charts.push('Chart 1');
    await port.revert(receipt);
    expect(book.sheets).toHaveLength(2);
    const second = await make(port, [{ do: 'sheet', name: 'Other' }]);
    for (const sheet of book.sheets) if (sheet.name !== 'Other') sheet.visibility = 'Hidden';
    await port.revert(second);
    expect(book.sheets).toHaveLength(3);
  });
});

describe('client contract, simulated workbook: other hosts', () => {
  it('that refuse children of null objects are asked what stands first', async () => {
    const { port, requests } = bench({ nullsPropagate: false });
    const [table, seen, place] = await port.read([
      { read: 'table', table: 'Clubs' },
      { read: 'block', at: block('Nowhere', 0, 0, 1, 1) },
      { read: 'name', name: 'Plan_J1' },
    ]);
    expect([table, seen.sheetExists, place.at]).toEqual([null, false, null]);
    expect(requests).toHaveLength(3);
    const receipt = await make(port, dressed('Plan'));
    await port.revert(receipt);
    expect(await port.revert(receipt)).toMatchObject({ left: ['Plan!A1:C3'] });
  });

  it('without a header row shown, a table cannot be read', async () => {
    const { port, book } = bench();
    book.addTable(book.active, { row: 0, column: 0, rows: 2, columns: 2 }).headersShown = false;
    await expect(port.read([{ read: 'table', table: 'Table1' }])).rejects.toMatchObject({ code: 'unsupported' });
  });

  it('a total row is no body row', async () => {
    const { port, book } = bench();
    personAt(book).type('Sheet1', 2, 0, 'Total');
    book.addTable(book.active, { row: 0, column: 0, rows: 3, columns: 1 }).totalsShown = true;
    const [table] = await port.read([{ read: 'table', table: 'Table1' }]);
    expect(table).toMatchObject({ rows: [[null]], at: block('Sheet1', 0, 0, 2, 1) });
  });

  it('errors are told from text that looks like one', async () => {
    const { port, book } = bench();
    book.active.put(0, 0, '#N/A');
    book.active.put(0, 1, "'#N/A");
    expect(await valuesOf(port, block('Sheet1', 0, 0, 1, 2))).toEqual([[{ error: '#N/A' }, '#N/A']]);
    const receipt = await make(port, [write('Sheet1', 0, 0, [['x', 'y']])]);
    await port.revert(receipt);
    expect(await valuesOf(port, block('Sheet1', 0, 0, 1, 2))).toEqual([[{ error: '#N/A' }, '#N/A']]);
  });

  it('that keep numbers as text in cells formatted so are no person', async () => {
    const { port, book } = bench();
    book.active.dress({ row: 0, column: 0, rows: 1, columns: 1 }, 'numberFormat', '@');
    const receipt = await make(port, [write('Sheet1', 0, 0, [[7]])]);
    book.active.cells.set(0, 0, { value: '7' });
    expect(await port.revert(receipt)).toMatchObject({ restored: 1, left: [] });
  });
});

describe('client contract, simulated workbook: watching', () => {
  const settled = (): Promise<void> => new Promise((done) => setTimeout(done, 30));

  it('hears a person, not itself, and stops when asked', async () => {
    const { port, book } = bench();
    const heard: string[] = [];
    const stop = port.watch((sheet) => heard.push(sheet));
    await settled();
    personAt(book).type('Sheet1', 0, 0, 'mine');
    await settled();
    expect(heard).toEqual(['Sheet1']);
    const receipt = await make(port, [write('Sheet1', 1, 0, [['ours']])]);
    await port.revert(receipt);
    await settled();
    expect(heard).toEqual(['Sheet1']);
    expect(book.eventsOn).toBe(true);
    stop();
    stop();
    await settled();
    personAt(book).type('Sheet1', 0, 0, 'again');
    await settled();
    expect(heard).toEqual(['Sheet1']);
    expect(book.heard).toBeNull();
  });

  it('hears that a sheet was deleted, whose name is gone', async () => {
    const { port, book } = bench();
    book.addSheet('Other');
    const heard: string[] = [];
    const stop = port.watch((sheet) => heard.push(sheet));
    await settled();
    personAt(book).deleteSheet('Other');
    await settled();
    expect(heard).toEqual(['']);
    stop();
    await settled();
    expect(book.heardGone).toBeNull();
  });

  it('has its ears back after a change that failed', async () => {
    const simulated = simulate();
    const port = createExcelPort(simulated.host);
    const stop = port.watch(() => undefined);
    await settled();
    const seen = await look(port, block('Sheet1', 0, 0, 1, 1));
    simulated.trouble = (request, actions) => (request === 0 ? { code: 'GeneralException', at: actions - 1 } : null);
    await expect(port.apply([write('Sheet1', 0, 0, [['a']])], seen, { label: 'x' })).rejects.toMatchObject({
      code: 'putBack',
    });
    expect(simulated.book.eventsOn).toBe(true);
    stop();
    await settled();
  });

  it('does without where the host has no such events', async () => {
    const { port } = bench({ excelApi: '1.8' });
    const stop = port.watch(() => undefined);
    await settled();
    expect(stop).not.toThrow();
    await settled();
  });
});

describe('client contract, simulated workbook: an Excel that is too old', () => {
  it('is told by the lowest requirement set', () => {
    const withSets = (newest: number) => ({
      run: () => Promise.reject(new Error('not asked')),
      isSetSupported: (name: string, version: string) => name === 'ExcelApi' && Number(version.split('.')[1]) <= newest,
    });
    expect(canHold(withSets(9))).toBe(true);
    expect(canHold(withSets(8))).toBe(false);
  });
});

describe('client contract, simulated workbook: a table with a column that is calculated throughout', () => {
  const below = block('Shelf', 3, 0, 1, 3);
  const changes: Change[] = [
    { do: 'lengthen', table: 'Shelf', rows: 1 },
    { do: 'write', at: below, cells: [['c', 6, undefined]] },
  ];

  async function shelf() {
    const simulated = simulate();
    const port = createExcelPort(simulated.host);
    const person = personAt(simulated.book);
    await make(port, [
      { do: 'sheet', name: 'Shelf' },
      write('Shelf', 0, 0, [
        ['Item', 'On hand', 'Twice'],
        ['a', 4, null],
        ['b', 5, null],
      ]),
      { do: 'table', name: 'Shelf', at: block('Shelf', 0, 0, 3, 3) },
    ]);
    await person.typeFormula('Shelf', 1, 2, '=2*[@[On hand]]');
    await person.typeFormula('Shelf', 2, 2, '=2*[@[On hand]]');
    const [table, cells] = await port.read([
      { read: 'table', table: 'Shelf' },
      { read: 'block', at: below },
    ]);
    if (!table) throw new Error('there is no table Shelf');
    return { simulated, port, person, looked: [table, cells] };
  }

  it('gets rows below, in which Excel puts the formula by itself', async () => {
    const { port, looked } = await shelf();
    await port.apply(changes, looked, { label: 'Rows' });
    const [seen] = await look(port, below);
    expect(seen?.values[0]?.slice(0, 2)).toEqual(['c', 6]);
    expect(seen?.formulas[0]?.[2]).toBe('=2*[@[On hand]]');
  });

  it('gets none where a person typed below it since', async () => {
    const { port, person, looked } = await shelf();
    await person.type('Shelf', 3, 1, 'mine');
    await expect(port.apply(changes, looked, { label: 'Rows' })).rejects.toMatchObject({ code: 'notLookedAt' });
    const [seen] = await look(port, below);
    expect(seen?.values[0]).toEqual([null, 'mine', null]);
    expect(seen?.formulas[0]).toEqual([null, null, null]);
  });

  it('keeps what a person typed meanwhile where the formula came', async () => {
    const { port, person, looked } = await shelf();
    await person.typeFormula('Shelf', 3, 2, '=1+1');
    await expect(port.apply(changes, looked, { label: 'Rows' })).rejects.toMatchObject({ code: 'notLookedAt' });
    const [seen] = await look(port, below);
    expect(seen?.formulas[0]).toEqual([null, null, '=1+1']);
    expect(seen?.values[0]?.slice(0, 2)).toEqual([null, null]);
  });

  it.each([
    ['beside the formula', changes],
    ['over the formula', [changes[0], { do: 'write', at: below, cells: [['c', 6, 7]] }] as Change[]],
  ])('gets none where the change fails, of which something was to stand %s, wherever it fails', async (_, asked) => {
    const clean = await shelf();
    await clean.port.apply(asked, clean.looked, { label: 'Rows' });
    const actions = clean.simulated.requests.at(-1)?.actions ?? 0;
    let filled = 0;
    for (let at = 0; at < actions; at += 1) {
      const { simulated, port, looked } = await shelf();
      const before = simulated.book.snapshot();
      const shown: string[] = [];
      simulated.trouble = (request) => {
        if (request > 0) shown.push(simulated.book.snapshot());
        return request === 0 ? { code: 'GeneralException', at } : null;
      };
      await expect(port.apply(asked, looked, { label: 'Rows' })).rejects.toMatchObject({ code: 'putBack' });
      simulated.trouble = null;
      filled += Number((shown[0] ?? '').split('=2*[@[On hand]]').length > before.split('=2*[@[On hand]]').length);
      expect(simulated.book.snapshot(), `action ${at}`).toBe(before);
      // It may be tried again at once.
      await port.apply(asked, looked, { label: 'Rows' });
    }
    // Some of them failed after the formula had come.
    expect(filled).toBeGreaterThan(0);
  });
});
