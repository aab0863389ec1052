import { createExcelPort } from '../../src/workbook/excel/port';
import { simulate } from '../simulated/simulated';
import { personAt } from '../simulated/person';
import { structureSuite } from './structureSuite';

structureSuite('client contract, simulated workbook', () => {
  const { book, host } = simulate();
  return { port: createExcelPort(host), person: personAt(book), sheet: 'Sheet1' };
});
