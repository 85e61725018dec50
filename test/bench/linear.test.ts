import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import {
  eliminate,
  pack,
  roomForPacked,
  solveEliminated,
  solvePacked,
} from '../../calculators/bench/linear.ts';
import { expectNear } from '../support/near.ts';

/** A network of places, few of which touch, through some of which air goes one way; heat enters at some. */
const network = fc
  .record({
    size: fc.integer({ min: 1, max: 12 }),
    links: fc.array(
      fc.record({
        from: fc.nat(11),
        to: fc.nat(11),
        conductance: fc.double({ min: 0.01, max: 100, noNaN: true }),
        oneWay: fc.boolean(),
      }),
      { maxLength: 20 },
    ),
    heat: fc.array(fc.double({ min: -500, max: 500, noNaN: true }), { minLength: 12, maxLength: 12 }),
  })
  .map(({ size, links, heat }) => {
    const A = new Float64Array(size * size);
    for (let row = 0; row < size; row++) A[row * size + row] = 1;
    const join = (one: number, other: number, conductance: number): void => {
      if (one >= size || other >= size || one === other) return;
      A[one * size + one]! += conductance;
      A[one * size + other]! -= conductance;
    };
    for (const { from, to, conductance, oneWay } of links) {
      join(to, from, conductance);
      if (!oneWay) join(from, to, conductance);
    }
    return { size, A, b: Float64Array.from(heat.slice(0, size)) };
  });

describe('solving a network', () => {
  it('eliminate(size, A) and its solution are those of ml-matrix', () => {
    fc.assert(
      fc.property(network, ({ size, A, b }) => {
        const rows = Array.from({ length: size }, (_, row) =>
          Array.from(A.subarray(row * size, (row + 1) * size)),
        );
        const expected = solve(new Matrix(rows), Matrix.columnVector(Array.from(b))).to1DArray();
        const found = Float64Array.from(b);
        eliminate(size, A);
        solveEliminated(size, A, found);
        const scale = Math.max(1, ...expected.map(Math.abs));
        expected.forEach((value, row) => expectNear(found[row] ?? NaN, value, 1e-9 * scale));
      }),
    );
  });

  it('solvePacked(size, packed, b) gives the same to the last digit as with the zeros in', () => {
    fc.assert(
      fc.property(network, ({ size, A, b }) => {
        eliminate(size, A);
        const [whole, few] = [Float64Array.from(b), Float64Array.from(b)];
        solveEliminated(size, A, whole);
        const packed = roomForPacked(size);
        pack(size, A, packed);
        solvePacked(size, packed, few);
        // Adding zero, so that a zero with a sign is a plain one.
        expect(few.map((value) => value + 0)).toEqual(whole.map((value) => value + 0));
      }),
    );
  });
});
