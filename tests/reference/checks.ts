/**
 * What others measured, published or practise, as data: each number with where it comes from.
 *
 * *practice*: common practice, no source. *memory*: from memory, unread. *derived*: arithmetic from the numbers beside it.
 */

/** Readings of whole clubs. */
export const postedReadings = {
  source: 'readings posted in an owners’ forum thread, possibly calculated',
  within: 0.15,
  clubs: [
    { grams: 460, balanceInches: 27.21, reading: 'D0.6' },
    { grams: 438, balanceInches: 27.66, reading: 'C8.7' },
    { grams: 418, balanceInches: 28.11, reading: 'C7.0' },
  ],
} as const;

/** The force that holds a club level at its butt. */
export const buttForce = {
  source: 'G. Solhaug, rational-golf.com, worked example',
  grams: 349.8,
  balanceMillimetres: 824,
  fulcrumMillimetres: 356,
  newtons: 4.51,
  within: 0.005,
} as const;

export const onePoint = {
  source: 'D. Tutelman, “Estimating Heft”',
  gramInches: 50,
  withinPart: 0.01,
} as const;

/** Rules of thumb; each holds within a tenth. The grip's 50 g is practice: the half inch moves what is not grip. */
export const handout = {
  source: 'club-making handout; common practice',
  withinPart: 0.1,
  grip: { addedGrams: 5, points: -1 },
  head: { addedGrams: 2, clubInches: 39, points: 1 },
  length: { addedInches: 0.5, clubGrams: 348, gripGrams: 50, points: 3 },
} as const;

export const lighterGrip = {
  source: 'published club-making blog, 2010',
  oldGrams: 50,
  newGrams: 25,
  points: 5,
  within: 0.3,
} as const;

export const heavierGrip = {
  source: 'common practice, no source',
  oldGrams: 50,
  newGrams: 63,
  reading: 'D3',
  becomes: 'D0.5',
  within: 0.2,
} as const;

/** Ten grams more at the grip, and what restores the reading. */
export const tenGramsMore = {
  source: 'common practice, no source',
  addedGrams: 10,
  driver: { inches: 45, lowGrams: 3, highGrams: 4 },
  iron: { inches: 37, grams: 4, within: 0.5 },
  totalGrams: 14,
  totalWithin: 1,
} as const;

export const biggerButt = {
  source: 'D. Eagar, “Grip Sizing”, 2009: .900 at 2 in; .920 where every thousandth shows',
  gripInches: 0.9,
  coreInches: 0.58,
  buttInches: 0.6,
  growthInches: 1 / 64,
  within: 0.005,
  /** derived: volume kept */
  byVolumeInches: 0.913,
  additiveInches: 0.92,
} as const;

/** The grip of .900 and its .600 core are practice. */
export const stretchedGrip = {
  source: 'published how-to article; the fitted diameter derived',
  gripInches: 0.9,
  coreInches: 0.6,
  lengthInches: 10.5,
  stretchInches: 0.75,
  shrinkInches: 1 / 64,
  within: 0.003,
  byVolumeInches: 0.8832,
} as const;

export const buildUpLayer = {
  source: 'D. Eagar, “Grip Sizing”, 2009',
  boreInches: 0.01,
} as const;

/** A weight under the fulcrum: the scale does not see it, the swing does. */
export const weightAtFulcrum = {
  source: 'MDPI Proceedings 2020, 49, 81; the inertia derived',
  grams: 22,
  fromButtMillimetres: 355,
  mostPoints: 0.05,
  inertiaKgCm2: 27.7,
  within: 0.05,
} as const;

export const wholeClubInertia = {
  source: 'parallel-axis theorem; public simulation parameters',
  kilograms: 0.394,
  centreMetres: 0.753,
  centralKgM2: 0.077,
  aboutAxisKgM2: 0.3004,
  within: 0.00005,
} as const;

/** Arithmetic of the formulas themselves, written out beside the sources above. */
export const derived = {
  source: 'derived',
  /** 213.5 oz·in is D0 (memory), one point 1.75 oz·in (memory), so A0 to G0 in oz·in */
  letterOunceInches: { A: 161, B: 178.5, C: 196, D: 213.5, E: 231, F: 248.5, G: 266 },
  /** 10.5 in × 2 in × 130 g/m² (mass per area: memory) */
  layerGrams: 1.76,
  /** ⅛ in of cap on a 374 g body */
  cap: { bodyGrams: 374, inches: 0.125, points: 0.94 },
  /** 28 in, 270 g, balancing at 18.6 in */
  belowScale: { grams: 270, balanceInches: 18.6, points: -67 },
  /** grams a point in the butt, 1 in from the cap */
  buttGramsPerPoint: 3.8,
  /** two lower-hand layers from 5 in down: 1.8 g, −0.2 point */
  lowerLayers: { layers: 2, startInches: 5, grams: 1.8, points: -0.2 },
  /** .620 core on a .580 butt */
  fillingLayers: { coreInches: 0.62, buttInches: 0.58, layers: 4 },
  /** a tip plug 2 in up the shaft needs 7–9 % more grams than the head */
  tipPlug: { shortestInches: 37, longestInches: 45, lowPart: 1.06, highPart: 1.1 },
} as const;

/** Hand length, wrist crease to fingertip, of 4082 men and 1986 women; 5th, 50th and 95th percentile in millimetres. */
export const handLengths = {
  source: 'ANSUR II, Natick/TR-15/007 (computed from the public data)',
  menMillimetres: { low: 177, median: 193, high: 210 },
  womenMillimetres: { low: 165, median: 180, high: 199 },
} as const;

/** Outside diameters at 2 in that moulded sizes usually have. */
export const mouldedSizes = {
  source: 'common practice, no source',
  standardInches: 0.9,
  midsizeInches: 0.96,
} as const;
