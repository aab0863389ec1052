/** The same plan as a shop without us would build it: plain worksheet formulas, a row for each club, in the embedded engine. */
import { POINT_GRAM_INCHES as P, tapeGrams, type PlanInput, type SetPlan } from '../../src/core/index';
import { createHeadless, type Spreadsheet } from '../../src/workbook/embedded/spreadsheet';
import { readCells, worksheetNamed } from '../../src/workbook/embedded/cells';
import { bareInput, INPUTS } from './barePlan';

const LAYER = tapeGrams(10.5, 2, 130);
const STRIP = tapeGrams(10.5, 2, 133);
const verdict = (gap: string): string =>
  `IF(ABS(${gap})+[spread]<=1,"Within",IF(ABS(${gap})<=1,"Likely",IF(ABS(${gap})-[spread]<=1,"Cannot tell","Out")))`;
const reading = (points: string): string =>
  `IF(OR(${points}<0,${points}>=69.95),"off the scale",MID("ABCDEFG",INT(ROUND(${points},1)/10)+1,1)&TEXT(MOD(ROUND(${points},1),10),"0.0"))`;

/** Columns by name, each a formula over other columns of its row; in the order of the sheet. */
const FORMULAS = {
  fittedAfter: `[newGrams]+[layers]*${LAYER}`,
  fittedChange: '[fittedAfter]-[oldGrams]',
  byGrip: `([newGrams]*([newBalance]-14)-[oldGrams]*([oldBalance]-14))/${P}`,
  byTape: `[layers]*${LAYER}*(5.25-14)/${P}`,
  body: `[mass]-[oldGrams]-${STRIP}`,
  byCap: `[body]*([newCap]-[oldCap])/${P}`,
  byLength: `[body]*[lengthChange]/${P}`,
  change: '[byGrip]+[byTape]+[byCap]+[byLength]',
  gripped: '[reading]+[change]',
  before: reading('[reading]'),
  grippedReading: reading('[gripped]'),
  spread: `SQRT(([newSpread]*(14-[newBalance]))^2+([newGrams]*0.1)^2+(0.1*[layers]*${LAYER}*8.75)^2+([oldSpread]*(14-[oldBalance]-([newCap]-[oldCap]+[lengthChange])))^2+([oldGrams]*0.25)^2+IF([lengthChange]=0,0,(([mass]-[oldGrams]-${STRIP})/32)^2))/${P}`,
  verdict: verdict('[change]'),
  lengthAfter: '[length]+[newCap]-[oldCap]+[lengthChange]',
  place: 'IF([change]<=0,[lengthAfter],1)',
  exact: `-[change]*${P}/([place]-14)`,
  grams: 'IF(ABS([change])<=1,0,IF([change]<=0,ROUND([exact]/0.5,0)*0.5,ROUND([exact],0)))',
  where: 'IF([grams]=0,"",IF([change]<=0,"Lead tape (head)","Butt plug (butt)"))',
  after: `[gripped]+[grams]*([place]-14)/${P}`,
  afterReading: reading('[after]'),
  verdictAfter: verdict('([after]-[reading])'),
  massAfter: `[body]+[fittedAfter]+${STRIP}+[grams]`,
  inertia: '([newGrams]*[newBalance]^2-[oldGrams]*[oldBalance]^2+[grams]*[place]^2)*0.0064516',
  seat: '[butt]+0.01*[layers]',
  upperLow: 'SQRT([upper]^2-[core]^2+[seat]^2)',
  upperHigh: '[upper]+[seat]-[core]',
  lowerSeat: '[seat]-4*[taper]',
  lowerLow: 'SQRT([lower]^2-[core]^2+[lowerSeat]^2)',
  lowerHigh: '[lower]+[lowerSeat]-[core]',
  rules: 'IF([upperLow]>1.75,"too thick",IF([lengthAfter]>48,"too long",IF([lengthAfter]<18,"too short","OK")))',
} as const;

const COLUMNS = [...INPUTS, ...Object.keys(FORMULAS)];
export const FORMULAS_A_CLUB = Object.keys(FORMULAS).length;

function letters(column: number): string {
  const rest = String.fromCharCode(65 + (column % 26));
  return column < 26 ? rest : letters(Math.floor(column / 26) - 1) + rest;
}

function formulasOf(row: number): string[] {
  return Object.values(FORMULAS).map(
    (formula) => `=${formula.replace(/\[(\w+)\]/g, (_, name: string) => `${letters(COLUMNS.indexOf(name))}${row}`)}`,
  );
}

/** Milliseconds to fill the formulas over a sheet of values and have them calculated. */
export async function timeSheet(input: PlanInput, plan: SetPlan): Promise<number> {
  const count = input.clubs.length;
  const columns = bareInput(input);
  const cells = input.clubs.map((_, at) => INPUTS.map((name) => columns[name][at] ?? 0));
  const size = { rowCount: count + 1, columnCount: COLUMNS.length + 1 };
  const spreadsheet = await createHeadless({ sheets: [{ name: 'Clubs', cells, ...size }] });
  await spreadsheet.settled();
  const formulas = input.clubs.map((_, at) => formulasOf(at + 1));
  const range = spreadsheet.workbook.getSheetByName('Clubs')?.getRange(0, INPUTS.length, count, FORMULAS_A_CLUB);
  if (!range) throw new Error('the sheet was just made');
  const start = performance.now();
  range.setValues(formulas.map((row) => row.map((f) => ({ f }))));
  await spreadsheet.settled(300_000);
  const passed = performance.now() - start;
  compare(spreadsheet, plan);
  spreadsheet.dispose();
  return passed;
}

/** Both must say the same, or they are not the same plan. */
function compare(spreadsheet: Spreadsheet, plan: SetPlan): void {
  const worksheet = worksheetNamed(spreadsheet, 'Clubs');
  if (!worksheet) throw new Error('the sheet was just made');
  const block = { sheet: 'Clubs', row: 0, column: 0, rows: plan.clubs.length, columns: COLUMNS.length };
  const { values } = readCells(spreadsheet, worksheet, block);
  const expected = { after: 'readingAfter', massAfter: 'massAfterGrams', spread: 'spreadPoints' } as const;
  plan.clubs.forEach((club, at) => {
    for (const [name, key] of Object.entries(expected) as [string, keyof typeof club][]) {
      const seen = values[at]?.[COLUMNS.indexOf(name)];
      const own = club[key];
      if (typeof seen !== 'number' || typeof own !== 'number' || Math.abs(seen - own) > 1e-6) {
        throw new Error(`row ${at + 1}: the sheet says ${name} is ${String(seen)}, the plan ${String(own)}`);
      }
    }
  });
}
