import { describe, expect, test } from 'vitest';
import { numfmt } from '@univerjs/core';
import { columnLook } from '../../src/workbook/columnLook';
import { columnWidth } from '../../src/workbook/columnWidth';
import { TABLES } from '../../src/workbook/schema';
import { wrappedLines } from '../../src/workbook/shared/wrappedLines';

const columns = TABLES.flatMap(({ name, columns: all }) => all.map((column) => ({ name, column })));

describe('how the cells of a column look', () => {
  test('every figure has room beside it, below zero too, and none ends in a bare point', () => {
    const figures = columns.filter(({ column }) => ['number', 'count', 'money'].includes(column.kind));
    expect(figures.length).toBeGreaterThan(50);
    for (const { name, column } of figures) {
      const format = columnLook(column)?.number ?? '';
      for (const value of [0, 1, 12, -3, 2.5]) {
        const shown = numfmt.format(format, value) as string;
        expect(shown, `${name} ${column.header} ${format} ${value}`).toMatch(/\d ?$/);
        expect(shown.endsWith(' '), `${name} ${column.header} ${format}`).toBe(true);
      }
    }
  });

  test('days and readings stand in the middle, words as they are typed', () => {
    expect(columnLook({ kind: 'reading', format: '@' })).toEqual({ number: '@', align: 'center' });
    expect(columnLook({ kind: 'date', format: 'yyyy-mm-dd' })).toEqual({ number: 'yyyy-mm-dd', align: 'center' });
    expect(columnLook({ kind: 'text' })).toEqual({ number: '@' });
    expect(columnLook({ kind: 'choice' })).toBeNull();
  });
});

describe('how wide a column is', () => {
  test('no heading needs more than two lines or breaks a word, in bold letters beside its filter button', () => {
    for (const { name, column } of columns) {
      // A tenth fewer bold letters go into a line, and the button takes about two of them.
      const room = Math.floor((columnWidth(column) - 2) / 1.05);
      expect(wrappedLines(column.header, room), `${name} ${column.header}`).toBeLessThanOrEqual(2);
      for (const word of column.header.split(' ')) expect(word.length, word).toBeLessThanOrEqual(room);
    }
  });

  test('never narrower than its cells need', () => {
    for (const { column } of columns) expect(columnWidth(column)).toBeGreaterThanOrEqual(column.width);
    expect(columnWidth({ header: 'Job', width: 8 })).toBe(8);
    // "length (in)" has 11 letters; 11 × 1.05 and 2 beside it.
    expect(columnWidth({ header: 'Hand length (in)', width: 10 })).toBe(14);
  });
});
