/** Choosing over a large stock: how long comparing and solving take beside the plans that they consist of. */
import {
  compareGrips,
  DEFAULT_SETTINGS,
  planSet,
  SIZES_DIFFER,
  solveSet,
  type Club,
  type Grip,
  type PlanInput,
} from '../../src/core/index';
import { assign } from '../../src/workbook/assignment';
import { planTables } from '../../src/workbook/planTables';
import { clubTable, stockTable } from './clubs';
import { figures, medians, printTable } from './measure';

const GRIPS = 500;
const CLUBS = 14;

/** Invented grips: models of five sizes in two cores; every third model is short of pieces, so that it has to be shared out. */
function grips(): Grip[] {
  return Array.from({ length: GRIPS }, (_, at): Grip => {
    const model = Math.floor(at / 10);
    const size = Math.floor((at % 10) / 2);
    return {
      item: `M${model}-${size}-${at % 2}`,
      description: undefined,
      model: `Model ${model}`,
      size: `Size ${size}`,
      coreInches: at % 2 ? 0.6 : 0.58,
      profile: 'round',
      gripGrams: 40 + ((at * 7919) % 260) / 10,
      spreadGrams: 2,
      upperInches: 0.88 + size * 0.015,
      lowerInches: 0.8 + size * 0.015,
      lengthInches: 10.5,
      balanceInches: 4.1,
      capInches: 0.12,
      onHand: model % 3 === 0 ? 3 + (at % 4) : CLUBS,
      price: 4 + ((at * 31) % 900) / 100,
    };
  });
}

function bench(): PlanInput {
  const made = planTables({ clubs: clubTable(CLUBS), stock: stockTable() });
  if (!made.ok) throw new Error(made.issue.code);
  const { ways, clubs } = made.value.input;
  const set = clubs.map((club, at): Club => ({ ...club, kind: kindOf(at), layers: undefined, targetInches: 0.93 }));
  return { clubs: set, stock: grips(), ways, settings: { ...DEFAULT_SETTINGS, headLimitGrams: 20 } };
}

function kindOf(at: number): Club['kind'] {
  return at < 4 ? 'wood' : at < 11 ? 'iron' : 'wedge';
}

export function benchChoose(): void {
  const input = bench();
  const [first] = input.stock;
  const many: PlanInput = {
    ...input,
    clubs: Array.from({ length: GRIPS }, () => input.clubs.map((club) => ({ ...club, newItem: first?.item }))).flat(),
  };
  const solve = (sizesDiffer: (typeof SIZES_DIFFER)[number]) => () => {
    const found = solveSet(
      { input, shortlist: undefined, aims: ['weight', 'deviation', 'price'], sizesDiffer },
      assign,
    );
    if (!found.solved) throw new Error(JSON.stringify(found.cannot[0]));
  };
  const whole = `planSet of ${many.clubs.length} clubs`;
  const results = medians([
    { name: whole, run: () => planSet(many) },
    { name: 'compare', run: () => compareGrips(input) },
    ...SIZES_DIFFER.map((sizesDiffer) => ({ name: `solve, sizes differ ${sizesDiffer}`, run: solve(sizesDiffer) })),
  ]);
  printTable(
    `Choosing for ${CLUBS} clubs among ${GRIPS} grips`,
    ['', 'ms', 'to planSet'],
    [...results].map(([name, ms]) => [name, figures(ms), `× ${figures(ms / (results.get(whole) ?? NaN))}`]),
  );
}
