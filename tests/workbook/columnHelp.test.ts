import { describe, expect, test } from 'vitest';
import { COLUMN_HELP } from '../../src/workbook/columnHelp';
import { TABLES } from '../../src/workbook/schema';

describe('what is said of columns', () => {
  test('is said of every column of every table, and of nothing else', () => {
    expect(Object.keys(COLUMN_HELP).sort()).toEqual(TABLES.map(({ name }) => name).sort());
    for (const { name, columns } of TABLES) {
      expect(Object.keys(COLUMN_HELP[name] ?? {})).toEqual(columns.map(({ key }) => key));
    }
  });

  test('is a sentence', () => {
    for (const texts of Object.values(COLUMN_HELP)) {
      for (const text of Object.values(texts)) expect(text).toMatch(/^[A-Z0-9].*\.$/);
    }
  });
});
