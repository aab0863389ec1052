/**
 * Data and certified values of the Statistical Reference Datasets of NIST (itl.nist.gov/div898/strd, linear least squares; a work of the United
 * States government), read as public test suites reproduce them.
 */
export interface Certified {
  readonly rows: readonly (readonly number[])[];
  readonly measured: readonly number[];
  readonly certified: {
    readonly coefficients: readonly number[];
    readonly errors: readonly number[];
    readonly deviation: number;
    readonly freedom: number;
  };
}

// prettier-ignore
const norrisX = [
  0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6,
  556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
];
// prettier-ignore
const norrisY = [
  0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8,
  557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
];

/** Calibration of ozone monitors: a line. */
export const norris: Certified = {
  rows: norrisX.map((x) => [1, x]),
  measured: norrisY,
  certified: {
    coefficients: [-0.262323073774029, 1.00211681802045],
    errors: [0.232818234301152, 0.429796848199937e-3],
    deviation: 0.884796396144373,
    freedom: 34,
  },
};

/** A line through the origin. */
export const noInt1: Certified = {
  rows: [60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70].map((x) => [x]),
  measured: [130, 131, 132, 133, 134, 135, 136, 137, 138, 139, 140],
  certified: {
    coefficients: [2.07438016528926],
    errors: [0.165289256198347e-1],
    deviation: 3.56753034006338,
    freedom: 10,
  },
};

/** Six columns that rise together: hard to tell apart. */
// prettier-ignore
const longleyRows = [
  [83.0, 234289, 2356, 1590, 107608, 1947], [88.5, 259426, 2325, 1456, 108632, 1948], [88.2, 258054, 3682, 1616, 109773, 1949],
  [89.5, 284599, 3351, 1650, 110929, 1950], [96.2, 328975, 2099, 3099, 112075, 1951], [98.1, 346999, 1932, 3594, 113270, 1952],
  [99.0, 365385, 1870, 3547, 115094, 1953], [100.0, 363112, 3578, 3350, 116219, 1954], [101.2, 397469, 2904, 3048, 117388, 1955],
  [104.6, 419180, 2822, 2857, 118734, 1956], [108.4, 442769, 2936, 2798, 120445, 1957], [110.8, 444546, 4681, 2637, 121950, 1958],
  [112.6, 482704, 3813, 2552, 123366, 1959], [114.2, 502601, 3931, 2514, 125368, 1960], [115.7, 518173, 4806, 2572, 127852, 1961],
  [116.9, 554894, 4007, 2827, 130081, 1962],
];

export const longley: Certified = {
  rows: longleyRows.map((row) => [1, ...row]),
  measured: [
    60323, 61122, 60171, 61187, 63221, 63639, 64989, 63761, 66019, 67857, 68169, 66513, 68655, 69564, 69331, 70551,
  ],
  certified: {
    coefficients: [
      -3482258.63459582, 15.0618722713733, -0.35819179292591e-1, -2.02022980381683, -1.03322686717359,
      -0.511041056535807e-1, 1829.15146461355,
    ],
    errors: [
      890420.383607373, 84.9149257747669, 0.334910077722432e-1, 0.488399681651699, 0.214274163161675, 0.22607320006937,
      455.478499142212,
    ],
    deviation: 304.854073561965,
    freedom: 9,
  },
};
