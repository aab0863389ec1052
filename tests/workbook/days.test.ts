import { describe, expect, it } from 'vitest';
import { dayOf, monthsLater, readDay } from '../../src/workbook/days';
import { dayWords } from '../../src/words/intake';

describe('days', () => {
  it('counts as a workbook does', () => {
    // 46157 is 2026-05-15 in any spreadsheet
    expect(readDay('2026-05-15')).toBe(46157);
    expect(dayWords(46157)).toBe('2026-05-15');
    expect(dayOf(new Date(2026, 4, 15, 23, 59))).toBe(46157);
    expect(dayOf(new Date(2026, 4, 15, 0, 1))).toBe(46157);
  });

  it.each([['2026-02-30'], ['15.05.2026'], [''], ['2026-13-01'], ['0026-01-01']])('%s names no day', (text) => {
    expect(readDay(text)).toBeUndefined();
  });

  it('months later, at the end of a shorter month', () => {
    const later = (from: string, months: number): string => dayWords(monthsLater(readDay(from) ?? 0, months));
    expect(later('2026-01-31', 1)).toBe('2026-02-28');
    expect(later('2024-02-29', 12)).toBe('2025-02-28');
    expect(later('2025-11-15', 14)).toBe('2027-01-15');
  });
});
