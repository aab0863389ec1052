/** Client contract, simulated workbook: what a person does while requests are on their way. */
import { describe, expect, it } from 'vitest';
import { createExcelPort } from '../../src/workbook/excel/port';
import { simulate } from '../simulated/simulated';
import { block, look, make, write } from './structureSuite';

describe('client contract, simulated workbook: sheets that a person hid', () => {
  it('are written on and stay hidden', async () => {
    const { book, host } = simulate();
    const port = createExcelPort(host);
    book.addSheet('Plan').visibility = 'Hidden';
    const receipt = await make(port, [write('Plan', 0, 0, [['a']]), { do: 'show', at: block('Plan', 0, 0, 1, 1) }]);
    expect(book.sheet('Plan')).toMatchObject({ visibility: 'Hidden' });
    expect(book.active.name).toBe('Sheet1');
    expect(await port.revert(receipt)).toMatchObject({ restored: 1, left: [] });
    expect((await look(port, block('Plan', 0, 0, 1, 1)))[0]?.values).toEqual([[null]]);
  });
});
