import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const sandbox = mkdtempSync(join(tmpdir(), 'setwright-walls-'));
afterAll(() => rmSync(sandbox, { recursive: true, force: true }));

/** The rules that a small project breaks, each with the file that breaks it. One run for many, since starting takes seconds. */
function broken(files: Record<string, string>): string[] {
  const folder = mkdtempSync(join(sandbox, 'project-'));
  for (const [path, text] of Object.entries({ 'tsconfig.json': '{}', 'package.json': '{}', ...files })) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  const script = join(root, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
  const words = [script, '--config', join(root, '.config/walls.cjs'), '--output-type', 'json', 'src'];
  const output = execFileSync(process.execPath, words, { cwd: folder, encoding: 'utf8', maxBuffer: 1e8 });
  const { summary }: { summary: { violations: { from: string; rule: { name: string } }[] } } = JSON.parse(output);
  return summary.violations.map(({ from, rule }) => `${rule.name}: ${from}`);
}

const take = (...paths: string[]) =>
  `${paths.map((path, index) => `import { x as x${index} } from '${path}';`).join('\n')}\nexport const x = 1;\n`;

describe('the walls between the parts', () => {
  test('let the arrows through that the design draws', () => {
    const files = {
      'src/core/index.ts': take('./mass'),
      'src/core/mass.ts': take(),
      'src/words/notes.ts': take('../core/index'),
      'src/workbook/schema.ts': take(),
      'src/workbook/port.ts': take('./schema', '../core/index'),
      'src/workbook/excel/port.ts': take('../port'),
      'src/functions/functions.ts': take('../workbook/schema', '../words/notes', '../core/index'),
      'src/pane/view.ts': take('../workbook/port'),
      'src/pane/main.tsx': take('../workbook/excel/port', './view', '../functions/functions'),
    };
    expect(broken(files)).toEqual([]);
  });

  test('stop every other', () => {
    const found = broken({
      'src/core/index.ts': take('./mass', '../words/a'),
      'src/core/mass.ts': take('node:fs', 'dinero.js/bigint'),
      'src/core/money.ts': take('node:fs', 'dinero.js/bigint'),
      'src/words/a.ts': take('../core/mass', '../workbook/port'),
      'src/words/b.ts': take('./c', './nowhere'),
      'src/words/c.ts': take('./b'),
      'src/functions/functions.ts': take('../workbook/port'),
      'src/workbook/port.ts': take(),
      'src/workbook/undo.ts': take('../pane/view', './excel/port'),
      'src/workbook/excel/port.ts': take('../embedded/port'),
      'src/workbook/embedded/port.ts': take(),
      'src/workbook/embedded/cells.ts': take('../excel/cells'),
      'src/workbook/excel/cells.ts': take(),
      'src/pane/view.ts': take('../workbook/excel/cells', '@univerjs/core'),
      'src/pane/main.tsx': take('../workbook/embedded/port'),
      'src/tryout/main.tsx': take('../workbook/excel/cells'),
      'src/tryout/demo.ts': take('../workbook/embedded/port'),
    });
    expect(found).toEqual(
      expect.arrayContaining([
        'core-is-pure: src/core/index.ts',
        'core-is-pure: src/core/mass.ts',
        'money-in-its-place: src/core/mass.ts',
        'money-library-only: src/core/money.ts',
        'core-one-door: src/words/a.ts',
        'words-need-core: src/words/a.ts',
        'no-circles: src/words/b.ts',
        'nothing-unresolved: src/words/b.ts',
        'functions-are-pure: src/functions/functions.ts',
        'workbook-below-pane: src/workbook/undo.ts',
        'hosts-only-composed: src/workbook/undo.ts',
        'excel-apart: src/workbook/excel/port.ts',
        'embedded-apart: src/workbook/embedded/cells.ts',
        'pane-knows-no-host: src/pane/view.ts',
        'hosts-only-composed: src/pane/view.ts',
        'spreadsheet-in-its-place: src/pane/view.ts',
        'excel-page-apart: src/pane/main.tsx',
        'tryout-page-apart: src/tryout/main.tsx',
        'hosts-only-composed: src/tryout/demo.ts',
      ]),
    );
  });

  test('only src/workbook/excel names Excel’s objects', () => {
    const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' })
      .map((path) => path.replaceAll('\\', '/'))
      .filter((path) => /\.tsx?$/.test(path));
    const outside = sources.filter((path) => !path.startsWith('workbook/excel/'));
    expect(outside.length).toBeGreaterThan(10);
    // In code, not in comments or sentences: a member of the namespace starts with a letter right after the dot.
    const naming = outside.filter((path) =>
      /\bExcel\.[A-Za-z]/.test(withoutComments(readFileSync(join(root, 'src', path), 'utf8'))),
    );
    expect(naming).toEqual([]);
  });
});

function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '$1');
}
