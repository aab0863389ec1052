import { describe, expect, it } from 'vitest';
import { sayCompared, sayHand } from '../../src/words/chooseOutcomes';
import { listed } from '../../src/words/listed';
import { sayUndo } from '../../src/words/outcomes';
import { sayPortError } from '../../src/words/portErrors';
import { PortError, type PortErrorCode } from '../../src/workbook/port';

const SENTENCES: Record<PortErrorCode, string> = {
  notLookedAt: 'Plan!A1:C9 changed while this was being prepared. Nothing was written; try again.',
  protected: 'The sheet Plan!A1:C9 is protected. Nothing was written; take the protection off and try again.',
  merged: 'Plan!A1:C9 are merged cells. Nothing was written; unmerge them or choose another place.',
  filtered: 'A filter hides rows of Plan!A1:C9. Nothing was written; clear the filter and try again.',
  tableInTheWay: 'The table Plan!A1:C9 is in the way. Nothing was written; choose a place clear of it.',
  belowTable:
    'A table needs more room, but Plan!A1:C9 right at its edge hold something. Nothing was written; move that further away.',
  // the host's words are the whole sentence here
  connection: 'no room. ',
  editing: 'A cell is being edited. Press Enter to finish it, then try again.',
  putBack:
    'The workbook refused a step and everything was put back as it was. It said: “no room”. Save, then try again.',
  halfWritten:
    'The workbook failed half way and could not be put back. It said: “no room”. Look at Plan!A1:C9, then use Undo.',
  tooLong:
    'What stands in Plan!A1:C9 is longer than the workbook takes at once. Nothing was written; shorten texts there and try again.',
  unsupported: 'This version of the spreadsheet cannot do that. It said: “no room”. Nothing was written.',
  host: 'The workbook did not answer. It said: “no room”. Nothing was written; try again.',
};

describe('what the workbook refused', () => {
  it.each(Object.entries(SENTENCES) as [PortErrorCode, string][])('%s: %s', (code, sentence) => {
    expect(sayPortError(new PortError(code, ['Plan!A1:C9'], 'no room. '))).toBe(sentence);
  });

  it.each(Object.keys(SENTENCES) as PortErrorCode[])('%s with nothing heard from the host', (code) => {
    const sentence = sayPortError(new PortError(code, ['A1']));
    expect(sentence).not.toMatch(/undefined|It said| {2}/);
  });
});

it('what Undo would have to keep is too long', () => {
  expect(sayPortError(new PortError('tooLong'))).toBe(
    'This, or what Undo would have to keep of it, is longer than the workbook takes at once. Nothing was written; do it in smaller parts.',
  );
});

it('protection of which no sheet is named', () => {
  expect(sayPortError(new PortError('protected'))).toBe(
    'The workbook or one of its sheets is protected. Nothing was written; take the protection off and try again.',
  );
});

describe('taking back', () => {
  const back = { label: 'Plan of job 7', restored: 3, left: [], notFound: [] };

  it('says what was left as changed, and what was not found', () => {
    const reverted = { ...back, left: ['Clubs!E3'], notFound: ['Clubs: 7, Driver', 'Clubs: 7, Wedge'] };
    const text = sayUndo({ done: true, reverted, next: null });
    expect(text).toContain(' Left as you changed them since: Clubs!E3.');
    expect(text).toContain(' Left alone, since they were not found for certain: Clubs: 7, Driver; Clubs: 7, Wedge.');
    expect(sayUndo({ done: true, reverted: back, next: null })).not.toContain('Left');
  });

  it('says of what had only been begun no more than is known', () => {
    expect(sayUndo({ done: true, reverted: back, next: 'Order', begun: true })).toBe(
      'Plan of job 7 had been begun and not finished. What was written of it is taken back. Undo takes back next: Order.',
    );
  });

  it('names what is next', () => {
    expect(sayUndo({ done: true, reverted: back, next: 'Order' })).toBe(
      'Taken back: Plan of job 7. Undo takes back next: Order.',
    );
    expect(sayUndo({ done: true, reverted: back, next: null })).toContain('Nothing else is left to undo.');
  });

  it('names seven rows at most', () => {
    const notFound = Array.from({ length: 9 }, (_, i) => `Clubs: 7, ${i + 1}`);
    const text = sayUndo({ done: true, reverted: { ...back, notFound }, next: null });
    expect(text).toContain('Clubs: 7, 7; and 2 more.');
  });
});

describe('comparisons and hands', () => {
  it.each([
    [sayCompared({ done: false, reason: 'noRoom' }), 'over the edge of the sheet'],
    [sayCompared({ done: false, reason: 'noClubs' }), 'There are no clubs'],
    [sayCompared({ done: false, reason: 'nothingTried' }), 'Narrow down less'],
    [sayCompared({ done: false, reason: 'outOfDate', tables: ['Clubs', 'Stock'] }), 'Clubs and Stock changed'],
    [sayCompared({ done: false, reason: 'tableMissing', table: 'Clubs' }), 'Set up this workbook'],
    [sayHand({ done: false, reason: 'jobNotListed', job: '' }), 'no row for a job without a name'],
    [sayHand({ done: false, reason: 'tableMissing', table: 'Jobs' }), 'Set up this workbook'],
    [sayHand({ done: true, job: '7', cells: 1 }), 'kept in Jobs: 1 cell changed.'],
  ])('%s', (sentence, part) => {
    expect(sentence).toContain(part);
    expect(sentence).toMatch(/^[A-Z].*\.$/);
  });
});

describe('lists', () => {
  it.each([
    [[], ''],
    [['A1'], 'A1'],
    [['A1', 'B2'], 'A1 and B2'],
    [['A1', 'B2', 'C3'], 'A1, B2 and C3'],
    [['1', '2', '3', '4', '5', '6', '7'], '1, 2, 3, 4, 5, 6 and 7'],
    [['1', '2', '3', '4', '5', '6', '7', '8'], '1, 2, 3, 4, 5, 6 and 2 more'],
  ])('%j: %s', (things, text) => {
    expect(listed(things)).toBe(text);
  });
});
