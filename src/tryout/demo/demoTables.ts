import {
  CHECKIN,
  CLUBS,
  JOBS,
  QUOTES,
  RATES,
  SETTINGS,
  SIZES,
  STOCK,
  TAPE,
  TAXES,
  WEIGHTS,
} from '../../workbook/schema';
import { DISCOUNTS } from '../../workbook/tables/discounts';
import { MOVEMENTS } from '../../workbook/tables/movements';
import { SCALE } from '../../workbook/tables/scale';
import { demoCheckIn } from './checkIn';
import { closedCheckIn } from './closedCheckIn';
import { demoClubs } from './clubs';
import { demoDiscounts } from './discounts';
import { demoJobs } from './jobs';
import { demoQuotes, demoRates, demoSettings, demoSizes, demoTape, demoTaxes, demoWeights } from './shop';
import { demoScale } from './scale';
import { demoMovements } from './movements';
import { demoStock } from './stock';
import { asTable, type DemoRow, type DemoTable } from './table';

/** The workbook that the try-out page opens with: each table by name, header row first, `''` where a cell is blank. */
export const demoTables: Readonly<Record<string, DemoTable>> = {
  Jobs: asTable(JOBS, demoJobs),
  Clubs: asTable(CLUBS, demoClubs),
  Stock: asTable(STOCK, demoStock),
  Sizes: asTable(SIZES, demoSizes),
  Weights: asTable(WEIGHTS, demoWeights),
  Tape: asTable(TAPE, demoTape),
  Rates: asTable(RATES, demoRates),
  Taxes: asTable(TAXES, demoTaxes),
  Discounts: asTable(DISCOUNTS, demoDiscounts),
  Quotes: asTable(QUOTES, demoQuotes),
  // rows to write into below, as a new workbook has them
  Checkin: asTable(CHECKIN, [
    ...demoCheckIn,
    ...closedCheckIn,
    ...Array<DemoRow<typeof CHECKIN>>(CHECKIN.room).fill({}),
  ]),
  Scale: asTable(SCALE, demoScale),
  Movements: asTable(MOVEMENTS, demoMovements),
  Settings: asTable(SETTINGS, demoSettings),
};

/** The job that the page shows first. */
export const firstDemoJob = 'R-201';
