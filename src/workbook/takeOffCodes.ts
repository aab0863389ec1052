/** How an old grip comes off, by the words of Clubs and Settings: the ticket and the quote read the same. */
import type { TakeOff } from '../core/index';

export const TAKE_OFF_CODES: Readonly<Record<string, TakeOff>> = {
  Whole: 'salvage',
  'Cut off': 'cutOff',
  'Off already': 'none',
};
