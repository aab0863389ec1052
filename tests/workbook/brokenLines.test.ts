import fc from 'fast-check';
import { expect, test } from 'vitest';
import { brokenLines } from '../../src/workbook/shared/brokenLines';

test('breaks between words, keeps every one in order, and no line is longer than the room but for a single word', () => {
  expect(brokenLines(' one  two three ', 8)).toEqual(['one two', 'three']);
  expect(brokenLines('incompressible is', 5)).toEqual(['incompressible', 'is']);
  const words = fc.array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1, maxLength: 40 });
  fc.assert(
    fc.property(words, fc.integer({ min: 1, max: 60 }), (list, room) => {
      const lines = brokenLines(list.join(' '), room);
      expect(lines.join(' ')).toBe(list.join(' '));
      for (const line of lines) expect(line.length <= room || !line.includes(' ')).toBe(true);
    }),
  );
});
