import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseWeighed } from '../../src/workbook/weighedText';
import { sayIssue } from '../../src/words/issues';

/** `OS-S60=51.2` with an item, `51.2` without; a refusal as its sentence. */
function read(text: string): string[] | string {
  const result = parseWeighed(text);
  if (!result.ok) return sayIssue(result.issue);
  expect(result.value.map(({ number }) => number)).toEqual(result.value.map((_, at) => at + 1));
  return result.value.map(({ item, grams }) => (item === undefined ? String(grams) : `${item}=${grams}`));
}

describe('masses as people type and paste them', () => {
  test.each<[string, string[]]>([
    ['51.2', ['51.2']],
    ['51.2\n50.8\n52', ['51.2', '50.8', '52']],
    ['51.2\r\n50.8\r\n', ['51.2', '50.8']],
    ['51.2\r50.8', ['51.2', '50.8']],
    ['\n\n 51.2 \n\t\n50.8\n\n', ['51.2', '50.8']],
    ['51.2 50.8  52', ['51.2', '50.8', '52']],
    ['51.2\t50.8\t52', ['51.2', '50.8', '52']],
    ['51.2; 50.8;52', ['51.2', '50.8', '52']],
    ['51.2, 50.8, 52', ['51.2', '50.8', '52']],
    ['51.2 g\n50.8g\n52 grams\n53 gr.', ['51.2', '50.8', '52', '53']],
    ['51.2 g 50.8 g', ['51.2', '50.8']],
    ['51', ['51']],
  ])('%j', (text, expected) => expect(read(text)).toEqual(expected));

  test.each<[string, string[]]>([
    ['OS-S60 51.2\nOS-M60 66', ['OS-S60=51.2', 'OS-M60=66']],
    ['OS-S60\t51.2\nOS-S60\t50.9 g', ['OS-S60=51.2', 'OS-S60=50.9']],
    ['OS-S60;51,2\nOS-S60;50,9', ['OS-S60=51.2', 'OS-S60=50.9']],
    ['OS-S60 51.2; OS-M60 66', ['OS-S60=51.2', 'OS-M60=66']],
    ['OS-S60 51.2 OS-M60 66', ['OS-S60=51.2', 'OS-M60=66']],
    ['Soft cord 51.2', ['Soft cord=51.2']],
    ['Cord 60\t51.2', ['Cord 60=51.2']],
    ['4711\t51.2\n4712\t50', ['4711=51.2', '4712=50']],
    ['4711 51.2', ['4711=51.2']],
    ['OS-S60 51.2\n50', ['OS-S60=51.2', '50']],
  ])('with an item before the mass: %j', (text, expected) => expect(read(text)).toEqual(expected));

  test.each<[string, string[]]>([
    ['1) 51.2\n2) 50.8', ['51.2', '50.8']],
    ['1. 51.2\n2. 50.8', ['51.2', '50.8']],
    ['1: 51.2', ['51.2']],
    ['#7 51.2', ['51.2']],
    ['(1) 51.2 (2) 50.8', ['51.2', '50.8']],
    ['1\t51.2\n2\t50.8', ['51.2', '50.8']],
    ['1\tOS-S60\t51.2 g', ['OS-S60=51.2']],
    ['1) OS-S60 51.2', ['OS-S60=51.2']],
  ])('with a number before it: %j', (text, expected) => expect(read(text)).toEqual(expected));

  test('numbers go on where they could be masses', () => {
    const lines = Array.from({ length: 18 }, (_, at) => `${at + 1}\t${50 + at / 10}`);
    expect(read(lines.join('\n'))).toEqual(Array.from({ length: 18 }, (_, at) => String(50 + at / 10)));
    // but not where the grips before had none: 15 g is the lightest mass
    const plain = Array.from({ length: 14 }, () => '50').join('\n');
    expect(read(`${plain}\n15 51.2`)).toHaveLength(16);
  });

  test('below a heading', () => {
    expect(read('Grip\tMass (g)\nOS-S60\t51.2')).toEqual(['OS-S60=51.2']);
    expect(read('Weight\n51.2')).toEqual(['51.2']);
  });
});

describe('commas', () => {
  test.each<[string, string[]]>([
    ['51,2', ['51.2']],
    ['51,2 50,8', ['51.2', '50.8']],
    ['51,2, 50,8', ['51.2', '50.8']],
    // one that can only be a decimal sign speaks for the others
    ['51,2\n50,75', ['51.2', '50.75']],
    ['51,25\n50,08', ['51.25', '50.08']],
    // and so does a point
    ['51.2,50.8', ['51.2', '50.8']],
    ['51.2\n50,52', ['51.2', '50', '52']],
  ])('%j', (text, expected) => expect(read(text)).toEqual(expected));

  test.each<[string, string]>([
    [
      '51,52',
      'Line 1 does not fit: “51,52” may be one mass or several; write 51.52 for one, or put blanks between masses.',
    ],
    [
      '50 g\n51,52',
      'Line 2 does not fit: “51,52” may be one mass or several; write 51.52 for one, or put blanks between masses.',
    ],
    [
      '51,2,50,8',
      'Line 1 does not fit: “51,2,50,8” may be one mass or several; write decimals with a point, or put blanks between masses.',
    ],
    [
      '51,52,50',
      'Line 1 does not fit: “51,52,50” may be one mass or several; write decimals with a point, or put blanks between masses.',
    ],
    ['5,12', 'The mass in line 1 is 5.12. Give 15 to 220 g.'],
  ])('%j is asked about', (text, expected) => expect(read(text)).toBe(expected));
});

describe('what cannot be read is told with its line and what to do', () => {
  test.each<[string, string]>([
    ['', 'The list of masses is blank. Give one mass a line, 15 to 220 g, such as 51.2.'],
    [' \n\t\n', 'The list of masses is blank. Give one mass a line, 15 to 220 g, such as 51.2.'],
    ['Mass (g)', 'The list of masses is blank. Give one mass a line, 15 to 220 g, such as 51.2.'],
    ['51.2\n\n512', 'The mass in line 3 is 512. Give 15 to 220 g.'],
    ['14.9', 'The mass in line 1 is 14.9. Give 15 to 220 g.'],
    ['−51', 'The mass in line 1 is −51. Give 15 to 220 g.'],
    ['51.2.3', 'The mass in line 1 is “51.2.3”, not a number. Give 15 to 220 g, such as 51.2.'],
    ['OS-S60', 'The mass of OS-S60 in line 1 is blank. Give 15 to 220 g, after the item.'],
    ['51.2 OS-S60', 'The mass of OS-S60 in line 1 is blank. Give 15 to 220 g, after the item.'],
    ['OS-S60 512', 'The mass in line 1 is 512. Give 15 to 220 g.'],
    [
      'Cord 60 51.2',
      'Line 1 does not fit: it is not plain which number is the mass in “Cord 60 51.2”; put one grip on a line, and a tab or a semicolon between item and mass.',
    ],
  ])('%j', (text, expected) => expect(read(text)).toBe(expected));
});

test('masses are read back in whichever way they are written down', () => {
  const mass = fc.integer({ min: 150, max: 2200 }).map((tenths) => tenths / 10);
  const gap = fc.constantFrom('\n', '\r\n', ' ', '\t', '; ', ' g\n', '\n\n');
  fc.assert(
    fc.property(
      fc.array(mass, { minLength: 1, maxLength: 20 }),
      gap,
      fc.constantFrom('.', ','),
      (masses, between, sign) => {
        const written = masses.map((grams) => grams.toFixed(1).replace('.', sign));
        expect(read(written.join(between))).toEqual(masses.map(String));
      },
    ),
  );
});

test('nothing that is typed makes it throw', () => {
  const bit = fc.oneof(fc.string(), fc.constantFrom('51.2', '51,2', '1)', '\n', '\t', ';', 'g', ',', 'OS', '#3', '−'));
  fc.assert(
    fc.property(fc.array(bit, { maxLength: 12 }), (bits) => {
      const result = parseWeighed(bits.join(' '));
      if (result.ok) for (const { grams } of result.value) expect(grams >= 15 && grams <= 220).toBe(true);
      else expect(sayIssue(result.issue)).toMatch(/\.$/);
    }),
  );
});
