import { describe, expect, it } from 'vitest';
import type { Issue, IssueCode, Note, RuleBreach } from '../../src/core/index';
import { sayIssue } from '../../src/words/issues';
import * as words from '../../src/words/notes';
import { countOf, gramsText, readingText, signed, thousandths } from '../../src/words/readings';

/** Every reason with as much as the core gives it, and the sentence. */
const ISSUES: Record<IssueCode, readonly [Issue, string][]> = {
  blank: [
    [{ code: 'blank', field: 'Clubs row 3, Club', expected: 'the club' }, 'Clubs row 3, Club is blank. Give the club.'],
    [{ code: 'blank', field: 'gripGrams' }, 'gripGrams is blank. Give a value.'],
  ],
  notNumber: [
    [
      { code: 'notNumber', field: 'Clubs row 3, Length (in)', got: 'long', expected: '18 to 52 in' },
      'Clubs row 3, Length (in) is “long”, not a number. Give 18 to 52 in.',
    ],
    [{ code: 'notNumber', field: 'grams', got: true }, 'grams is TRUE, not a number. Give a number.'],
    [{ code: 'notNumber', field: 'grams', got: null }, 'grams is blank, not a number. Give a number.'],
  ],
  ambiguous: [
    [
      { code: 'ambiguous', field: 'Price', got: '1,234', expected: '1234.00 or 1.2340' },
      'Price is “1,234”, which can be read in two ways. Give 1234.00 or 1.2340.',
    ],
    [
      { code: 'ambiguous', field: 'Price', got: '1,234' },
      'Price is “1,234”, which can be read in two ways. Give it with its decimals.',
    ],
  ],
  unknownChoice: [
    [
      { code: 'unknownChoice', field: 'Clubs row 3, Kind', got: 'Club', expected: 'Driver, Wood or Iron' },
      'Clubs row 3, Kind is “Club”. Give Driver, Wood or Iron.',
    ],
    [{ code: 'unknownChoice', field: 'kind', got: 3 }, 'kind is 3. Give one of the known words.'],
  ],
  outOfRange: [
    [
      { code: 'outOfRange', field: 'Stock row 2, Mass (g)', got: 500, expected: '15 to 220 g' },
      'Stock row 2, Mass (g) is 500. Give 15 to 220 g.',
    ],
    [{ code: 'outOfRange', field: 'grams', got: -5 }, 'grams is −5. Give a value within range.'],
    [{ code: 'outOfRange', field: 'grams', got: 0.1 + 0.2 }, 'grams is 0.3. Give a value within range.'],
  ],
  unitMistaken: [
    [
      { code: 'unitMistaken', field: 'handInches', got: 193, expected: 'mm', detail: 193 / 25.4 },
      'handInches is 193: that looks like millimetres. 193 mm is 7.60 in: type that, or wrap it in CONVERT.',
    ],
    [
      { code: 'unitMistaken', field: 'fingerInches', got: 8.1, expected: 'cm', detail: 8.1 / 2.54 },
      'fingerInches is 8.1: that looks like centimetres. 8.1 cm is 3.19 in: type that, or wrap it in CONVERT.',
    ],
  ],
  notWhole: [
    [
      { code: 'notWhole', field: 'Clubs row 3, Layers', got: 1.5, expected: '0 to 12' },
      'Clubs row 3, Layers is 1.5. Give a whole number, 0 to 12.',
    ],
    [{ code: 'notWhole', field: 'layers', got: 1.5 }, 'layers is 1.5. Give a whole number.'],
  ],
  notReading: [
    [
      {
        code: 'notReading',
        field: 'Clubs row 3, Reading',
        got: 'H2',
        expected: 'a letter A to G and a number, such as D2.5',
      },
      'Clubs row 3, Reading is “H2”, which is not a reading. Give a letter A to G and a number, such as D2.5.',
    ],
    [
      { code: 'notReading', field: 'reading', got: '' },
      'reading is blank, which is not a reading. Give a letter A to G and a number, such as D2.5.',
    ],
  ],
  offScale: [
    [
      { code: 'offScale', field: 'points', got: -67.03, detail: -67 },
      'The result is −67.0 points from A0, off the scale (A0 to G9.9). Work with the points.',
    ],
    [
      { code: 'offScale', field: 'reading', got: 71 },
      'reading is 71.0 points from A0, off the scale (A0 to G9.9). Work with the points.',
    ],
  ],
  looseCore: [
    [
      { code: 'looseCore', field: 'coreInches', got: 0.62, detail: 4 },
      'coreInches .620 is larger than the butt with its tape: the grip would turn. 4 layers in all fill it.',
    ],
    [
      { code: 'looseCore', field: 'coreInches', detail: 1 },
      'coreInches is larger than the butt with its tape: the grip would turn. 1 layer in all fill it.',
    ],
  ],
  overTarget: [
    [
      { code: 'overTarget', field: 'targetInches', got: 0.93, detail: 0, expected: '.900' },
      'Even with 0 layers the grip measures .930, over the target .900. Choose a smaller grip.',
    ],
    [
      { code: 'overTarget', field: 'targetInches', got: 0.93, detail: 1 },
      'Even with 1 layer the grip measures .930, over the target. Choose a smaller grip.',
    ],
  ],
  tooManyLayers: [
    [
      { code: 'tooManyLayers', field: 'targetInches', got: 1.2, detail: 12 },
      '1.200 in would need more than 12 layers. Choose a larger grip.',
    ],
  ],
  atFulcrum: [
    [
      { code: 'atFulcrum', field: 'weightInches', got: 14.2 },
      'weightInches is 14.2: at the fulcrum (14 in) no mass changes the reading. Give a place nearer the head or the butt.',
    ],
  ],
  unknownItem: [
    [
      { code: 'unknownItem', field: 'New grip', got: 'X-1' },
      'New grip is “X-1”, which Stock does not list. Add it to Stock or choose another.',
    ],
  ],
  unknownWay: [
    [
      { code: 'unknownWay', field: 'Head weighting', got: 'Glue' },
      'Head weighting is “Glue”, which Weights does not list. Add it to Weights or choose another.',
    ],
  ],
  duplicate: [
    [
      { code: 'duplicate', field: 'Stock row 9, Item', got: 'X-1' },
      'Stock row 9, Item: “X-1” is there twice; the first one counts. Rename or remove this one.',
    ],
  ],
  missingColumn: [
    [
      { code: 'missingColumn', field: 'Clubs', expected: 'Club' },
      'There is no column “Club” in Clubs. Add it, or give the header row too.',
    ],
    [{ code: 'missingColumn', field: 'Club' }, 'There is no column “Club”. Add it, or give the header row too.'],
  ],
  noRows: [
    [
      { code: 'noRows', field: 'Clubs', expected: 'clubs of job 1042' },
      'Clubs has no clubs of job 1042. Add at least one.',
    ],
    [{ code: 'noRows', field: 'Clubs' }, 'Clubs has no rows. Add at least one.'],
  ],
  contradiction: [
    [
      { code: 'contradiction', field: 'Stock row 2', expected: 'a grip that measures .580 has no core of .600' },
      'Stock row 2 does not fit: a grip that measures .580 has no core of .600.',
    ],
    [{ code: 'contradiction', field: 'Stock row 2' }, 'Stock row 2 does not fit: two cells cannot both be true.'],
  ],
  tooFew: [
    [
      { code: 'tooFew', field: 'Layer mass', got: 3, expected: 'check-ins', detail: 5 },
      'Layer mass: 3 check-ins so far, too few to tell. It takes at least 5.',
    ],
    [
      { code: 'tooFew', field: 'Layer mass', got: 0 },
      'Layer mass: 0 measurements so far, too few to tell. It takes at least a few more.',
    ],
  ],
  inseparable: [
    [
      { code: 'inseparable', field: 'Layer mass', got: 85.2, expected: 'Fit some with more layers', detail: 30 },
      'Layer mass cannot be told apart from what changes with it (condition number 85, at most 30). Fit some with more layers.',
    ],
    [
      { code: 'inseparable', field: 'Layer mass', got: Infinity, detail: 30 },
      'Layer mass cannot be told apart from what changes with it (condition number over a million, at most 30). Vary what was measured.',
    ],
    [
      { code: 'inseparable', field: 'Layer mass' },
      'Layer mass cannot be told apart from what changes with it. Vary what was measured.',
    ],
  ],
  cellError: [
    [
      { code: 'cellError', field: 'Clubs row 3, Butt (in)', got: '#REF!' },
      'Clubs row 3, Butt (in) holds the error “#REF!”. Mend that cell first.',
    ],
  ],
};

const NOTES: Record<Note['note'], readonly [Note, string][]> = {
  issue: [[{ note: 'issue', issue: { code: 'blank', field: 'Club' } }, 'Club is blank. Give a value.']],
  noGrip: [[{ note: 'noGrip' }, 'No new grip chosen. Choose one in New grip.']],
  ownGrip: [
    [
      { note: 'ownGrip' },
      'The client brings the grip, and nothing is known of it: give it a row in Stock and name it in New grip to have reading and mass planned.',
    ],
  ],
  readingUnknown: [
    [
      { note: 'readingUnknown' },
      'Its reading as it arrived is not known: put the club on the scale. The change in points and the grams that undo it still hold.',
    ],
  ],
  heldUnknown: [
    [{ note: 'heldUnknown' }, 'Held as it was, but its reading as it arrived is not known. Give a Target reading.'],
  ],
  massUnknown: [
    [
      { note: 'massUnknown' },
      'Club mass is not known, so its change of length or cap is reckoned for a typical club. Weigh it.',
    ],
  ],
  massContradicts: [
    [{ note: 'massContradicts' }, 'Club mass does not fit the grip that is on it, or the bare mass. Weigh again.'],
  ],
  oldGripUnknown: [
    [
      { note: 'oldGripUnknown' },
      'The old grip’s mass is not known. Give Old grip mass, or strip the club and read it bare.',
    ],
  ],
  bareMassUnknown: [
    [
      { note: 'bareMassUnknown' },
      'Bare mass is not known, so what the cap adds is an estimate. Weigh the stripped club.',
    ],
  ],
  lengthUnknown: [
    [{ note: 'lengthUnknown' }, 'Length is not known, so there is no lever for head weight. Give Length.'],
  ],
  bareContradicts: [
    [{ note: 'bareContradicts' }, 'Reading and mass, as it arrived and bare, fit no old grip. Read and weigh again.'],
  ],
  targetUnknown: [[{ note: 'targetUnknown' }, 'Hold is Target, but Target reading is blank. Give a reading.']],
  looseCore: [
    [
      { note: 'looseCore', coreInches: 0.62, buttInches: 0.58, layers: 4 },
      'Core .620 is loose on a .580 butt and would turn: fit 4 layers or another core.',
    ],
    [
      { note: 'looseCore', coreInches: 0.62, buttInches: 0.46, layers: 16 },
      'Core .620 is loose on a .460 butt and would turn: choose another core.',
    ],
    [
      { note: 'looseCore', coreInches: 0.62, buttInches: 0.5, layers: 12 },
      'Core .620 is loose on a .500 butt and would turn: fit 12 layers or another core.',
    ],
  ],
  tightCore: [
    [
      { note: 'tightCore', coreInches: 0.58, buttInches: 0.62 },
      'Core .580 on a .620 butt is a tight stretch. Check that it goes on.',
    ],
  ],
  overTarget: [
    [
      { note: 'overTarget', inches: 0.93, targetInches: 0.9, layers: 0 },
      'Measures .930 without build-up, over the target .900: choose a smaller grip.',
    ],
    [
      { note: 'overTarget', inches: 0.93, targetInches: 0.9, layers: 2 },
      'Measures .930 with 2 layers, over the target .900: choose a smaller grip.',
    ],
  ],
  tooManyLayers: [
    [
      { note: 'tooManyLayers', targetInches: 1.2, most: 12 },
      'Target 1.200 needs more than 12 layers: choose a larger grip.',
    ],
  ],
  sizeUnknown: [
    [{ note: 'sizeUnknown' }, 'Size not checked: the butt, or the grip’s core or diameter, is not known.'],
    [
      { note: 'sizeUnknown', targetInches: 0.96 },
      'Layers for the target .960 cannot be found: the butt, or the grip’s core or diameter, is not known. Measure it, or give Layers.',
    ],
  ],
  overLimit: [
    [
      { note: 'overLimit', grams: 8.5, limitGrams: 8 },
      '8.5 g to add is more than your limit of 8 g. Decide: another grip, another target, or accept it.',
    ],
  ],
  offScale: [
    [
      { note: 'offScale', points: -67.03 },
      'Reads −67.0 pt, off the scale (A0 to G9.9). Judge it by the change in points and the mass.',
    ],
  ],
  mixedProfiles: [
    [{ note: 'mixedProfiles', group: 'irons', odd: 'ribbed' }, 'Ribbed grip among round ones in the irons.'],
    [{ note: 'mixedProfiles', group: 'woods', odd: 'round' }, 'Round grip among ribbed ones in the woods.'],
  ],
  stockShort: [
    [{ note: 'stockShort', item: 'X-1', needed: 9, onHand: 4 }, 'Stock is short of X-1: 9 needed, 4 on hand.'],
  ],
  duplicateClub: [
    [{ note: 'duplicateClub', rows: [2, 5] }, 'The same club stands in rows 2 and 5 of Clubs.'],
    [{ note: 'duplicateClub', rows: [2, 5, 7, 9] }, 'The same club stands in rows 2, 5, 7 and 9 of Clubs.'],
    [
      { note: 'duplicateClub', rows: [2, 5, 7, 9, 11, 12] },
      'The same club stands in rows 2, 5, 7 and 3 more of Clubs.',
    ],
  ],
  taught: [
    [
      { note: 'taught', grams: 52.24, balanceInches: 4.26 },
      'Stripped: its old grip weighed 52.2 g and balanced at 4.3 in.',
    ],
  ],
};

const BREACHES: Record<RuleBreach['rule'], readonly [RuleBreach, string]> = {
  crossSection: [{ rule: 'crossSection', inches: 1.7515 }, 'Grip 1.752 in thick, over 1.75 in'],
  gripLength: [{ rule: 'gripLength', inches: 6.5 }, 'Grip 6.50 in long, under 7 in'],
  clubShort: [{ rule: 'clubShort', inches: 17.5 }, 'Club 17.50 in, under 18 in'],
  clubLong: [{ rule: 'clubLong', inches: 48.125 }, 'Club 48.13 in, over 48 in'],
  clubLong46: [{ rule: 'clubLong46', inches: 46.5 }, 'Club 46.50 in, over 46 in (local rule)'],
  reverseTaper: [
    { rule: 'reverseTaper', upperInches: 0.9, lowerInches: 0.93 },
    'Lower hand .930 thicker than upper .900: a bulge is not allowed',
  ],
};

const each = <T>(by: Record<string, readonly (readonly [T, string])[]>) =>
  Object.entries(by).flatMap(([code, pairs]) => pairs.map(([given, sentence]) => [code, sentence, given] as const));

describe('every reason', () => {
  it.each(each(ISSUES))('%s: %s', (_, sentence, issue) => {
    expect(sayIssue(issue)).toBe(sentence);
  });

  it.each(Object.keys(ISSUES) as IssueCode[])('%s can be said with nothing but a field', (code) => {
    expect(sayIssue({ code, field: 'Length' })).not.toMatch(/undefined|NaN|\[object|null| {2}/);
  });

  it('shortens a long text and keeps a short one', () => {
    const of = (got: string) => sayIssue({ code: 'unknownItem', field: 'New grip', got });
    expect(of('x'.repeat(40))).toContain(`“${'x'.repeat(40)}”`);
    expect(of('x'.repeat(41))).toContain(`“${'x'.repeat(39)}…”`);
    expect(sayIssue({ code: 'unknownChoice', field: 'kind', got: false })).toContain('FALSE');
  });
});

describe('every note', () => {
  it.each(each(NOTES))('%s: %s', (_, sentence, note) => {
    expect(words.sayNote(note)).toBe(sentence);
  });
});

describe('every broken rule', () => {
  it.each(Object.values(BREACHES))('%j: %s', (breach, sentence) => {
    expect(words.sayBreach(breach)).toBe(sentence);
  });
});

describe('words of a plan', () => {
  it('are all there and all different', () => {
    for (const list of [
      words.VERDICT_WORDS,
      words.VERDICT_MEANING,
      words.BASIS_WORDS,
      words.HOLD_WORDS,
      words.ESTIMATOR_WORDS,
    ]) {
      const all = Object.values(list);
      expect(new Set(all).size).toBe(all.length);
      for (const word of all) expect(word).toMatch(/^\S.*\S$/);
    }
    expect(words.VERDICT_WORDS).toEqual({
      within: 'Within',
      likely: 'Likely',
      cannotTell: 'Cannot tell',
      out: 'Out',
      notHeld: 'Not held',
      unknown: 'Unknown',
    });
  });
});

describe('numbers for people', () => {
  it('readings, off the scale as points', () => {
    expect(readingText(32.44)).toBe('D2.4');
    expect(readingText(32.44, 2)).toBe('D2.44');
    expect(readingText(-67)).toBe('−67.0 pt');
    expect(readingText(70)).toBe('70.0 pt');
  });

  it.each([
    [1.25, 1, '+1.3'],
    [-1.25, 1, '−1.3'],
    [0.04, 1, '0.0'],
    [-0.04, 1, '0.0'],
    [2, 0, '+2'],
  ])('%d with %d decimals is %s', (value, decimals, text) => {
    expect(signed(value, decimals)).toBe(text);
  });

  it('a plus is left out where no change is meant', () => {
    expect(signed(1.25, 1, false)).toBe('1.3');
    expect(signed(-1.25, 1, false)).toBe('−1.3');
  });

  it.each([
    [0.58, '.580'],
    [1.75, '1.750'],
    [-0.02, '-.020'],
    [10.58, '10.580'],
  ])('%d in is %s', (inches, text) => {
    expect(thousandths(inches)).toBe(text);
  });

  it('grams and counts', () => {
    expect(gramsText(3.5)).toBe('3.5 g');
    expect(gramsText(8)).toBe('8 g');
    expect(gramsText(-4.04)).toBe('−4 g');
    expect(countOf(1, 'layer')).toBe('1 layer');
    expect(countOf(0, 'layer')).toBe('0 layers');
    expect(countOf(2, 'inch', 'inches')).toBe('2 inches');
  });
});
