/** Keeping a customer's hand in the job's row of Jobs. */
import { keepHand } from '../../../workbook/keepHand';
import { sayHand } from '../../../words/chooseOutcomes';
import type { Deed } from '../../state/deed';
import type { HandSeen } from '../../state/work';

/** @param hand inches; null leaves a cell as it is */
export function handDeed(job: string, hand: { readonly [Key in keyof HandSeen]: number | null }): Deed {
  return {
    doing: 'Keeping the hand in Jobs…',
    done: 'Kept in Jobs',
    failed: 'The hand was not kept',
    run: async (port, shop, over) => {
      const end = await keepHand(port, shop, { job, ...hand }, over);
      return { end, text: sayHand(end) };
    },
  };
}
