import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../site/drawing/drawing.ts';
import { pathOf } from '../site/drawing/path.ts';

/** The ends of all strokes of a path, read back by the rules of SVG 2, 9.3, for the letters that are used. */
function endsOf(path: string): Point[] {
  const ends: Point[] = [];
  let [x, y] = [0, 0];
  let start: Point = [0, 0];
  for (const [, letter = '', numbers = ''] of path.matchAll(/([a-z])([^a-z]*)/gu)) {
    const values = [...numbers.matchAll(/-?(?:\d+\.?\d*|\.\d+)/gu)].map(([text]) => Number(text));
    const each = { m: 2, l: 2, c: 6, a: 7, z: 0 }[letter] ?? Number.NaN;
    if (letter === 'z') [x, y] = start;
    for (let index = 0; each > 0 && index < values.length; index += each) {
      x += values[index + each - 2]!;
      y += values[index + each - 1]!;
      ends.push([x, y]);
      if (letter === 'm') start = [x, y];
    }
  }
  return ends;
}

const place = fc.double({ min: -300, max: 300, noNaN: true });
const point = fc.tuple(place, place);
const lines = fc.record({
  kind: fc.constant('line' as const),
  points: fc.array(point, { minLength: 1, maxLength: 60 }),
  closed: fc.boolean(),
});
const curves = fc
  .array(fc.tuple(point, point, point), { minLength: 1, maxLength: 9 })
  .chain((bends) => point.map((start) => ({ kind: 'curve' as const, points: [start, ...bends.flat()] })));
const circles = fc.record({
  kind: fc.constant('circle' as const),
  at: point,
  radius: fc.double({ min: 0.01, max: 50, noNaN: true }),
});

describe('a path told in steps', () => {
  it('leads through the same points, to half a hundredth of a millimetre, however long it is', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(lines, curves), { maxLength: 8 }), (marks) => {
        const wanted = marks.flatMap((mark) =>
          mark.kind === 'curve' ? mark.points.filter((_, index) => index % 3 === 0) : mark.points,
        );
        const ends = endsOf(pathOf(marks));
        expect(ends).toHaveLength(wanted.length);
        ends.forEach(([x, y], index) => {
          expect(Math.abs(x - wanted[index]![0])).toBeLessThan(0.00501);
          expect(Math.abs(y - wanted[index]![1])).toBeLessThan(0.00501);
        });
      }),
    );
  });

  it('comes back from a circle to where that began', () => {
    fc.assert(
      fc.property(circles, lines, (circle, after) => {
        const ends = endsOf(pathOf([circle, after]));
        expect(Math.abs(ends[0]![0] - ends[2]![0])).toBeLessThan(0.00501);
        expect(Math.abs(ends[3]![0] - after.points[0]![0])).toBeLessThan(0.00501);
      }),
    );
  });

  it('makes equal strokes equal words', () => {
    const stroke = (x: number) => ({
      kind: 'line' as const,
      points: [
        [x, 0.3],
        [x + 1.3, 1.6],
      ] as const,
    });
    expect(pathOf([stroke(1), stroke(2.3), stroke(3.6)])).toBe('m1 .3l1.3 1.3m0-1.3l1.3 1.3m0-1.3l1.3 1.3');
  });
});
