import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { FUNCTIONS } from '../../src/functions/implementations';
import { demoTables } from '../../src/tryout/demo/demoTables';

const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const read = (path: string): string => readFileSync(join(root, path), 'utf8');
const readme = read('README.md');

type Args = readonly unknown[];
const call = (name: string, args: Args): unknown => (FUNCTIONS[name] as (...given: Args) => unknown)(...args);

/** What a reference into the demo's tables holds, as Excel hands it over: blanks as null. */
function rangeOf(table: string, part: string): unknown[][] {
  const rows = (demoTables[table] ?? []).map((row) => row.map((cell) => (cell === '' ? null : cell)));
  if (part === '#Headers') return rows.slice(0, 1);
  return part === '@' ? rows.slice(1, 2) : rows;
}

function argument(text: string): unknown {
  const reference = /^(\w+)\[(#All|#Headers|@)\]$/.exec(text);
  if (reference) return rangeOf(reference[1] ?? '', reference[2] ?? '');
  const column = /^\{(.*)\}$/.exec(text);
  if (column) return column[1]?.split(';').map((cell) => [JSON.parse(cell)]);
  return JSON.parse(text);
}

interface Example {
  name: string;
  formula: string;
  args: Args;
  gives: string;
}

/** A row of the table of functions: name, formula, what it gives. */
const exampleRow = /^\| ([A-Z]+) +\| `(=REGRIP\.\1\((.*)\))` +\| (.+?) +\| .+ \|$/gm;

const examples: Example[] = [...readme.matchAll(exampleRow)].map(
  ([, name = '', formula = '', args = '', gives = '']) => {
    return { name, formula, args: args ? args.split(', ').map(argument) : [], gives };
  },
);

/** A value as the table writes it: a number with as many decimals as stand there, a spilled range by its rows. */
function shown(value: unknown, gives: string): string {
  if (Array.isArray(value)) return `${value.length} row${value.length === 1 ? '' : 's'}`;
  if (typeof value === 'number') return value.toFixed(/\.(\d+)$/.exec(gives)?.[1]?.length ?? 0);
  return String(value);
}

describe('the README', () => {
  it('gives one example of every function', () => {
    expect(examples.map(({ name }) => name).sort()).toEqual(Object.keys(FUNCTIONS).sort());
  });

  it.each(examples)('$formula gives $gives', ({ name, args, gives }) => {
    expect(shown(call(name, args), gives)).toBe(gives);
  });

  it('names no function that does not exist', () => {
    const named = [...readme.matchAll(/REGRIP\.([A-Z]+)/g)].map(([, name]) => name);
    expect(named.filter((name) => !(String(name) in FUNCTIONS))).toEqual([]);
  });

  it('says what a catalogue mass four grams off means', () => {
    expect(readme).toContain('Four grams either way are 0.8 point either way');
    expect(shown(call('MASSPOINTS', [-4, 4.2]), '0.0')).toBe('0.8');
  });
});

/** What a reader is told to look at or to type. */
describe.each(['README.md', 'DEVELOPERS.md', 'tests/by-hand.md'])('%s', (path) => {
  const text = read(path);

  it('links to what is there', () => {
    const links = [...text.matchAll(/\]\(([^)#\s]+)[^)]*\)|src="([^"]+)"/g)].map(
      ([, link, source]) => link ?? source ?? '',
    );
    const missing = links
      .filter((link) => !/^[a-z]+:/.test(link))
      .filter((link) => !existsSync(resolve(root, dirname(path), link)));
    expect(missing).toEqual([]);
  });

  it('names npm scripts that exist', () => {
    const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };
    const named = [...text.matchAll(/npm run (?:--silent )?([a-z][a-z:]*)/g)].map(([, name]) => String(name));
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });

  it('names files and folders that exist', () => {
    const named = [...text.matchAll(/`((?:src|tests|manifest|\.config|\.ci)\/[\w./-]*)`/g)].map(([, name]) =>
      String(name),
    );
    expect(named.filter((name) => !existsSync(join(root, name)))).toEqual([]);
  });
});
