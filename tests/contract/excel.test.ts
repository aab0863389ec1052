import { createExcelPort } from '../../src/workbook/excel/port';
import { simulate } from '../simulated/simulated';
import { personAt } from '../simulated/person';
import { lengthenSuite } from './lengthenSuite';
import { namedRowsSuite } from './namedRowsSuite';
import { quoteSuite } from './quoteSuite';
import { structureSuite } from './structureSuite';
import { widenSuite } from './widenSuite';
import type { Bench } from './structureSuite';

function makeBench(): Bench {
  const { book, host } = simulate();
  return { port: createExcelPort(host), person: personAt(book), sheet: 'Sheet1' };
}

structureSuite('client contract, simulated workbook', makeBench);
lengthenSuite('client contract, simulated workbook', makeBench);
quoteSuite('client contract, simulated workbook', makeBench);
widenSuite('client contract, simulated workbook', makeBench);
namedRowsSuite('client contract, simulated workbook', makeBench);
