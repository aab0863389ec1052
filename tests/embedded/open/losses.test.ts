/** What a file says in places that few think of: told before anything is saved, or in the copy again. */
import { afterEach, expect, test } from 'vitest';
import { sayUnkept } from '../../../src/tryout/open/words';
import type { Spreadsheet } from '../../../src/workbook/embedded/spreadsheet';
import { unzip } from '../save/unzip';
import { copyOf, openFile } from './openFile';
import { zipOf } from './zipOf';

const open: Spreadsheet[] = [];
afterEach(() => {
  for (const spreadsheet of open.splice(0)) spreadsheet.dispose();
});

const MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const RELATED = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const related = (...all: readonly (readonly [id: string, kind: string, target: string])[]): string =>
  `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${all
    .map(([id, kind, target]) => `<Relationship Id="${id}" Type="${RELATED}/${kind}" Target="${target}"/>`)
    .join('')}</Relationships>`;
const KINDS = [
  ['workbook', 'sheet.main'],
  ['worksheets/sheet1', 'worksheet'],
  ['styles', 'styles'],
  ['tables/table1', 'table'],
  ['comments1', 'comments'],
] as const;

/** A workbook of one sheet, part by part as ECMA-376 Part 1 has them (18.2, 18.3, 18.5 and 18.8). */
interface Said {
  readonly workbook?: string;
  readonly calculates?: string;
  /** What stands before the cells. */
  readonly head?: string;
  readonly row?: string;
  /** Rows below the cells. */
  readonly below?: string;
  /** What stands after them. */
  readonly tail?: string;
  readonly table?: string;
  readonly names?: string;
  /** What stands in cells' notes. */
  readonly notes?: string;
  /** What stands at the table itself. */
  readonly tableSays?: string;
}

const LOOKS = [
  '<xf/>',
  '<xf fillId="2"/>',
  '<xf fillId="3"/>',
  '<xf borderId="1"/>',
  '<xf><alignment horizontal="fill" shrinkToFit="1" readingOrder="2"/></xf>',
  '<xf fontId="1"/>',
];

function fileOf(said: Said) {
  const { workbook = '', calculates = '', head = '', row = '', tail = '', table = '', names = '' } = said;
  const { notes = '', tableSays = '', below = '' } = said;
  const looks = LOOKS.map((_, look) => `<c r="${'ABCDEF'[look]}1" s="${look}"><v>${look}</v></c>`).join('');
  const parts: readonly (readonly [name: string, xml: string])[] = [
    [
      '[Content_Types].xml',
      `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>${KINDS.map(
        ([name, kind]) =>
          `<Override PartName="/xl/${name}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.${kind}+xml"/>`,
      ).join('')}</Types>`,
    ],
    ['_rels/.rels', related(['rId1', 'officeDocument', 'xl/workbook.xml'])],
    [
      'xl/workbook.xml',
      `<workbook ${MAIN} xmlns:r="${RELATED}">${workbook}<sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets>${names}${calculates}</workbook>`,
    ],
    [
      'xl/_rels/workbook.xml.rels',
      related(['rId1', 'worksheet', 'worksheets/sheet1.xml'], ['rId2', 'styles', 'styles.xml']),
    ],
    [
      'xl/worksheets/sheet1.xml',
      `<worksheet ${MAIN} xmlns:r="${RELATED}">${head}<sheetData><row r="1" ${row}>${looks}</row><row r="3"><c r="A3" t="inlineStr"><is><t>One</t></is></c></row><row r="4"><c r="A4"><v>1</v></c></row>${below}</sheetData>${tail}<tableParts count="1"><tablePart r:id="rId1"/></tableParts></worksheet>`,
    ],
    [
      'xl/worksheets/_rels/sheet1.xml.rels',
      related(['rId1', 'table', '../tables/table1.xml'], ['rId2', 'comments', '../comments1.xml']),
    ],
    [
      'xl/comments1.xml',
      `<comments ${MAIN}><authors><author>A</author></authors><commentList>${notes}</commentList></comments>`,
    ],
    [
      'xl/tables/table1.xml',
      `<table ${MAIN} id="1" name="Things" displayName="Things" ref="A3:A4"${tableSays}><autoFilter ref="A3:A4"/><tableColumns count="1"><tableColumn id="1" name="One"/></tableColumns>${table}</table>`,
    ],
    [
      'xl/styles.xml',
      `<styleSheet ${MAIN}><fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><u val="doubleAccounting"/><sz val="11"/><name val="Calibri"/></font></fonts><fills count="4"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill><fill><gradientFill degree="45"><stop position="0"><color rgb="FFFF0000"/></stop><stop position="1"><color rgb="FF0000FF"/></stop></gradientFill></fill><fill><patternFill patternType="lightGrid"><fgColor rgb="FF00FF00"/><bgColor rgb="FFFFFF00"/></patternFill></fill></fills><borders count="2"><border/><border diagonalUp="1"><diagonal style="dashed"><color rgb="FFFF0000"/></diagonal></border></borders><cellXfs>${LOOKS.join('')}</cellXfs><cellStyles><cellStyle name="Normal" xfId="0" builtinId="0"/><cellStyle name="Percent" xfId="0" builtinId="5"/>${workbook && '<cellStyle name="Ours" xfId="0"/>'}</cellStyles></styleSheet>`,
    ],
  ];
  return zipOf(parts.map(([name, xml]) => ({ name, content: new TextEncoder().encode(xml) })));
}

test.each<[string, Said, string[]]>([
  ['nothing out of the way', {}, []],
  [
    'the workbook as a whole',
    {
      workbook: '<fileSharing readOnlyRecommended="1"/>',
      names:
        '<definedNames><definedName name="_xlnm._FilterDatabase" localSheetId="0" hidden="1">S!$A$3:$A$4</definedName><definedName name="Rate" hidden="1">S!$A$4</definedName></definedNames>',
      calculates: '<calcPr calcMode="manual"/>',
    },
    [
      'how it calculates: by hand, in circles, or with numbers as they are shown',
      'the hiding of 1 name; the names stay',
      'the advice to open it for reading only',
      'the names of 1 cell style; the cells look the same',
    ],
  ],
  [
    'numbers as they are shown',
    { calculates: '<calcPr fullPrecision="0"/>' },
    ['how it calculates: by hand, in circles, or with numbers as they are shown'],
  ],
  ['calculating as usual', { calculates: '<calcPr calcId="191029" calcMode="auto" fullPrecision="1"/>' }, []],
  [
    'how a sheet is shown',
    {
      head: '<sheetViews><sheetView showZeros="0" workbookViewId="0"/></sheetViews><sheetFormatPr defaultRowHeight="20" customHeight="1"/><cols><col min="3" max="3" width="9" style="2"/></cols>',
    },
    [
      'how 1 sheet shows formulas, zeros, row and column headings or pages',
      'formats of whole rows or columns on 1 sheet, where their cells are empty',
      'the usual height of rows on 1 sheet',
    ],
  ],
  [
    'a row with a look',
    { row: 's="2" customFormat="1"' },
    ['formats of whole rows or columns on 1 sheet, where their cells are empty'],
  ],
  [
    'protection, trials and signs',
    {
      tail: '<sheetProtection sheet="1"/><protectedRanges><protectedRange name="P" sqref="A1"/></protectedRanges><scenarios><scenario name="Low" count="1"><inputCells r="A1" val="2"/></scenario></scenarios><dataValidations count="1"><dataValidation type="list" showDropDown="1" sqref="B4"><formula1>"a,b"</formula1></dataValidation></dataValidations><pageSetup pageOrder="overThenDown"/><ignoredErrors><ignoredError sqref="A1" numberStoredAsText="1"/></ignoredErrors>',
    },
    [
      '1 range that may be changed though the sheet is protected; it is protected in a copy',
      '1 scenario',
      'for 1 sheet, how notes and errors are printed, the order and first number of pages, or black and white',
      'the wish that 1 drop-down shows no arrow',
      'on 1 sheet, which signs of possible errors were put aside; they show again',
    ],
  ],
  [
    'a page printed as usual',
    { tail: '<pageSetup useFirstPageNumber="true" firstPageNumber="1" pageOrder="downThenOver" errors="displayed"/>' },
    [],
  ],
  [
    'a table with a style of its own',
    { table: '<tableStyleInfo name="House" showRowStripes="1"/>' },
    ['how 1 table sets off columns, or a style of the workbook’s own'],
  ],
  [
    'a table whose first column stands out',
    { table: '<tableStyleInfo name="TableStyleMedium2" showFirstColumn="1"/>' },
    ['how 1 table sets off columns, or a style of the workbook’s own'],
  ],
  [
    'what stands far from the cells',
    {
      head: '<cols><col min="200" max="200" width="20" customWidth="1"/></cols>',
      tail: '',
      row: 'ht="30" customHeight="1"',
    },
    ['widths and groups of columns far to the right of the cells in use, on 1 sheet'],
  ],
  [
    'one width for all columns to the end',
    { head: '<cols><col min="3" max="16384" width="9" customWidth="1"/></cols>' },
    [],
  ],
  [
    'rows below the cells',
    { below: '<row r="9" ht="40" customHeight="1"/>' },
    ['heights and groups of rows below the last cell in use, on 1 sheet'],
  ],
  ['rows below the cells as they are by themselves', { below: '<row r="9" ht="40"/>' }, []],
  [
    'notes in bold',
    {
      notes:
        '<comment ref="A4" authorId="0"><text><r><rPr><b/><sz val="9"/></rPr><t>A:</t></r><r><t> as said</t></r></text></comment><comment ref="B1" authorId="0"><text><t>Plain</t></text></comment>',
    },
    ['bold and other looks of letters in 1 note; the text stays'],
  ],
  [
    'sorts and comments',
    {
      names: '<definedNames><definedName name="Rate" comment="per club">S!$A$4</definedName></definedNames>',
      tail: '<autoFilter ref="A1:B1"><sortState ref="A1:B1"><sortCondition ref="A1"/></sortState></autoFilter>',
      table: '<tableStyleInfo name="TableStyleMedium2"/>',
      tableSays: ' comment="The first"',
    },
    ['by what 1 list was sorted; the rows stay as they are', 'what 2 names or tables have for a comment'],
  ],
  ['a table as usual', { table: '<tableStyleInfo name="TableStyleMedium2" showFirstColumn="0"/>' }, []],
])('what goes missing is told: %s', async (_, said, told) => {
  const { spreadsheet, book } = await openFile(fileOf(said));
  open.push(spreadsheet);
  expect(sayUnkept(book.unkept)).toEqual(told);
  expect((await copyOf(spreadsheet)).losses.unkept).toEqual(book.unkept);
});

test('columns right of the cells keep width, hiding and group', async () => {
  const cols =
    '<col min="2" max="2" width="20" customWidth="1" outlineLevel="1"/><col min="9" max="9" width="30" customWidth="1"/><col min="11" max="11" width="9" hidden="1"/>';
  const { spreadsheet } = await openFile(fileOf({ head: `<cols>${cols}</cols>` }));
  open.push(spreadsheet);
  const xml = unzip((await copyOf(spreadsheet)).bytes).get('xl/worksheets/sheet1.xml') ?? '';
  const said = (column: number): string => new RegExp(`<col\\b[^>]*min="${column}"[^>]*>`).exec(xml)?.[0] ?? '';
  expect(said(2)).toContain('outlineLevel="1"');
  // A width is kept in whole pixels, of which eight are a digit here.
  expect(Math.abs(Number(/\bwidth="([\d.]+)"/.exec(said(9))?.[1]) - 30)).toBeLessThan(1 / 8);
  expect(said(11)).toMatch(/hidden="(1|true)"/);
});

test('looks that nothing here shows are in a copy again, as long as the cell’s look is not changed', async () => {
  const { spreadsheet } = await openFile(fileOf({}));
  open.push(spreadsheet);
  const styles = async (): Promise<string> => unzip((await copyOf(spreadsheet)).bytes).get('xl/styles.xml') ?? '';
  const before = await styles();
  const LOST = [
    /<gradientFill degree="45"><stop position="0"><color rgb="FFFF0000"\/><\/stop><stop position="1"><color rgb="FF0000FF"\/>/,
    /<patternFill patternType="lightGrid"><fgColor rgb="FF00FF00"\/><bgColor rgb="FFFFFF00"\/>/,
    /<border diagonalUp="(1|true)">.*?<diagonal style="dashed"><color rgb="FFFF0000"\/>/,
    /<alignment\b[^>]*horizontal="fill"/,
    /<alignment\b[^>]*shrinkToFit="(1|true)"/,
    /<alignment\b[^>]*readingOrder="2"/,
    /<u val="doubleAccounting"\/>/,
  ];
  for (const look of LOST) expect(before).toMatch(look);
  spreadsheet.workbook.getSheetByName('S')?.getRange('A1:F1').setBackground('#123456');
  const after = await styles();
  expect(after).not.toContain('gradientFill');
  expect(after).not.toContain('lightGrid');
  expect(after).toContain('123456');
});
