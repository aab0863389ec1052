/** Taking over one of the shop's own constants. */
import type { Offer } from '../../../core/index';
import { takeConstant } from '../../../workbook/takeConstant';
import { sayConstant } from '../../../words/constants';
import type { Deed } from '../../state/deed';

export function takeConstantDeed(offer: Offer): Deed {
  return {
    doing: 'Taking over…',
    done: 'Taken over',
    failed: 'Nothing was taken over',
    run: async (port, _shop, over) => {
      const end = await takeConstant(port, offer, over);
      return { end, text: sayConstant(end) };
    },
  };
}
