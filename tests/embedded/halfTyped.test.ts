/** What a person types is read while it is typed, and must leave nothing behind in the reader of formulas. */
import { LexerTreeBuilder } from '@univerjs/engine-formula';
import { afterEach, expect, test } from 'vitest';
import type { Spreadsheet } from '../../src/workbook/embedded/spreadsheet';
import { openSheet, type, valueAt } from './sheet';

let open: Spreadsheet | undefined;
afterEach(() => {
  open?.dispose();
  open = undefined;
});

test.each(['=SUM(Clubs[#All])', '=SUM((Clubs[[#All],[Mass]]', "=SUM('a[b'!A1", '={1,2', '=SUM("a,[', '=SUM(1]]))'])(
  'typed key by key, %s leaves other formulas as they are',
  async (text) => {
    open = await openSheet([{ name: 'Shop', cells: [[52.5, 1], [2]] }]);
    const reader = open.injector.get(LexerTreeBuilder);
    for (let keys = 1; keys <= text.length; keys += 1) {
      reader.sequenceNodesBuilder(text.slice(0, keys));
      reader.treeBuilder(text.slice(0, keys));
    }
    // Sums that no other test enters: what was read before is remembered.
    const salt = text.length * 1000 + text.charCodeAt(2);
    await type(open, 'Shop', 'C1', `=SUM(A1,B1,${salt})`);
    await type(open, 'Shop', 'C2', `=IF(A2=2,MAX(${salt},1),"no")`);
    expect([valueAt(open, 'Shop!C1'), valueAt(open, 'Shop!C2')]).toEqual([53.5 + salt, salt]);
  },
);
