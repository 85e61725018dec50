/**
 * Nonlinear problems of the Statistical Reference Datasets of the National Institute of Standards and Technology
 * (NIST StRD, nonlinear regression), from copies of its files, with the values that it certifies to eleven digits.
 */
export interface ReferenceFit {
  readonly name: string;
  /** Response and predictor, as printed. */
  readonly data: readonly (readonly [y: number, x: number])[];
  readonly model: (b: ArrayLike<number>, x: number) => number;
  readonly starts: readonly (readonly number[])[];
  readonly parameters: readonly number[];
  /** Standard deviations of the parameters. */
  readonly deviations: readonly number[];
  readonly sumOfSquares: number;
}

const at = (b: ArrayLike<number>, index: number): number => b[index] ?? NaN;

export const referenceFits: readonly ReferenceFit[] = [
  {
    name: 'Misra1a (lower difficulty)',
    data: [
      [10.07, 77.6],
      [14.73, 114.9],
      [17.94, 141.1],
      [23.93, 190.8],
      [29.61, 239.9],
      [35.18, 289.0],
      [40.02, 332.8],
      [44.82, 378.4],
      [50.76, 434.8],
      [55.05, 477.3],
      [61.01, 536.8],
      [66.4, 593.1],
      [75.47, 689.1],
      [81.78, 760.0],
    ],
    model: (b, x) => at(b, 0) * (1 - Math.exp(-at(b, 1) * x)),
    starts: [
      [500, 0.0001],
      [250, 0.0005],
    ],
    parameters: [2.3894212918e2, 5.5015643181e-4],
    deviations: [2.7070075241, 7.2668688436e-6],
    sumOfSquares: 1.2455138894e-1,
  },
  {
    name: 'Rat43 (higher difficulty)',
    data: [
      [16.08, 1],
      [33.83, 2],
      [65.8, 3],
      [97.2, 4],
      [191.55, 5],
      [326.2, 6],
      [386.87, 7],
      [520.53, 8],
      [590.03, 9],
      [651.92, 10],
      [724.93, 11],
      [699.56, 12],
      [689.96, 13],
      [637.56, 14],
      [717.41, 15],
    ],
    model: (b, x) => at(b, 0) / (1 + Math.exp(at(b, 1) - at(b, 2) * x)) ** (1 / at(b, 3)),
    starts: [
      [100, 10, 1, 1],
      [700, 5, 0.75, 1.3],
    ],
    parameters: [6.996415127e2, 5.2771253025, 7.5962938329e-1, 1.2792483859],
    deviations: [1.6302297817e1, 2.0828735829, 1.9566123451e-1, 6.8761936385e-1],
    sumOfSquares: 8.786404908e3,
  },
  {
    name: 'MGH09 (higher difficulty)',
    data: [
      [0.1957, 4],
      [0.1947, 2],
      [0.1735, 1],
      [0.16, 0.5],
      [0.0844, 0.25],
      [0.0627, 0.167],
      [0.0456, 0.125],
      [0.0342, 0.1],
      [0.0323, 0.0833],
      [0.0235, 0.0714],
      [0.0246, 0.0625],
    ],
    model: (b, x) => (at(b, 0) * (x * x + x * at(b, 1))) / (x * x + x * at(b, 2) + at(b, 3)),
    starts: [
      [25, 39, 41.5, 39],
      [0.25, 0.39, 0.415, 0.39],
    ],
    parameters: [1.9280693458e-1, 1.9128232873e-1, 1.2305650693e-1, 1.3606233068e-1],
    deviations: [1.1435312227e-2, 1.9633220911e-1, 8.0842031232e-2, 9.0025542308e-2],
    sumOfSquares: 3.0750560385e-4,
  },
  {
    name: 'Eckerle4 (higher difficulty)',
    data: [
      [0.0001575, 400],
      [0.0001699, 405],
      [0.000235, 410],
      [0.0003102, 415],
      [0.0004917, 420],
      [0.000871, 425],
      [0.0017418, 430],
      [0.00464, 435],
      [0.0065895, 436.5],
      [0.0097302, 438],
      [0.0149002, 439.5],
      [0.023731, 441],
      [0.0401683, 442.5],
      [0.0712559, 444],
      [0.1264458, 445.5],
      [0.2073413, 447],
      [0.2902366, 448.5],
      [0.3445623, 450],
      [0.3698049, 451.5],
      [0.3668534, 453],
      [0.3106727, 454.5],
      [0.2078154, 456],
      [0.1164354, 457.5],
      [0.0616764, 459],
      [0.03372, 460.5],
      [0.0194023, 462],
      [0.0117831, 463.5],
      [0.0074357, 465],
      [0.0022732, 470],
      [0.00088, 475],
      [0.0004579, 480],
      [0.0002345, 485],
      [0.0001586, 490],
      [0.0001143, 495],
      [0.000071, 500],
    ],
    model: (b, x) => (at(b, 0) / at(b, 1)) * Math.exp(-0.5 * ((x - at(b, 2)) / at(b, 1)) ** 2),
    starts: [
      [1, 10, 500],
      [1.5, 5, 450],
    ],
    parameters: [1.5543827178, 4.0888321754, 4.5154121844e2],
    deviations: [1.5408051163e-2, 4.6803020753e-2, 4.6800518816e-2],
    sumOfSquares: 1.4635887487e-3,
  },
];
