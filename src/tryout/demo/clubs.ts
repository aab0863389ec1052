import type { CLUBS } from '../../workbook/schema';
import type { DemoRow } from './table';

/**
 * The clubs of the demo. Lengths, masses and readings are made up, but each club is one that could stand on the counter: its mass
 * and reading together ask for a head and a shaft of a usual mass.
 */
type Club = DemoRow<typeof CLUBS>;

/** Graphite butts thin at about .007 in/in, steel ones not before their first step. */
const graphite = { hand: 'Right', taper: 0.007 } as const;
const steel = { hand: 'Right', taper: 0 } as const;

/** A full bag, everything known: the woods' old grips came off whole and were weighed, the irons' are catalogue masses. */
const weighedOld = { oldItem: 'TB-S60', oldMassKnown: 'Weighed', oldLayers: 0 } as const;
const catalogueOld = { oldItem: 'OS-S60', oldMass: 49, oldMassKnown: 'Catalogue', oldLayers: 0 } as const;
const firmer = { job: 'R-201', newItem: 'TB-S60', layers: 2, logo: 'Down' } as const;
// prettier-ignore
const fullBag: readonly Club[] = [
  { ...firmer, club: 'Driver', tag: '01', damage: 'Scratch on the crown', kind: 'Driver', ...graphite, length: 45.25, butt: 0.6, reading: 'D2.4', mass: 308.5, ...weighedOld, oldMass: 51.2 },
  { ...firmer, club: '3 wood', tag: '02', kind: 'Wood', ...graphite, length: 43, butt: 0.6, reading: 'D2.2', mass: 327.5, ...weighedOld, oldMass: 50.6 },
  { ...firmer, club: '5 wood', tag: '03', kind: 'Wood', ...graphite, length: 42, butt: 0.6, reading: 'D2.0', mass: 336, ...weighedOld, oldMass: 51 },
  { ...firmer, club: '4 hybrid', tag: '04', kind: 'Hybrid', ...graphite, length: 40, butt: 0.6, reading: 'D2.1', mass: 364, ...weighedOld, oldMass: 50.2 },
  { ...firmer, club: '5 iron', tag: '05', kind: 'Iron', ...steel, length: 38, butt: 0.6, reading: 'D1.8', mass: 403, ...catalogueOld },
  { ...firmer, club: '6 iron', tag: '06', kind: 'Iron', ...steel, length: 37.5, butt: 0.6, reading: 'D2.0', mass: 411, ...catalogueOld },
  { ...firmer, club: '7 iron', tag: '07', damage: 'Rust spot below the grip', kind: 'Iron', ...steel, length: 37, butt: 0.6, reading: 'D2.1', mass: 419, ...catalogueOld },
  { ...firmer, club: '8 iron', tag: '08', kind: 'Iron', ...steel, length: 36.5, butt: 0.6, reading: 'D1.7', mass: 427, ...catalogueOld },
  { ...firmer, club: '9 iron', tag: '09', kind: 'Iron', ...steel, length: 36, butt: 0.6, reading: 'D2.2', mass: 434.5, ...catalogueOld },
  { ...firmer, club: 'PW', tag: '10', kind: 'Iron', ...steel, length: 35.75, butt: 0.6, reading: 'D2.6', mass: 441, ...catalogueOld },
  { ...firmer, club: '52 wedge', tag: '11', kind: 'Wedge', ...steel, hold: 'Target', target: 'D4', length: 35.5, butt: 0.6, reading: 'D3.8', mass: 452, ...catalogueOld },
  { ...firmer, club: '56 wedge', tag: '12', kind: 'Wedge', ...steel, hold: 'Target', target: 'D5', length: 35.25, butt: 0.6, reading: 'D5.0', mass: 460, ...catalogueOld },
  { job: 'R-201', club: 'Putter', tag: '13', takeOff: 'Whole', kind: 'Putter', ...steel, newItem: 'PT-P58', layers: 0, length: 34, butt: 0.58, reading: 'E1.5', mass: 538, oldItem: 'PT-P58', oldMass: 64, oldMassKnown: 'Weighed', oldLayers: 0 },
];

/**
 * Every club gets a grip 17 g heavier than the old one is listed. The 7 iron was stripped first: its bare reading and mass fit an old
 * grip of 52.2 g that balanced 4.3 in from its cap, not the 49 g and 4.2 in of the stock list.
 */
// prettier-ignore
const heavier = { job: 'R-202', newItem: 'OS-M60', layers: 0, ...steel, butt: 0.6, oldItem: 'OS-S60', oldLayers: 0 } as const;
// prettier-ignore
const heavierGrips: readonly Club[] = [
  { ...heavier, club: '4 iron', kind: 'Iron', length: 38.5, reading: 'D1.1', mass: 401 },
  { ...heavier, club: '5 iron', kind: 'Iron', length: 38, reading: 'D1.0', mass: 408 },
  { ...heavier, club: '6 iron', kind: 'Iron', length: 37.5, reading: 'D0.9', mass: 415 },
  { ...heavier, club: '7 iron', kind: 'Iron', length: 37, reading: 'D1.2', mass: 422.5, bareReading: 'E0.8', bareMass: 368.5 },
  { ...heavier, club: '8 iron', kind: 'Iron', length: 36.5, reading: 'D1.0', mass: 430 },
  { ...heavier, club: '9 iron', kind: 'Iron', length: 36, reading: 'D0.8', mass: 437 },
  { ...heavier, club: 'PW', kind: 'Iron', length: 35.75, reading: 'D1.4', mass: 443 },
  { ...heavier, club: '55 wedge', kind: 'Wedge', hold: 'Target', target: 'D4', length: 35.25, reading: 'D3.2', mass: 458 },
];

/** Short and light: every reading lies below A0 and is given as points. The old grips are full-size ones cut down. */
// prettier-ignore
const small = { job: 'R-203', newItem: 'JR-U58', layers: 0, ...steel, butt: 0.58, oldItem: 'cut-down standard', oldMass: 38, oldMassKnown: 'Catalogue', oldLayers: 0, oldBalance: 3.6, oldCap: 0.13 } as const;
// prettier-ignore
const juniorSet: readonly Club[] = [
  { ...small, club: 'Junior wood', kind: 'Junior', length: 32, reading: -34.6, mass: 269.5 },
  { ...small, club: 'Junior hybrid', kind: 'Junior', length: 29.5, reading: -41.7, mass: 279.5 },
  { ...small, club: 'Junior 7', kind: 'Junior', length: 27, reading: -50.2, mass: 285.5 },
  { ...small, club: 'Junior 9', kind: 'Junior', length: 26, reading: -52.7, mass: 293.5 },
  { ...small, club: 'First 7', kind: 'Junior', length: 24, reading: -67, mass: 256 },
  { ...small, club: 'Junior putter', kind: 'Putter', length: 25, reading: -52.4, mass: 334.5 },
];

/** Oversize and even-width grips; nothing is held on the first, the second must read as it did. */
// prettier-ignore
const pistol = { job: 'R-204', kind: 'Putter', ...steel, butt: 0.58, layers: 0, oldItem: 'PT-P58', oldLayers: 0 } as const;
// prettier-ignore
const putters: readonly Club[] = [
  { ...pistol, club: 'Putter', newItem: 'PT-W58', length: 34, reading: 'E0.4', mass: 535.5, oldMass: 64.5, oldMassKnown: 'Weighed' },
  { ...pistol, club: 'Spare putter', newItem: 'PT-E58', hold: 'As it was', length: 34.5, reading: 'E7.6', mass: 543, oldMass: 64, oldMassKnown: 'Catalogue' },
];

/**
 * Butts of two sizes in one bag. A weight in the 3 wood's old grip leaves with it; the hybrid was to get a grip whose core is too wide
 * for its butt; nobody read the 6 iron; the 7 iron gets half an inch longer; the PW was to get a ribbed grip among round ones.
 */
// prettier-ignore
const mixed = { job: 'R-205', oldItem: 'worn, unmarked', oldMassKnown: 'Catalogue', oldLayers: 0, oldBalance: 4.2, oldCap: 0.125 } as const;
// prettier-ignore
const mixedButts: readonly Club[] = [
  { ...mixed, club: 'Driver', kind: 'Driver', ...graphite, newItem: 'OS-S60', layers: 2, length: 45.5, butt: 0.6, reading: 'D2.8', mass: 309, oldMass: 50 },
  { ...mixed, club: '3 wood', kind: 'Wood', ...graphite, newItem: 'OS-S60', layers: 2, length: 43, butt: 0.6, reading: 'D0.6', mass: 344.5, oldMass: 50, buttWeight: 12, buttWeightLeaves: 'Yes' },
  { ...mixed, club: '5 hybrid', kind: 'Hybrid', ...graphite, newItem: 'OS-S62', layers: 0, length: 39, butt: 0.58, reading: 'D0.5', mass: 372, oldMass: 48 },
  { ...mixed, club: '6 iron', kind: 'Iron', ...steel, newItem: 'OS-S58', targetDiameter: 0.92, length: 37.5, butt: 0.58, mass: 425, oldMass: 52 },
  { ...mixed, club: '7 iron', kind: 'Iron', ...steel, newItem: 'OS-S60', targetDiameter: 0.92, lengthChange: 0.5, plug: 6, hold: 'Target', target: 'D1.5', length: 36.75, butt: 0.6, reading: 'C9.7', mass: 430, oldMass: 51 },
  { ...mixed, club: '8 iron', kind: 'Iron', ...steel, newItem: 'OS-S58', targetDiameter: 0.92, length: 36.5, butt: 0.58, reading: 'D2.2', mass: 438, oldMass: 49 },
  { ...mixed, club: '9 iron', kind: 'Iron', ...steel, newItem: 'OS-S60', targetDiameter: 0.92, length: 36, butt: 0.6, reading: 'D1.7', mass: 446.5, oldMass: 50.5 },
  { ...mixed, club: 'PW', kind: 'Iron', ...steel, newItem: 'PE-S58R', targetDiameter: 0.92, length: 35.75, butt: 0.58, reading: 'D2.8', mass: 454, oldMass: 50 },
  { ...mixed, club: '56 wedge', kind: 'Wedge', ...steel, newItem: 'OS-S60', layers: 2, hold: 'Target', target: 'D4.5', length: 35.25, butt: 0.6, reading: 'D2.6', mass: 471, oldMass: 54 },
];

/** Premium work: old grips weighed, half a point either way, two layers more under the lower hand. */
// prettier-ignore
const closeWork = { job: 'R-206', kind: 'Wedge', hand: 'Left', taper: 0, butt: 0.6, newItem: 'TB-S60', layers: 1, lowerLayers: 2, hold: 'Target', tolerance: 0.5, weighting: 'Tip plug', oldItem: 'TB-S60', oldMassKnown: 'Weighed', oldLayers: 0 } as const;
// prettier-ignore
const wedges: readonly Club[] = [
  { ...closeWork, club: '50 wedge', target: 'D4', length: 35.75, reading: 'D3.5', mass: 454.5, oldMass: 51.8 },
  { ...closeWork, club: '54 wedge', target: 'D5', length: 35.5, reading: 'D3.8', mass: 460, oldMass: 52.4 },
  { ...closeWork, club: '58 wedge', target: 'D6', length: 35.25, reading: 'D4.9', mass: 466, oldMass: 51.2 },
];

/** Jobs that were closed: what is on the first bag now, and a customer who is due for a reminder. The woods and the putter were not read. */
// prettier-ignore
const worn = { oldItem: 'worn, unmarked', oldMass: 50, oldMassKnown: 'Catalogue', oldLayers: 0, oldBalance: 4.2, oldCap: 0.125 } as const;
const lastYear = { job: 'R-143', hand: 'Right', butt: 0.6, layers: 0 } as const;
const longAgo = { job: 'R-118', hand: 'Left', layers: 3 } as const;
const readLastYear = { ...lastYear, ...worn, kind: 'Iron', newItem: 'OS-S60' } as const;
const readLongAgo = { ...longAgo, ...worn, kind: 'Iron', newItem: 'OS-S60', butt: 0.6 } as const;
// prettier-ignore
const closed: readonly Club[] = [
  { ...lastYear, club: 'Driver', kind: 'Driver', newItem: 'TB-S60', length: 45.25 },
  { ...lastYear, club: '3 wood', kind: 'Wood', newItem: 'TB-S60', length: 43 },
  { ...lastYear, club: '5 wood', kind: 'Wood', newItem: 'TB-S60', length: 42 },
  { ...readLastYear, club: '5 iron', length: 38, reading: 'D1.7', mass: 404 },
  { ...readLastYear, club: '6 iron', length: 37.5, reading: 'D1.9', mass: 412 },
  { ...readLastYear, club: '7 iron', length: 37, reading: 'D2.0', mass: 420 },
  { ...readLastYear, club: '8 iron', length: 36.5, reading: 'D1.6', mass: 428 },
  { ...readLastYear, club: '9 iron', length: 36, reading: 'D2.1', mass: 435 },
  { ...readLastYear, club: 'PW', length: 35.75, reading: 'D2.5', mass: 442 },
  { ...readLongAgo, club: '6 iron', length: 37.25, reading: 'D0.9', mass: 409 },
  { ...readLongAgo, club: '7 iron', length: 36.75, reading: 'D1.1', mass: 416 },
  { ...readLongAgo, club: '8 iron', length: 36.25, reading: 'D0.8', mass: 424 },
  { ...readLongAgo, club: '9 iron', length: 35.75, reading: 'D1.2', mass: 431 },
  { ...readLongAgo, club: 'PW', length: 35.5, reading: 'D1.6', mass: 439 },
  { ...longAgo, club: 'Putter', kind: 'Putter', newItem: 'PT-P58', layers: 0, butt: 0.58, length: 33.5 },
];

export const demoClubs: readonly Club[] = [
  ...fullBag,
  ...heavierGrips,
  ...juniorSet,
  ...putters,
  ...mixedButts,
  ...wedges,
  ...closed,
];
