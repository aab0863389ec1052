import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asTyped, wouldChange } from '../../src/workbook/safeCell';
import { enter } from '../simulated/entry';

describe('text that must stay text', () => {
  it.each([
    '=1+1',
    '+1',
    '-x',
    '@x',
    '\t=1',
    '\r=1',
    "'x",
    '＝1',
    '007',
    '1/2',
    '3-4',
    '12:30',
    '$5',
    '(5)',
    '5%',
    ' 5',
    'TRUE',
    ' false ',
    '#N/A',
    'Mar 5',
    '5 March 2026',
    '１２',
    '1E5',
  ])('is written with an apostrophe: %j', (text) => expect(asTyped(text)).toBe(`'${text}`));

  it.each(['', 'Club', 'Club 7', 'E5', 'D2.4', 'Grün', 'a = b', 'within tolerance', 'March', 'trueness'])(
    'needs none: %j',
    (text) => expect(wouldChange(text)).toBe(false),
  );

  it('is no formula, number, date or error in the simulated workbook', () => {
    const likely = fc.stringMatching(/^['=+\-@#$(]?[0-9]{0,3}[-/: .,%]?[0-9]{0,2}( ?(mar|pm|E|TRUE|N\/A))?\)?$/);
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'grapheme' }), fc.string(), likely), (text) => {
        expect(enter(asTyped(text), 'General')).toEqual({ value: text });
      }),
      { numRuns: 2000 },
    );
  });
});
