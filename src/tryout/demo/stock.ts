import type { STOCK } from '../../workbook/schema';
import type { DemoRow } from './table';

/**
 * The grips of an invented workshop; every name, price and supplier is made up. Sizes follow the size classes: a standard grip
 * measures about .900 in at 2 in, midsize 1/16 in more, jumbo 1/8 in more, undersize 1/64 in less. One was measured by the workshop
 * itself once it was fitted.
 */
type Grip = DemoRow<typeof STOCK>;

const tarnbeck = { model: 'Tarnbeck', texture: 'Cord', use: 'Clubs' } as const;
const ostrel = { model: 'Ostrel', texture: 'Rubber', use: 'Clubs' } as const;
const haddlow = { model: 'Haddlow', texture: 'Foam', use: 'Clubs' } as const;
const pellow = { model: 'Pellow', texture: 'Rubber', use: 'Clubs' } as const;
const small = { model: 'Junior', texture: 'Rubber', use: 'Juniors' } as const;
const pistol = { model: 'Pistol', texture: 'Rubber', use: 'Putters' } as const;
const evenWidth = { model: 'Even width', texture: 'Foam', use: 'Putters' } as const;
const slim = { model: 'Long slim', texture: 'Rubber', use: 'Putters' } as const;

const pennock = { supplier: 'Pennock Supply', pack: 6 } as const;
const orrin = { supplier: 'Orrin Wholesale', pack: 13 } as const;
const tolland = { supplier: 'Tolland Trade', pack: 10 } as const;

// prettier-ignore
const firmCord: readonly Grip[] = [
  { item: 'TB-U60', description: 'Tarnbeck, firm with cord', ...tarnbeck, size: 'Undersize', core: 0.6, profile: 'Round', mass: 46.5, massSpread: 1.5, upperDiameter: 0.885, lowerDiameter: 0.8, length: 10.5, balance: 4.2, cap: 0.125, cost: 3.2, price: 7.5, onHand: 9, reorderAt: 4, ...pennock },
  { item: 'TB-S58', description: 'Tarnbeck, firm with cord', ...tarnbeck, size: 'Standard', core: 0.58, profile: 'Round', mass: 53.5, massSpread: 1.5, upperDiameter: 0.9, lowerDiameter: 0.815, length: 10.5, balance: 4.2, cap: 0.125, cost: 3.2, price: 7.5, onHand: 18, reorderAt: 8, ...pennock },
  { item: 'TB-S60', description: 'Tarnbeck, firm with cord', ...tarnbeck, size: 'Standard', core: 0.6, profile: 'Round', mass: 52, massSpread: 1.5, upperDiameter: 0.9, lowerDiameter: 0.815, length: 10.5, balance: 4.2, cap: 0.125, cost: 3.2, price: 7.5, onHand: 41, reorderAt: 18, ...pennock },
  { item: 'TB-S60R', description: 'Tarnbeck, firm with cord, ribbed', ...tarnbeck, size: 'Standard', core: 0.6, profile: 'Ribbed', mass: 52.5, massSpread: 1.5, upperDiameter: 0.9, lowerDiameter: 0.815, length: 10.5, balance: 4.2, cap: 0.125, cost: 3.3, price: 7.75, onHand: 14, reorderAt: 6, ...pennock },
  { item: 'TB-M60', description: 'Tarnbeck, firm with cord', ...tarnbeck, size: 'Midsize', core: 0.6, profile: 'Round', mass: 62, massSpread: 2, upperDiameter: 0.962, lowerDiameter: 0.88, length: 10.5, balance: 4.15, cap: 0.125, fittedUpper: 0.97, fittedLower: 0.888, fittedButt: 0.6, fittedLayers: 1, cost: 3.7, price: 8.5, onHand: 15, reorderAt: 6, ...pennock },
];

// prettier-ignore
const softRubber: readonly Grip[] = [
  { item: 'OS-U58', description: 'Ostrel, soft rubber', ...ostrel, size: 'Undersize', core: 0.58, profile: 'Round', mass: 45, massSpread: 2, upperDiameter: 0.885, lowerDiameter: 0.8, length: 10.25, balance: 4.1, cap: 0.13, cost: 2.1, price: 5.5, onHand: 11, reorderAt: 4, ...orrin },
  { item: 'OS-S58', description: 'Ostrel, soft rubber', ...ostrel, size: 'Standard', core: 0.58, profile: 'Round', mass: 51, massSpread: 2, upperDiameter: 0.9, lowerDiameter: 0.82, length: 10.5, balance: 4.2, cap: 0.13, cost: 2.1, price: 5.5, onHand: 23, reorderAt: 13, ...orrin },
  { item: 'OS-S60', description: 'Ostrel, soft rubber', ...ostrel, size: 'Standard', core: 0.6, profile: 'Round', mass: 49, massSpread: 2, upperDiameter: 0.9, lowerDiameter: 0.82, length: 10.5, balance: 4.2, cap: 0.13, cost: 2.1, price: 5.5, onHand: 52, reorderAt: 26, ...orrin },
  { item: 'OS-S62', description: 'Ostrel, soft rubber', ...ostrel, size: 'Standard', core: 0.62, profile: 'Round', mass: 47, massSpread: 2, upperDiameter: 0.9, lowerDiameter: 0.82, length: 10.5, balance: 4.2, cap: 0.13, cost: 2.1, price: 5.5, onHand: 7, reorderAt: 3, ...orrin },
  { item: 'OS-M58', description: 'Ostrel, soft rubber', ...ostrel, size: 'Midsize', core: 0.58, profile: 'Round', mass: 68, massSpread: 2.5, upperDiameter: 0.965, lowerDiameter: 0.885, length: 10.5, balance: 4.15, cap: 0.13, cost: 2.6, price: 6.5, onHand: 12, reorderAt: 6, ...orrin },
  { item: 'OS-M60', description: 'Ostrel, soft rubber', ...ostrel, size: 'Midsize', core: 0.6, profile: 'Round', mass: 66, massSpread: 2.5, upperDiameter: 0.965, lowerDiameter: 0.885, length: 10.5, balance: 4.15, cap: 0.13, cost: 2.6, price: 6.5, onHand: 6, reorderAt: 13, ...orrin },
  { item: 'OS-J60', description: 'Ostrel, soft rubber', ...ostrel, size: 'Jumbo', core: 0.6, profile: 'Round', mass: 78, massSpread: 3, upperDiameter: 1.025, lowerDiameter: 0.955, length: 10.75, balance: 4.25, cap: 0.14, cost: 3.1, price: 7.5, onHand: 5, reorderAt: 3, ...orrin },
];

// prettier-ignore
const lightFoam: readonly Grip[] = [
  { item: 'HA-U60', description: 'Haddlow, light foam', ...haddlow, size: 'Undersize', core: 0.6, profile: 'Round', mass: 20, massSpread: 1, upperDiameter: 0.885, lowerDiameter: 0.805, length: 10.25, balance: 4.05, cap: 0.1, cost: 5.4, price: 12, onHand: 4, reorderAt: 2, ...tolland },
  { item: 'HA-S58', description: 'Haddlow, light foam', ...haddlow, size: 'Standard', core: 0.58, profile: 'Round', mass: 26.5, massSpread: 1, upperDiameter: 0.9, lowerDiameter: 0.825, length: 10.5, balance: 4.15, cap: 0.1, cost: 5.4, price: 12, onHand: 9, reorderAt: 4, ...tolland },
  { item: 'HA-S60', description: 'Haddlow, light foam', ...haddlow, size: 'Standard', core: 0.6, profile: 'Round', mass: 25, massSpread: 1, upperDiameter: 0.9, lowerDiameter: 0.825, length: 10.5, balance: 4.15, cap: 0.1, cost: 5.4, price: 12, onHand: 16, reorderAt: 6, ...tolland },
  { item: 'HA-M60', description: 'Haddlow, light foam', ...haddlow, size: 'Midsize', core: 0.6, profile: 'Round', mass: 33, massSpread: 1.5, upperDiameter: 0.96, lowerDiameter: 0.895, length: 10.5, balance: 4.15, cap: 0.1, cost: 5.9, price: 13, onHand: 8, reorderAt: 4, ...tolland },
  { item: 'HA-J62', description: 'Haddlow, light foam', ...haddlow, size: 'Jumbo', core: 0.62, profile: 'Round', mass: 40, massSpread: 1.5, upperDiameter: 1.02, lowerDiameter: 0.965, length: 10.5, balance: 4.15, cap: 0.1, cost: 6.4, price: 14, onHand: 3, reorderAt: 2, ...tolland },
];

// prettier-ignore
const ribbedTack: readonly Grip[] = [
  { item: 'PE-S58R', description: 'Pellow, tacky, ribbed', ...pellow, size: 'Standard', core: 0.58, profile: 'Ribbed', mass: 53, massSpread: 2, upperDiameter: 0.902, lowerDiameter: 0.818, length: 10.6, balance: 4.3, cap: 0.15, cost: 2.9, price: 7, onHand: 10, reorderAt: 4, ...pennock },
  { item: 'PE-S60R', description: 'Pellow, tacky, ribbed', ...pellow, size: 'Standard', core: 0.6, profile: 'Ribbed', mass: 51.5, massSpread: 2, upperDiameter: 0.902, lowerDiameter: 0.818, length: 10.6, balance: 4.3, cap: 0.15, cost: 2.9, price: 7, onHand: 13, reorderAt: 6, ...pennock },
  { item: 'PE-S62R', description: 'Pellow, tacky, ribbed', ...pellow, size: 'Standard', core: 0.62, profile: 'Ribbed', mass: 48.5, massSpread: 2, upperDiameter: 0.902, lowerDiameter: 0.818, length: 10.6, balance: 4.3, cap: 0.15, cost: 2.9, price: 7, onHand: 2, reorderAt: 2, ...pennock },
  { item: 'PE-M60R', description: 'Pellow, tacky, ribbed', ...pellow, size: 'Midsize', core: 0.6, profile: 'Ribbed', mass: 67, massSpread: 2.5, upperDiameter: 0.965, lowerDiameter: 0.882, length: 10.6, balance: 4.25, cap: 0.15, cost: 3.4, price: 8, onHand: 9, reorderAt: 4, ...pennock },
];

// prettier-ignore
const junior: readonly Grip[] = [
  { item: 'JR-U58', description: 'Junior, small hands', ...small, size: 'Undersize', core: 0.58, profile: 'Round', mass: 26, massSpread: 1.5, upperDiameter: 0.81, lowerDiameter: 0.745, length: 8.75, balance: 3.5, cap: 0.11, cost: 1.8, price: 4.5, onHand: 12, reorderAt: 6, ...orrin },
  { item: 'JR-U60', description: 'Junior, growing hands', ...small, size: 'Undersize', core: 0.6, profile: 'Round', mass: 32, massSpread: 1.5, upperDiameter: 0.85, lowerDiameter: 0.78, length: 9.5, balance: 3.8, cap: 0.11, cost: 1.8, price: 4.5, onHand: 12, reorderAt: 6, ...orrin },
];

// prettier-ignore
const putter: readonly Grip[] = [
  { item: 'PT-P58', description: 'Putter, pistol shape, flat front', ...pistol, size: 'Standard', core: 0.58, profile: 'Round', mass: 64, massSpread: 2, upperDiameter: 1.05, lowerDiameter: 0.82, length: 10.5, balance: 4.15, cap: 0.15, cost: 4.1, price: 11, onHand: 6, reorderAt: 2, ...tolland },
  { item: 'PT-E58', description: 'Putter, even width, flat front', ...evenWidth, size: 'Midsize', core: 0.58, profile: 'Round', mass: 76, massSpread: 2.5, upperDiameter: 1.13, lowerDiameter: 1.13, length: 10.5, balance: 4.25, cap: 0.16, cost: 6.2, price: 18, onHand: 4, reorderAt: 2, ...tolland },
  { item: 'PT-W58', description: 'Putter, oversize, even width', ...evenWidth, size: 'Jumbo', core: 0.58, profile: 'Round', mass: 110, massSpread: 3, upperDiameter: 1.35, lowerDiameter: 1.35, length: 10.5, balance: 4.25, cap: 0.2, cost: 9.5, price: 27, onHand: 3, reorderAt: 1, ...tolland },
  { item: 'PT-L58', description: 'Putter, long, slim', ...slim, size: 'Standard', core: 0.58, profile: 'Round', mass: 98, massSpread: 3, upperDiameter: 0.98, lowerDiameter: 0.94, length: 15, balance: 6.1, cap: 0.16, cost: 8.3, price: 24, onHand: 2, reorderAt: 1, ...tolland },
];

export const demoStock: readonly Grip[] = [
  ...firmCord,
  ...softRubber,
  ...lightFoam,
  ...ribbedTack,
  ...junior,
  ...putter,
];
