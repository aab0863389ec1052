/** Text that a spreadsheet might take for a formula. */
import fc from 'fast-check';

/** What makes a spreadsheet take text for a formula, and what might slip through a check for it. */
const LEADS = ['=', '+', '-', '@', '\t', '\r', '\t=', '\r\n@', '＝', "'=", '-+', '=-'];
const BODIES = [
  '1+1',
  'SUM(A1:A9)',
  'HYPERLINK("x","y")',
  '1")+1+("',
  'A1',
  'x|y!z',
  '#REF!',
  '{1,2}',
  'TRUE',
  '"',
  '&A1&',
];

export const nastyText = fc.oneof(
  fc.tuple(fc.constantFrom(...LEADS), fc.constantFrom(...BODIES)).map((parts) => parts.join('')),
  fc
    .tuple(fc.constantFrom(...LEADS), fc.string({ unit: 'grapheme', maxLength: 12 }))
    .map((parts) => parts.join(''))
    // Two spellings of one name are one name, and a separator ends it.
    .filter((each) => each.trim().length > 1 && !/[;,\u0000-\u0008]/.test(each)),
);
