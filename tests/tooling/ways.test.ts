import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { ESLint } from 'eslint';
import { describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const eslint = new ESLint({ cwd: root, overrideConfigFile: join(root, '.config/eslint.config.js') });

/** What is said of a line in a file of that name, which need not be there. */
async function found(file: string, line: string): Promise<string[]> {
  const code = `declare const range: any, names: any, sheet: any;\nexport function put(text: string): unknown {\n  ${line}\n  return text;\n}\n`;
  const [result] = await eslint.lintText(code, { filePath: join(root, 'src/workbook', file) });
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
];

const EMBEDDED = [
  'range.send({ f: text });',
  'range.f = text;',
  "range.send({ 'f': text });",
  'range.send({ formulaOrRefString: text });',
  'range.send({ formula1: text });',
  'range.send({ oddFooter: text });',
  'range.formulasLocal = [[text]];',
];

describe('text and formulas are handed to a host', () => {
  test.each(EXCEL)('in Excel in one file alone: %s', async (line) => {
    expect(await found('excel/other.ts', line)).toHaveLength(1);
  });

  test.each(EMBEDDED)('in the embedded spreadsheet in few files alone: %s', async (line) => {
    expect(await found('embedded/save/other.ts', line)).toHaveLength(1);
  });

  test('where they may be, and what is no such thing passes', async () => {
    expect(await found('excel/writeCells.ts', 'range.values = [[text]];')).toEqual([]);
    expect(await found('excel/writeCells.ts', 'range.numberFormat = text;')).toHaveLength(1);
    expect(await found('excel/dress.ts', 'range.formulas = [[text]];')).toHaveLength(1);
    expect(await found('excel/other.ts', 'range.format.fill.color = text;')).toEqual([]);
    expect(await found('embedded/other.ts', 'range.send({ f: null });')).toEqual([]);
    expect(await found('excel/other.ts', 'range.address = text;')).toEqual([]);
  });

  test('and every file that may is there, and does', () => {
    const config = readFileSync(join(root, '.config/eslint.config.js'), 'utf8');
    const named = [...config.matchAll(/'((?:excel|embedded)\/[\w/]+)'/g)].map(([, name]) => name ?? '');
    const there = readdirSync(join(root, 'src/workbook'), { recursive: true, encoding: 'utf8' });
    expect(named.length).toBeGreaterThan(8);
    for (const name of named) expect(there).toContain(`${name}.ts`);
  });
});
