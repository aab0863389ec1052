/** Placed grips as cells: what PLACEGRIPS spills, one row a club. */
import type { Issue, PlacedClub, Placement } from '../core/index';
import { sayProblems } from '../words/issues';
import { sayNote, VERDICT_WORDS } from '../words/notes';
import { sayLeft, sayOddMass } from '../words/place';
import { readingText } from '../words/readings';

type Cell = string | number;

/** What stands for the number of a grip where there is none. */
const NONE_LEFT = 'None left';
const NOT_WEIGHED = 'Not weighed';

interface PlaceColumn {
  readonly header: string;
  readonly cell: (club: PlacedClub, placement: Placement) => Cell | undefined;
}

const reading = (points: number | undefined): string | undefined =>
  points === undefined ? undefined : readingText(points);

const PLACE_COLUMNS: readonly PlaceColumn[] = [
  { header: 'Club', cell: ({ name }) => name },
  { header: 'New grip', cell: ({ item }) => item },
  {
    header: 'Grip no.',
    cell: ({ row, grip }, { unserved }) => grip?.number ?? (unserved.includes(row) ? NONE_LEFT : NOT_WEIGHED),
  },
  { header: 'Mass (g)', cell: ({ grip }) => grip?.grams },
  { header: 'Reading', cell: ({ plan }) => reading(plan.readingGripped) },
  { header: 'Missing (pt)', cell: ({ plan }) => plan.gapPoints },
  { header: 'As gripped', cell: ({ plan }) => VERDICT_WORDS[plan.verdict] },
  { header: 'Notes', cell: notes },
];

/** Why nothing can be said of a club, and whether its grip's mass is odd. */
function notes({ grip, plan }: PlacedClub, { odd }: Placement): string {
  const why = plan.verdict === 'unknown' ? plan.notes.map(sayNote) : [];
  return [...odd.filter((each) => each.grip === grip).map(sayOddMass), ...why].join(' ');
}

/**
 * A placing as cells, header row first. What concerns no single club (a setting, grips that are left, odd ones among them) stands before
 * the first club's notes.
 *
 * @returns rows × 8 columns; numbers unrounded but for binary noise, '' for blanks
 */
export function placeCells(placement: Placement, problems: readonly Issue[] = []): Cell[][] {
  const rows = placement.placed.map((club) => PLACE_COLUMNS.map(({ cell }) => tidy(cell(club, placement))));
  const left = new Set(placement.left);
  const oddLeft = placement.odd.filter(({ grip }) => left.has(grip)).map(sayOddMass);
  const first = rows[0];
  if (first) {
    const told = [sayProblems(problems), sayLeft(placement), ...oddLeft, first.at(-1)].filter(Boolean);
    first[first.length - 1] = told.join(' ');
  }
  return [PLACE_COLUMNS.map(({ header }) => header), ...rows];
}

/** Seven decimals are beyond any scale; a −0 becomes 0. */
function tidy(cell: Cell | undefined): Cell {
  if (cell === undefined) return '';
  return typeof cell === 'number' ? Math.round(cell * 1e7) / 1e7 + 0 : cell;
}
