import fc from 'fast-check';
import { inverse as inverseBy, Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { chiSquareTail } from '../../calculators/bench/chi-square.ts';
import { inverse, leastSquares, NoMinimum, normalMatrix } from '../../calculators/bench/least-squares.ts';
import { referenceFits } from '../published/least-squares.ts';
import { expectNear } from '../support/near.ts';

describe('NIST StRD: certified fits from both of their starts', () => {
  for (const { name, data, model, starts, parameters, deviations, sumOfSquares } of referenceFits)
    it.each(starts.map((start) => [start]))(`${name}, from %j`, (start) => {
      const residuals = (b: Float64Array) => Float64Array.from(data, ([y, x]) => y - model(b, x));
      const { x, sum, jacobian } = leastSquares({ residuals }, start, { mostRounds: 2000 });
      // Certified to eleven digits; seven are asked for, as the Jacobian is by differences.
      parameters.forEach((value, index) => expectNear(x[index] ?? NaN, value, 1e-7 * Math.abs(value), name));
      expectNear(sum, sumOfSquares, 1e-9 * sumOfSquares, 'sum of squares');
      // s² (Jᵀ J)⁻¹; the Jacobian is by differences, which gives half of its digits.
      const size = parameters.length;
      const covariance = inverse(size, normalMatrix(jacobian, size));
      const variance = sum / (data.length - size);
      deviations.forEach((value, index) => {
        const deviation = Math.sqrt(variance * (covariance[index * (size + 1)] ?? NaN));
        expectNear(deviation, value, 1e-5 * value, `deviation of parameter ${index + 1}`);
      });
    });
});

const entry = fc.double({ min: -3, max: 3, noNaN: true });
const regularised = fc.integer({ min: 1, max: 6 }).chain((size) =>
  fc.record({
    size: fc.constant(size),
    rows: fc.array(fc.array(entry, { minLength: size, maxLength: size }), { minLength: 1, maxLength: 8 }),
    read: fc.array(entry, { minLength: 8, maxLength: 8 }),
  }),
);

describe('a regularised straight problem agrees with ml-matrix', () => {
  it('in its solution and its covariance', () => {
    fc.assert(
      fc.property(regularised, ({ size, rows, read }) => {
        const residuals = (x: Float64Array) =>
          Float64Array.from([
            ...rows.map((row, index) =>
              row.reduce((sum, one, i) => sum + one * (x[i] ?? 0), -(read[index] ?? 0)),
            ),
            ...x,
          ]);
        const { x, jacobian } = leastSquares({ residuals }, new Array<number>(size).fill(0));
        const A = new Matrix(rows);
        const N = A.transpose().mmul(A).add(Matrix.eye(size));
        const b = A.transpose().mmul(Matrix.columnVector(read.slice(0, rows.length)));
        const [exact, spread] = [solve(N, b), inverseBy(N)];
        const own = inverse(size, normalMatrix(jacobian, size));
        for (let i = 0; i < size; i++) {
          expectNear(x[i] ?? NaN, exact.get(i, 0), 1e-7);
          for (let j = 0; j < size; j++) expectNear(own[i * size + j] ?? NaN, spread.get(i, j), 1e-6);
        }
      }),
      { numRuns: 100 },
    );
  });
});

it('a sum that never settles is named, not handed out', () => {
  const residuals = (x: Float64Array) => Float64Array.from([Math.exp(-(x[0] ?? 0))]);
  expect(() => leastSquares({ residuals }, [0], { mostRounds: 20 })).toThrow(NoMinimum);
});

describe('chi-square', () => {
  // Upper 5 % and 1 % points (Abramowitz and Stegun, table 26.8, and every book of statistics).
  it.each([
    [1, 3.841, 6.635],
    [2, 5.991, 9.21],
    [3, 7.815, 11.345],
    [4, 9.488, 13.277],
    [5, 11.07, 15.086],
    [6, 12.592, 16.812],
  ])('with %i degrees of freedom is above %f in 5 %% of cases, above %f in 1 %%', (count, five, one) => {
    // The points are printed to three decimals, where the tail falls by less than half its value for each whole one.
    expectNear(chiSquareTail(five, count), 0.05, 0.05 * 0.0005 + 2e-7);
    expectNear(chiSquareTail(one, count), 0.01, 0.01 * 0.0005 + 2e-7);
  });

  it('is certain to be above nothing', () => {
    for (const count of [1, 2, 3, 4, 5]) expectNear(chiSquareTail(0, count), 1, 1e-8);
  });
});
