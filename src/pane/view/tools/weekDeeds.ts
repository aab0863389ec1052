/** What is done for the work ahead: its page, and many jobs in one go. */
import { runBatch, type BatchAsked } from '../../../workbook/batch';
import { fillWeek } from '../../../workbook/fillWeek';
import { BATCH_STEPS, batchLines, isPartly, sayBatch } from '../../../words/batch';
import { plansAmiss } from '../../../workbook/lookAfter';
import { sayAmiss } from '../../../words/outcomes';
import { sayWeek } from '../../../words/week';
import type { Deed } from '../../state/deed';
import { nextTurn } from '../../../workbook/pace';
import { WEEK_WORDS } from './weekWords';

export function weekDeed(today: number): Deed {
  return {
    doing: WEEK_WORDS.weekDoing,
    done: WEEK_WORDS.weekDone,
    failed: WEEK_WORDS.weekFailed,
    run: async (port, shop, over) => {
      const end = await fillWeek(port, shop, { today, agreed: over ?? undefined });
      return { end, text: sayWeek(end) };
    },
  };
}

export function batchDeed(asked: BatchAsked): Deed {
  return {
    doing: WEEK_WORDS.batchDoing,
    done: WEEK_WORDS.batchDone,
    failed: WEEK_WORDS.batchFailed,
    canStop: true,
    run: async (port, _shop, _over, going) => {
      const end = await runBatch(port, asked, {
        step: (what, worked, of) => going.say(BATCH_STEPS[what](worked, of)),
        signal: going.signal,
        rest: nextTurn,
      });
      const filled = end.plans && 'filled' in end.plans ? [...end.plans.filled.values()] : [];
      const amiss = await plansAmiss(
        port,
        filled.flatMap((plan) => (plan.done ? [plan] : [])),
      );
      const partly = isPartly(end) || amiss.length > 0;
      const headline = end.stopped ? WEEK_WORDS.batchStopped : partly ? WEEK_WORDS.batchPartly : WEEK_WORDS.batchDone;
      return {
        end: { done: true },
        text: sayBatch(end),
        list: [...amiss.map(sayAmiss), ...batchLines(end)],
        partly,
        headline,
      };
    },
  };
}
