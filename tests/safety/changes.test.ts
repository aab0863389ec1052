/**
 * Text in every change that a port makes: none of it becomes a formula, in a cell or in what decides over cells, and none a code of a page's
 * foot. Excel by its client library on a simulated workbook, the embedded spreadsheet, and the file that is saved of it.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import fc from 'fast-check';
import { IDefinedNamesService } from '@univerjs/engine-formula';
import { ConditionalFormattingRuleModel } from '@univerjs/sheets-conditional-formatting';
import { SheetDataValidationModel } from '@univerjs/sheets-data-validation';
import { describe, expect, test } from 'vitest';
import { describeCopy } from '../../src/workbook/embedded/save/copy';
import { bytesOf } from '../../src/workbook/embedded/save/file';
import { PortError, type Block, type Change, type Query, type WorkbookPort } from '../../src/workbook/port';
import { pageSheetName } from '../../src/workbook/sheetName';
import { unzip } from '../embedded/save/unzip';
import { embeddedBench, simulatedBench, type EmbeddedBench, type SimulatedBench } from './benches';
import { drawn } from './chance';
import { nastyText } from './nastyText';

/** Codes of a page's foot and head as well, alone and behind what begins a formula. */
const text = fc.oneof(
  nastyText,
  fc
    .tuple(fc.constantFrom('', '=', 'A'), fc.constantFrom('&P', '&"Arial"', '&&D', '&C&R', '&F&'))
    .map((parts) => parts.join('')),
);

type Kind = Change['do'];

/** What a text is put into. */
interface Around {
  /** The text as a sheet can be called by it. */
  readonly sheet: string;
  readonly text: string;
  readonly at: (row: number, column: number, rows: number, columns: number) => Block;
}

/**
 * For every kind of change those that carry the text wherever they can. A kind that is not here does not compile, and fails below.
 */
const CHANGES: Readonly<Record<Kind, (around: Around) => readonly Change[]>> = {
  sheet: ({ sheet }) => [{ do: 'sheet', name: sheet }],
  write: ({ text: each, at }) => [
    {
      do: 'write',
      at: at(0, 0, 1, 3),
      cells: [[each, `${each} 2`, { call: 'SWINGWEIGHT', args: [{ literal: each }, { block: at(0, 0, 1, 1) }] }]],
    },
  ],
  format: ({ text: each, at }) => [
    ...['0.0', 'General', 'yyyy-mm-dd', '@'].map((number, row): Change => ({
      do: 'format',
      at: at(2 + row, 0, 1, 1),
      format: { number },
    })),
    { do: 'write', at: at(2, 0, 4, 1), cells: [[each], [each], [each], [each]] },
  ],
  table: ({ text: each, at }) => [
    {
      do: 'write',
      at: at(8, 0, 2, 2),
      cells: [
        [each, 'Other'],
        [each, 1],
      ],
    },
    { do: 'table', name: 'Nasty', at: at(8, 0, 2, 2) },
  ],
  lengthen: ({ text: each, at }) => [
    { do: 'lengthen', table: 'Nasty', rows: 1 },
    { do: 'write', at: at(10, 0, 1, 1), cells: [[each]] },
  ],
  widen: ({ text: each }) => [{ do: 'widen', table: 'Nasty', headers: [`${each} more`] }],
  widths: ({ sheet }) => [{ do: 'widths', sheet, column: 0, widths: [12] }],
  freezeRows: ({ sheet }) => [{ do: 'freezeRows', sheet, rows: 1 }],
  choices: ({ text: each, at }) => [
    { do: 'choices', at: at(20, 0, 1, 1), from: [`a${each}`.replaceAll(',', ';'), 'b'], hint: each },
    { do: 'choices', at: at(21, 0, 1, 1), from: { table: 'Nasty', header: each }, hint: each },
  ],
  highlight: ({ text: each, at }) => [
    {
      do: 'highlight',
      at: at(24, 0, 2, 2),
      rules: [{ column: 1, equals: [each, '1")+1+("'], fill: '#ffeecc', ink: '#332200' }],
    },
  ],
  page: ({ text: each, sheet, at }) => [
    {
      do: 'page',
      sheet,
      setup: { landscape: true, area: at(0, 0, 30, 4), titleRows: { row: 0, rows: 1 }, breaks: [5], footer: each },
    },
  ],
  name: ({ at }) => [{ do: 'name', name: 'Nasty_Place', at: at(0, 0, 2, 2) }],
  show: ({ at }) => [{ do: 'show', at: at(0, 0, 1, 1) }],
  remember: ({ text: each }) => [{ do: 'remember', key: each, value: each }],
};

/** In an order in which each finds what it needs. */
const KINDS = Object.keys(CHANGES) as Kind[];

/** Cells that are looked at before a change: all that any of them writes. */
const LOOKED = { row: 0, column: 0, rows: 30, columns: 6 };

async function makeAll(port: WorkbookPort, each: string): Promise<void> {
  const sheet = pageSheetName(each.replace(/^'+/, ''), '', []).trim();
  const around: Around = {
    sheet,
    text: each,
    at: (row, column, rows, columns) => ({ sheet, row, column, rows, columns }),
  };
  for (const kind of KINDS) {
    const queries: Query[] = [
      { read: 'block', at: { sheet, ...LOOKED } },
      { read: 'table', table: 'Nasty' },
    ];
    const looked = (await port.read<readonly Query[]>(queries)).filter((seen) => seen !== null);
    await port.apply(CHANGES[kind](around), looked as Parameters<WorkbookPort['apply']>[1], { label: kind });
  }
}

const QUOTED = '"(?:[^"]|"")*"';
const PLACE = "(?:'(?:[^']|'')+'|[\\p{L}_][\\p{L}\\p{N}_.]*)!\\$[A-Z]+\\$\\d+(?::\\$[A-Z]+\\$\\d+)?";
const whole = (pattern: string): RegExp => new RegExp(`^${pattern}$`, 'su');

/** A call of ours with the text as a literal and one cell. */
const CALL = whole(`=REGRIP\\.SWINGWEIGHT\\(${QUOTED},\\s?(?:${PLACE}|\\$?[A-Z]+\\$?\\d+)\\)`);
const NAME = whole(`=?${PLACE}`);
const HIGHLIGHT = whole(`=?OR\\((?:\\$[A-Z]+\\d+&""=${QUOTED},?)+\\)`);
/** Words, none of which begins a formula, or one formula of ours that finds a column. */
const LIST = whole(`(?:[^=＝].*|=INDIRECT\\(${QUOTED}\\)|=${PLACE})`);

/** A foot in which every code is one of ours: the text in the middle has its own signs twice. */
function expectNoCode(foot: string): void {
  expect(foot.replaceAll('&&', ''), foot).not.toContain('&');
}

function expectSafeInExcel({ simulated: { book } }: SimulatedBench, each: string): void {
  const formulas = book.sheets.flatMap(({ cells }) => [...cells].flatMap(({ state }) => state.formula ?? []));
  expect(formulas).toEqual([expect.stringMatching(CALL)]);
  const texts = book.sheets.flatMap(({ cells }) => [...cells].map(({ state }) => state.value));
  expect(texts.filter((value) => value === each).length).toBe(8);
  for (const formula of book.names.values()) expect(formula).toMatch(NAME);
  const [sheet] = book.sheets.filter(({ name }) => name !== 'Sheet1');
  const rules = (sheet?.dressings ?? []).filter(({ name, value }) => name === 'validation.rule' && value !== null);
  expect(rules.length).toBe(2);
  for (const { value } of rules) expect((value as { list: { source: string } }).list.source).toMatch(LIST);
  const highlights = (sheet?.highlights ?? []).map(({ parts }) => parts);
  expect(highlights).toHaveLength(1);
  for (const parts of highlights)
    expect(Object.values(parts).filter((part) => String(part).startsWith('='))).toEqual([
      expect.stringMatching(HIGHLIGHT),
    ]);
  const feet = Object.entries(sheet?.page ?? {}).filter(
    ([name]) => /Footer|Header/.test(name) && !/^Page|rightFooter/.test(name),
  );
  expect(feet.length).toBeGreaterThan(0);
  for (const [, foot] of feet) expectNoCode(String(foot));
}

function expectSafeInEmbedded({ spreadsheet: { id, workbook, injector } }: EmbeddedBench): void {
  const formulas: string[] = [];
  for (const sheet of workbook.getWorkbook().getSheets()) {
    sheet.getCellMatrix().forValue((_row, _column, cell) => {
      if (cell?.f) formulas.push(cell.f);
      expect(cell?.si ?? null).toBeNull();
    });
    const checks = injector.get(SheetDataValidationModel).getRules(id, sheet.getSheetId());
    for (const { formula1 } of checks) expect(formula1).toMatch(LIST);
    const rules = injector.get(ConditionalFormattingRuleModel).getSubunitRules(id, sheet.getSheetId()) ?? [];
    for (const { rule } of rules) expect((rule as { value: string }).value).toMatch(HIGHLIGHT);
  }
  expect(formulas).toEqual([expect.stringMatching(CALL)]);
  const names = Object.values(injector.get(IDefinedNamesService).getDefinedNameMap(id) ?? {});
  expect(names.map(({ name }) => name)).toContain('Nasty_Place');
  for (const { formulaOrRefString } of names) expect(formulaOrRefString).toMatch(NAME);
}

const unescaped = (xml: string): string =>
  xml
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&apos;', "'")
    .replaceAll('&amp;', '&');

/** What stands in elements of that name, wherever. */
function inside(xml: string, element: string): string[] {
  return [...xml.matchAll(new RegExp(`<${element}(?: [^>]*)?>([^<]*)</${element}>`, 'g'))].map(([, held = '']) =>
    unescaped(held),
  );
}

async function expectSafeInFile({ spreadsheet }: EmbeddedBench): Promise<void> {
  const files = [...unzip(await bytesOf((await describeCopy(spreadsheet)).workbook))];
  const sheets = files
    .filter(([name]) => name.startsWith('xl/worksheets/sheet'))
    .map(([, xml]) => String(xml))
    .join('');
  const book = files
    .filter(([name]) => name === 'xl/workbook.xml')
    .map(([, xml]) => String(xml))
    .join('');
  // A live call of ours is kept as its value.
  expect(sheets).not.toMatch(/<f[ >/]/);
  const lists = inside(sheets, 'formula1');
  // One that finds its words on a sheet with a name like this may be left out, which is told before saving.
  expect(lists.length).toBeGreaterThan(0);
  for (const list of lists) expect(list).toMatch(whole(`(?:${QUOTED}|${PLACE})`));
  const highlights = inside(sheets, 'formula');
  expect(highlights).toHaveLength(1);
  for (const formula of highlights) expect(formula).toMatch(HIGHLIGHT);
  const names = inside(book, 'definedName');
  expect(names.length).toBeGreaterThan(1);
  for (const place of names)
    expect(place).toMatch(whole(`(?:${PLACE}|(?:'(?:[^']|'')+'|[\\p{L}_][\\p{L}\\p{N}_.]*)!\\$\\d+:\\$\\d+)`));
  const feet = inside(sheets, 'oddFooter');
  expect(feet.length).toBeGreaterThan(0);
  for (const foot of feet) {
    const [, middle = ''] = /^(?:&C(.*))?&R&P \/ &N$/s.exec(foot) ?? [undefined, '&'];
    expectNoCode(middle);
  }
}

describe('text in every change', () => {
  test('every kind of change has its trial', () => {
    const port = readFileSync(resolve(import.meta.dirname, '../../src/workbook/port.ts'), 'utf8');
    const kinds = new Set([...port.matchAll(/readonly do: '(\w+)'/g)].map(([, kind]) => kind));
    expect([...kinds].sort()).toEqual([...KINDS].sort());
  });

  test('stays text in Excel’s client', async () => {
    await fc.assert(
      fc.asyncProperty(text, async (each) => {
        const bench = simulatedBench();
        await makeAll(bench.port(), each);
        expectSafeInExcel(bench, each);
      }),
      drawn(60),
    );
  }, 120_000);

  test('stays text in the embedded spreadsheet and in the file that is saved of it', async () => {
    await fc.assert(
      fc.asyncProperty(text, async (each) => {
        const bench = await embeddedBench();
        try {
          await makeAll(bench.port(), each);
          expectSafeInEmbedded(bench);
          await expectSafeInFile(bench);
        } finally {
          bench.dispose();
        }
      }),
      drawn(12),
    );
  }, 240_000);

  test.each([
    ['in Excel’s client', () => simulatedBench()],
    ['in the embedded spreadsheet', () => embeddedBench()],
  ] as const)('words of a drop-down that begin a formula are refused, %s', async (_, make) => {
    const bench = await make();
    const at = { sheet: 'Sheet1', ...LOOKED };
    const looked = await bench.port().read([{ read: 'block', at }]);
    const change: Change = { do: 'choices', at: { ...at, rows: 1, columns: 1 }, from: ['=A1:A9', 'b'], hint: '' };
    const end = await bench
      .port()
      .apply([change], looked, { label: 'x' })
      .catch((error: unknown) => error);
    expect(end).toBeInstanceOf(PortError);
    expect(end).toMatchObject({ code: 'unsupported', cells: ["'Sheet1'!A1"] });
    bench.dispose();
  });
});
