import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { ESLint } from 'eslint';
import tseslint from 'typescript-eslint';
import { describe, expect, test } from 'vitest';
import { banned, ways } from '../../.config/ways.mjs';

const root = resolve(import.meta.dirname, '../..');
const eslint = new ESLint({ cwd: root, overrideConfigFile: join(root, '.config/eslint.config.js') });

/** What is said of a line in a file of that name in `src`, which need not be there. */
async function found(file: string, line: string): Promise<string[]> {
  const code = `declare const range: any, names: any, sheet: any;\nexport function put(text: string): unknown {\n  ${line}\n  return text;\n}\n`;
  const [result] = await eslint.lintText(code, { filePath: join(root, 'src', file) });
  return (result?.messages ?? [])
    .filter(({ ruleId }) => ruleId === 'no-restricted-syntax')
    .map(({ message }) => message);
}

/** Lines that would let text of a person's become a formula, or a code of a page's foot. */
const EXCEL = [
  'range.values = [[text]];',
  "range['values'] = [[text]];",
  'range.set({ values: [[text]] });',
  'Object.assign(range, { formulas: [[text]] });',
  'range.formulas = [[text]];',
  'range.formulasLocal = [[text]];',
  'range.formulasR1C1 = [[text]];',
  'range.valuesAsJson = [[text]];',
  'range.numberFormat = text;',
  'range.numberFormatLocal = text;',
  'range.hyperlink = { address: text };',
  'range.dataValidation.rule = { list: { source: text } };',
  'range.dataValidation.prompt = { message: text };',
  'range.dataValidation.errorAlert = { message: text };',
  'sheet.custom.rule.formula = text;',
  'names.getItem(text).formula = text;',
  'sheet.pages.centerFooter = text;',
  'sheet.pages.leftHeader = text;',
  'sheet.workbook.names.add(text, text);',
  'names.add(text, text);',
  'names.addFormulaLocal(text, text);',
  'sheet.tables.add(text, true);',
  'sheet.worksheets.add(text);',
  'range.conditionalFormats.add(text);',
  'sheet.comments.add(text, text);',
  'sheet.notes.add(text, text);',
  'sheet.layout.setPrintTitleRows(text);',
  'range.setCellProperties([[{ note: text }]]);',
  'sheet.tables.getItem(text).rows.add(undefined, [[text]]);',
  'sheet.columns.add(undefined, [[text]]);',
  'range.copyFrom(text);',
  "range['copyFrom'](text);",
  'range.autoFill(text);',
  'range.replaceAll(text, text, {});',
];

const EMBEDDED = [
  'range.send({ f: text });',
  'range.f = text;',
  "range.send({ 'f': text });",
  'range.send({ formulaOrRefString: text });',
  'range.send({ formula1: text });',
  'range.send({ oddFooter: text });',
  'range.formulasLocal = [[text]];',
  'range.setValue(text);',
  'range.setValues([[text]]);',
  'range.setFormula(text);',
  'range.setFormulas([[text]]);',
  'range.setRichTextValueForCell(text);',
  'sheet.insertDefinedName(text, text);',
];

/** Where nobody speaks to a host, and where one does of either. */
const PLACES = [
  ...['pane/other.ts', 'pane/view/Other.tsx', 'tryout/other.ts', 'functions/other.ts', 'core/other.ts'],
  ...['workbook/other.ts', 'workbook/connect/other.ts', 'workbook/excel/other.ts', 'workbook/embedded/open/other.ts'],
];

describe('text and formulas are handed to a host', () => {
  test.each(EXCEL)('in Excel in one file alone: %s', async (line) => {
    expect(await found('workbook/excel/other.ts', line)).toHaveLength(1);
  });

  test.each(EMBEDDED)('in the embedded spreadsheet in few files alone: %s', async (line) => {
    expect(await found('workbook/embedded/save/other.ts', line)).toHaveLength(1);
  });

  test.each(PLACES)('and nowhere else, as in %s', async (file) => {
    for (const line of [...EXCEL, ...EMBEDDED]) expect(await found(file, line), line).toHaveLength(1);
  });

  test('where they may be, and what is no such thing passes', async () => {
    expect(await found('workbook/excel/writeCells.ts', 'range.values = [[text]];')).toEqual([]);
    expect(await found('workbook/excel/writeCells.ts', 'range.numberFormat = text;')).toHaveLength(1);
    expect(await found('workbook/excel/dress.ts', 'range.formulas = [[text]];')).toHaveLength(1);
    expect(await found('workbook/excel/other.ts', 'range.format.fill.color = text;')).toEqual([]);
    expect(await found('workbook/embedded/other.ts', 'range.send({ f: null });')).toEqual([]);
    expect(await found('workbook/excel/other.ts', 'range.address = text;')).toEqual([]);
    expect(await found('workbook/other.ts', "return text.replaceAll('a', 'b');")).toEqual([]);
    expect(await found('workbook/other.ts', 'names.add(text);')).toEqual([]);
    expect(await found('workbook/other.ts', 'names.set(text, { values: [] });')).toEqual([]);
  });

  const exemptions = ways.flatMap((way) => way.may.map((file) => ({ file, way, what: named(way) })));

  test.each(exemptions)('$file does what it may: $what', async ({ file, way }) => {
    const strict = new ESLint({
      cwd: root,
      overrideConfigFile: true,
      overrideConfig: {
        files: ['**/*.ts'],
        languageOptions: { parser: tseslint.parser },
        rules: { 'no-restricted-syntax': ['error', ...banned(way)] },
      },
    });
    const path = join(root, 'src/workbook', `${file}.ts`);
    const [result] = await strict.lintText(readFileSync(path, 'utf8'), { filePath: path });
    const said = (result?.messages ?? []).map(({ ruleId }) => ruleId);
    expect(said).toContain('no-restricted-syntax');
  });
});

function named({ assigned = [], called = [], key = [] }: (typeof ways)[number]): string {
  return [...assigned, ...called, ...key].join(', ');
}
