import { describe, expect, test } from 'vitest';
import { copyName } from '../../src/tryout/save/fileName';
import { sayLosses, sayNotMade, sayOddNames } from '../../src/tryout/save/words';
import { demoSettings } from '../../src/tryout/demo/shop';

const nothing = {
  valuesInstead: [],
  otherFormulas: 0,
  rulesLeftOut: 0,
  filtered: [],
  oddNames: [],
  unkept: [],
  keptFormulas: 0,
  moved: [],
};

describe('what a copy’s file is called', () => {
  const shop = String(demoSettings.find(({ setting }) => setting === 'Shop name')?.value);

  test.each([
    [shop, [], 'setwright-demo-workshop.xlsx'],
    [shop, ['R-201', 'R-201'], 'setwright-demo-workshop-r-201.xlsx'],
    [shop, ['R-201', 'R-202'], 'setwright-demo-workshop.xlsx'],
    [shop, [null], 'setwright-demo-workshop.xlsx'],
    ['', [], 'setwright.xlsx'],
    ['Müller & Söhne: Griffe/Schäfte', [], 'setwright-müller-söhne-griffe-schäfte.xlsx'],
    ['..\\..\\etc', [], 'setwright-etc.xlsx'],
  ])('%j with pages for %j: %s', (name, jobs, file) => expect(copyName(name, jobs)).toBe(file));

  test('a long name is cut, and not at a hyphen', () => {
    const name = copyName('The Old Bench '.repeat(9), []);
    expect(name.length).toBeLessThanOrEqual(65);
    expect(name).toMatch(/^setwright-the-old-bench-.*[^-]\.xlsx$/);
  });
});

describe('what is said before a copy is saved', () => {
  test('nothing where nothing is lost', () => {
    expect(sayLosses(nothing)).toEqual([]);
    expect(sayOddNames(nothing)).toBeNull();
  });

  test('a sentence for each loss', () => {
    const losses = {
      ...nothing,
      valuesInstead: ['Plan R-201', 'Bench'],
      otherFormulas: 1,
      rulesLeftOut: 2,
      filtered: ['Stock'],
      moved: ['Shelf'],
    };
    expect(sayLosses(losses)).toEqual([
      'Live plans and Setwright’s functions become values, in Plan R-201 and Bench: they no longer follow the tables.',
      '1 formula that not every program calculates becomes a value.',
      'What hung on the places of cells is left out in Shelf: cells were moved since the file was opened. It was a filter, page breaks, what is printed or small charts in cells.',
      '2 highlights or checks of entries that you made will be missing.',
      'All rows show in Stock, where a filter hides some now.',
    ]);
  });

  test('what is wrong with a sheet’s name, and what to do', () => {
    expect(sayOddNames({ oddNames: ['Bench: today'] })).toBe(
      'A file cannot hold a sheet called Bench: today: at most 31 characters, none of \\ / ? * [ ] : and no apostrophe at either end. Give it another name, then save.',
    );
  });

  test('why no file was made', () => {
    expect(sayNotMade('out of memory')).toContain('(out of memory). The workbook is as it was');
  });
});
