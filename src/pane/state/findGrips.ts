/** Which grips of Stock answer to what was typed. */
import { thousandths } from '../../words/readings';
import type { GripSeen } from './work';

/** More than this in a list and nobody reads it; typing narrows it. */
const MOST = 40;

function words(grip: GripSeen): string {
  const core = grip.coreInches === undefined ? '' : thousandths(grip.coreInches);
  const mass = grip.gripGrams === undefined ? '' : `${grip.gripGrams}g`;
  return [grip.item, grip.description, grip.size, core, mass].join(' ').toLowerCase();
}

/** What each grip of a list is found by: it is looked through at every letter, and may hold tens of thousands. */
const sought = new WeakMap<readonly GripSeen[], readonly string[]>();

/** Grips that hold every typed word somewhere, in the order of Stock. */
export function findGrips(grips: readonly GripSeen[], typed: string): { found: readonly GripSeen[]; more: number } {
  const wanted = typed.toLowerCase().split(/\s+/).filter(Boolean);
  if (!wanted.length) return { found: grips.slice(0, MOST), more: Math.max(0, grips.length - MOST) };
  const texts = sought.get(grips) ?? grips.map(words);
  sought.set(grips, texts);
  const all = grips.filter((_, at) => wanted.every((word) => texts[at]?.includes(word)));
  return { found: all.slice(0, MOST), more: Math.max(0, all.length - MOST) };
}
