/** A Clubs table of any length for measuring, the same each time: usual lengths, masses and readings, some clubs bare, some weighed. */
import { CLUBS, STOCK } from '../../src/workbook/schema';
import type { Matrix } from '../../src/workbook/records';

type Cell = string | number | null;
type Line = Readonly<Record<string, Cell>>;

/** Kinds of a bag of thirteen with their play length (in) and mass (g); invented, in the usual ranges. */
const BAG = [
  ['Driver', 45.25, 308],
  ['Wood', 43, 327],
  ['Wood', 42, 336],
  ['Hybrid', 40, 364],
  ['Iron', 38, 403],
  ['Iron', 37.5, 411],
  ['Iron', 37, 419],
  ['Iron', 36.5, 427],
  ['Iron', 36, 434],
  ['Iron', 35.75, 441],
  ['Wedge', 35.5, 452],
  ['Wedge', 35.25, 460],
  ['Putter', 34, 538],
] as const;

/** Invented grips of three cores, in steps of 1 g. */
const GRIPS: readonly Line[] = Array.from({ length: 24 }, (_, at) => ({
  item: `G-${at}`,
  core: [0.58, 0.6, 0.62][at % 3] ?? 0.6,
  profile: 'Round',
  mass: 38 + at,
  massSpread: 2,
  upperDiameter: 0.9 + (at % 4) * 0.03,
  lowerDiameter: 0.82 + (at % 4) * 0.03,
  length: 10.5,
  balance: 4.1,
  cap: 0.12 + (at % 3) * 0.01,
  onHand: 100000,
}));

/** So many clubs in bags of thirteen. */
export function clubTable(count: number): Matrix {
  return matrix(
    CLUBS.columns,
    Array.from({ length: count }, (_, at) => club(at)),
  );
}

/** So many clubs that plain formulas can plan: held as they were, on an old grip that is known, layers given. */
export function alike(count: number): Matrix {
  const plain = { kind: 'Iron', targetDiameter: null, lowerLayers: null, bareReading: null, bareMass: null };
  return matrix(
    CLUBS.columns,
    Array.from({ length: count }, (_, at) => ({ ...club(at), ...plain, layers: 4 + (at % 2) })),
  );
}

export function stockTable(): Matrix {
  return matrix(STOCK.columns, GRIPS);
}

function club(at: number): Line {
  const [kind, length, mass] = BAG[at % BAG.length] ?? BAG[0];
  const wobble = ((at * 7919) % 100) / 100;
  const bare = at % 29 === 5;
  return {
    job: `J-${Math.floor(at / BAG.length)}`,
    club: `Club ${(at % BAG.length) + 1}`,
    kind,
    newItem: `G-${(at * 5) % GRIPS.length}`,
    layers: at % 5 === 0 ? null : 4 + (at % 2),
    targetDiameter: at % 5 === 0 ? 0.95 : null,
    lowerLayers: at % 7 === 0 ? 2 : null,
    length,
    butt: at % 2 ? 0.6 : 0.58,
    reading: `D${(at * 3) % 5}.${at % 10}`,
    mass: mass + wobble * 4,
    oldItem: 'worn',
    oldMass: 48 + wobble * 5,
    oldMassKnown: at % 3 ? 'Catalogue' : 'Weighed',
    oldCap: 0.125,
    lengthChange: at % 11 === 0 ? 0.5 : null,
    bareReading: bare ? 'E1.5' : null,
    bareMass: bare ? mass - 52 : null,
  };
}

function matrix(columns: readonly { readonly key: string; readonly header: string }[], lines: readonly Line[]): Matrix {
  return [columns.map(({ header }) => header), ...lines.map((line) => columns.map(({ key }) => line[key] ?? null))];
}
