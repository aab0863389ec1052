import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { metadataText, readMetadata, readSource } from '../../.config/metadata.mjs';
import * as exported from '../../src/functions/functions';

const root = resolve(import.meta.dirname, '../..');
const { metadata, associations } = readSource();
const { functions } = metadata;

/** Anything that could be read as a cell address, `A1` to `XFD1048576`, is refused by a spreadsheet as a name. */
const looksLikeCell = /^[A-Z]{1,3}\d+$/;

describe('what Excel is told about the functions', () => {
  test('src/functions/functions.json is what the doc comments say (npm run metadata writes it)', () => {
    expect(readFileSync(join(root, 'src/functions/functions.json'), 'utf8')).toBe(metadataText(metadata));
  });

  test('every ID answers to an exported function, and none twice', () => {
    expect(functions.length).toBeGreaterThan(0);
    expect(associations.map(({ id }) => id)).toEqual(functions.map(({ id }) => id));
    expect(new Set(functions.map(({ id }) => id)).size).toBe(functions.length);
    const missing = associations.filter(
      ({ functionName }) => typeof (exported as Record<string, unknown>)[functionName] !== 'function',
    );
    expect(missing).toEqual([]);
  });

  test.each(functions.map((each) => [each.id, each] as const))(
    '%s has a fit name and says what it needs',
    (_id, each) => {
      expect(each.name).toMatch(/^[A-Z]{3,}$/);
      expect(each.name).not.toMatch(looksLikeCell);
      expect(each.description.length).toBeGreaterThan(10);
      expect(each.parameters.filter(({ description }) => !description)).toEqual([]);
      // A required argument after an optional one could never be left out.
      const optional = each.parameters.map((parameter) => Boolean(parameter.optional));
      expect(optional).toEqual([...optional].sort());
    },
  );

  test('a value reaches our own checks: no parameter is declared to be a number or a text', () => {
    const declared = functions.flatMap(({ id, parameters }) =>
      parameters.map(({ name, type }) => `${id} ${name} ${type}`),
    );
    expect(declared.filter((text) => !text.endsWith(' any'))).toEqual([]);
  });

  test('an ID that Excel would not take is refused', () => {
    const source = '/** X.\n * @customfunction BAD-ID\n */\nexport function bad(): number { return 1; }';
    expect(() => readMetadata(source)).toThrow(/invalid characters/);
  });
});
