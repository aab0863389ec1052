import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { resolve } from '../../../src/workbook/connect/resolve';
import type { ColumnMatch } from '../../../src/workbook/connect/types';

const HEADINGS = ['Code', 'Bin', 'Wt (oz)', 'Core', 'Colour', 'Qty'];
const MATCHES: readonly ColumnMatch[] = [
  { key: 'item', heading: 'Code', position: 0, unit: null },
  { key: 'mass', heading: 'Wt (oz)', position: 2, unit: 'oz' },
  { key: 'core', heading: 'Core', position: 3, unit: 'mm' },
  { key: 'onHand', heading: 'Qty', position: 5, unit: null },
];

describe('a remembered match', () => {
  it('holds where nothing changed', () => {
    expect(resolve(MATCHES, HEADINGS)).toEqual({ found: MATCHES, moved: [], broken: [] });
  });

  it('knows a heading whatever its case, spaces and marks of direction', () => {
    const now = ['CODE ', 'Bin', '\u200fWt  (oz)', 'core', 'Colour', 'qty'];
    const { found, broken } = resolve(MATCHES, now);
    expect(broken).toEqual([]);
    expect(found.map(({ position }) => position)).toEqual([0, 2, 3, 5]);
  });

  it('names a column that was renamed, and does not take it', () => {
    const { found, broken } = resolve(MATCHES, ['Code', 'Bin', 'Wt (g)', 'Core', 'Colour', 'Qty']);
    expect(found.map(({ key }) => key)).toEqual(['item', 'core', 'onHand']);
    expect(broken).toEqual([{ key: 'mass', heading: 'Wt (oz)', why: 'renamed', nowAt: 'Wt (g)', position: 2 }]);
  });

  it('finds a renamed one after columns were inserted before it', () => {
    const { broken, moved } = resolve(MATCHES, ['Shelf', 'Code', 'Bin', 'Mass', 'Core', 'Colour', 'Qty']);
    expect(broken).toEqual([{ key: 'mass', heading: 'Wt (oz)', why: 'renamed', nowAt: 'Mass', position: 3 }]);
    expect(moved).toEqual([
      { key: 'item', heading: 'Code', from: 0, to: 1 },
      { key: 'core', heading: 'Core', from: 3, to: 4 },
      { key: 'onHand', heading: 'Qty', from: 5, to: 6 },
    ]);
  });

  it('calls a column gone where its neighbours closed up, or stand elsewhere', () => {
    expect(resolve(MATCHES, ['Code', 'Bin', 'Core', 'Colour', 'Qty']).broken).toEqual([
      { key: 'mass', heading: 'Wt (oz)', why: 'gone' },
    ]);
    expect(resolve(MATCHES, ['Core', 'Bin', 'Notes', 'Qty', 'Code']).broken).toEqual([
      { key: 'mass', heading: 'Wt (oz)', why: 'gone' },
    ]);
  });

  it('does not choose between two headings alike', () => {
    expect(resolve(MATCHES, [...HEADINGS, 'Core']).broken).toEqual([
      { key: 'core', heading: 'Core', why: 'twice', position: 3 },
    ]);
  });

  test('survives any order and any new columns', () => {
    const order = fc.shuffledSubarray(HEADINGS, { minLength: HEADINGS.length });
    const news = fc.uniqueArray(fc.stringMatching(/^New [a-z]{1,5}$/), { maxLength: 4 });
    fc.assert(
      fc.property(order, news, fc.infiniteStream(fc.nat()), (shuffled, added, places) => {
        const now = [...shuffled];
        for (const heading of added) now.splice((places.next().value ?? 0) % (now.length + 1), 0, heading);
        const { found, moved, broken } = resolve(MATCHES, now);
        expect(broken).toEqual([]);
        expect(found).toEqual(MATCHES.map((match) => ({ ...match, position: now.indexOf(match.heading) })));
        expect(moved.length).toBe(found.filter(({ position }, at) => position !== MATCHES[at]?.position).length);
      }),
    );
  });
});
