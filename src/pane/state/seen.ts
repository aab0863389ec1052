/** What the pane was shown, as workbook jobs take it. */
import type { Scope } from '../../workbook/outcomes';
import type { Shop } from '../../workbook/shop';
import type { ShopSeen, Who } from './work';

/** Clubs as workbook jobs name them. */
export function scopeOf(who: Who, rows: readonly number[]): Scope {
  return who.by === 'job' ? { job: who.job } : { rows };
}

/** The shop behind what the pane shows; the pane was shown nothing else than what was read. */
export function shopOf(seen: ShopSeen): Shop {
  return seen.shop as Shop;
}
