/** What a workbook keeps beside its cells, for a copy: all but what can be undone. */
import { planSpill, rowPrints } from '../../planOwners';
import { LAST_FILL_KEY, PLANS_BEFORE_KEY, PLANS_KEY, keepPlans, keptPlans } from '../../planPlaces';
import type { PlanEntry } from '../../planPlaces';
import type { PageSetup } from '../../port';
import { STEPS_KEY } from '../../undoSteps';
import type { KeptState } from '../keptState';
import { isPageKey, keptPage } from '../pages';
import { seeBlock, seeName } from '../seeing';
import type { Spreadsheet } from '../spreadsheet';

/** A copy begins its own list of what can be undone. */
const isUndo = (key: string): boolean =>
  key === LAST_FILL_KEY || key === PLANS_BEFORE_KEY || key === STEPS_KEY || key.startsWith(`${STEPS_KEY}.`);

/** Settings, plans and pages as they are to be found again; null where there is nothing of ours. */
export function stateOf(spreadsheet: Spreadsheet): KeptState | null {
  const all = Object.entries(spreadsheet.workbook.getCustomMetadata() ?? {});
  const settings = all.flatMap(([key, value]): [string, string][] => {
    if (typeof value !== 'string' || isPageKey(key) || isUndo(key)) return [];
    return [[key, key === PLANS_KEY ? plansAsValues(spreadsheet, value) : value]];
  });
  const pages = spreadsheet.workbook.getSheets().flatMap((sheet): { sheet: string; setup: PageSetup }[] => {
    const setup = keptPage(spreadsheet, sheet.getSheetId());
    return setup ? [{ sheet: sheet.getSheetName(), setup }] : [];
  });
  return settings.length + pages.length > 0 ? { settings: Object.fromEntries(settings), pages } : null;
}

/** A live plan stands in the copy as values; with their prints they are known as ours there. */
function plansAsValues(spreadsheet: Spreadsheet, text: string): string {
  const kept = keptPlans(text);
  if (!kept) return text;
  return keepPlans(
    kept.plans.map((plan) => withPrints(spreadsheet, plan)),
    kept.layout,
  );
}

function withPrints(spreadsheet: Spreadsheet, plan: PlanEntry): PlanEntry {
  const { at } = seeName(spreadsheet, plan.name);
  const spill = at && planSpill(seeBlock(spreadsheet, at));
  if (!spill) return plan;
  const { values } = seeBlock(spreadsheet, spill);
  return { ...plan, rowPrints: [...new Set([...plan.rowPrints, ...rowPrints(values)])] };
}
