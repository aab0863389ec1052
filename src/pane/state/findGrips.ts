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

/** Grips that hold every typed word somewhere, in the order of Stock. */
export function findGrips(grips: readonly GripSeen[], typed: string): { found: readonly GripSeen[]; more: number } {
  const wanted = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const all = wanted.length ? grips.filter((grip) => wanted.every((word) => words(grip).includes(word))) : grips;
  return { found: all.slice(0, MOST), more: Math.max(0, all.length - MOST) };
}
