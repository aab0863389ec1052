/** A job's club labels and its pick-up slip. */
import type { BenchPageDone } from './benchDone';
import { fillBenchPage, type BenchPage, type PageAsked } from './fillBenchPage';
import { handedClubs } from './handOver';
import { dressLabels, labelPage } from './labelSheet';
import type { WorkbookPort } from './port';
import { settingValues } from './readSettings';
import { CURE_HOURS, REMIND_AFTER_MONTHS, type SettingKey } from './schema';
import { matrixOf, type Shop, type ShopTables } from './shop';
import { dressSlip, slipPage } from './slipSheet';

const LABELS: BenchPage = {
  key: 'labels',
  sheet: 'Labels',
  label: (job) => `Labels of job ${job}`,
  make: (hand) => {
    const page = labelPage(hand.facts, handedClubs(hand));
    return { ...page, dress: (at) => dressLabels(at, page) };
  },
};

const SLIP: BenchPage = {
  key: 'slip',
  sheet: 'Pick-up',
  label: (job) => `Pick-up slip of job ${job}`,
  make: (hand) => {
    const care = careOf(hand.tables);
    const page = slipPage(hand.facts, handedClubs(hand), { care, isRedo: hand.round.number > 1 });
    return { ...page, dress: (at) => dressSlip(at, page) };
  },
};

function careOf({ Settings }: ShopTables): { readonly cureHours: number; readonly remindMonths: number } {
  const read = settingValues(Settings && matrixOf(Settings));
  const number = (key: SettingKey, usual: number): number => {
    const value = read.ok ? read.value.values.get(key) : undefined;
    return typeof value === 'number' ? value : usual;
  };
  return { cureHours: number('cureHours', CURE_HOURS), remindMonths: number('remindAfter', REMIND_AFTER_MONTHS) };
}

/** One label for each club, with what it reads where that was measured. */
export function fillLabels(port: WorkbookPort, shop: Shop, asked: PageAsked): Promise<BenchPageDone> {
  return fillBenchPage(port, shop, LABELS, asked);
}

/** What goes back, how it came out, and how to care for it. */
export function fillSlip(port: WorkbookPort, shop: Shop, asked: PageAsked): Promise<BenchPageDone> {
  return fillBenchPage(port, shop, SLIP, asked);
}
