import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cablePerPipeAt,
  circumference,
  leastPitch,
  leftOverAt,
  longestCable,
  pitchFor,
  pitchInsideBend,
  wind,
  type Helix,
  type WindingInput,
} from '../calculators/electric/winding.ts';
import { OutOfRange } from '../calculators/range.ts';
import { expectNear } from './support/near.ts';

/** A 3 in pipe as common practice winds it. Lengths in m. */
const bench: WindingInput = { pipeDiameter: 0.0826, cableDiameter: 0.006, pipeLength: 12.9, cableLength: 38 };

function helixOf(input: WindingInput): Helix {
  const winding = wind(input);
  if (winding.outcome !== 'wound' && winding.outcome !== 'touching') throw new Error(winding.outcome);
  return winding;
}

const anyPipe = fc.record({
  pipeDiameter: fc.double({ min: 0.02, max: 0.3, noNaN: true }),
  cableDiameter: fc.double({ min: 0.002, max: 0.025, noNaN: true }),
  pipeLength: fc.double({ min: 0.5, max: 200, noNaN: true }),
});

/** A pipe with a cable that is longer than it, touching or not. */
const anyWinding = fc
  .tuple(anyPipe, fc.double({ min: 1.001, max: 30, noNaN: true }))
  .map(([pipe, ratio]) => ({ ...pipe, cableLength: pipe.pipeLength * ratio }));

type Point = readonly [x: number, y: number, z: number];
const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** The middle of the cable in space, `turn` full turns from the start: written down afresh, not taken from the code. */
const along =
  (radius: number, pitch: number) =>
  (turn: number): Point => [
    radius * Math.cos(2 * Math.PI * turn),
    radius * Math.sin(2 * Math.PI * turn),
    pitch * turn,
  ];

const radiusOf = ({ pipeDiameter, cableDiameter }: WindingInput): number =>
  (pipeDiameter + cableDiameter) / 2;

describe('a wound cable, checked in space', () => {
  it.each([
    ['3 in pipe as common practice has it', bench],
    [
      '110 mm drain, 50 m of cable on 13 m',
      { ...bench, pipeDiameter: 0.11, pipeLength: 13, cableLength: 50 },
    ],
    [
      'thin pipe, thick cable, steep',
      { pipeDiameter: 0.03, cableDiameter: 0.012, pipeLength: 5, cableLength: 6 },
    ],
  ])('%s: the curve is as long as the cable and ends where the pipe ends', (_, input) => {
    const { turns, pitch } = helixOf(input);
    const at = along(radiusOf(input), pitch);
    const steps = 400_000;
    let length = 0;
    for (let i = 0; i < steps; i++)
      length += distance(at((turns * i) / steps), at((turns * (i + 1)) / steps));
    // Chords are shorter than their arcs by a part in 24 (2π turns/steps)²: far below a millionth here.
    expectNear(length, input.cableLength, input.cableLength * 1e-6, 'length of the curve');
    expectNear(at(turns)[2], input.pipeLength, 1e-9, 'end of the curve');
  });

  it('the gap is the clear space between the cable and the nearest point of the next turn', () => {
    const { pitch, gap } = helixOf(bench);
    const at = along(radiusOf(bench), pitch);
    let nearest = Number.POSITIVE_INFINITY;
    for (let i = -5000; i <= 5000; i++) nearest = Math.min(nearest, distance(at(0), at(1 + i / 20_000)));
    // Through the air it is a little shorter than along the pipe, by the curve of the pipe.
    expectNear(nearest - bench.cableDiameter, gap, 0.01 * gap, 'gap');
    expect(nearest - bench.cableDiameter).toBeLessThanOrEqual(gap + 1e-9);
  });

  it('the bend is the radius of the circle through three points close together', () => {
    const { pitch, bendRadius, innerBendRadius } = helixOf(bench);
    const at = along(radiusOf(bench), pitch);
    const [a, b, c] = [at(-1e-4), at(0), at(1e-4)];
    const [ab, bc, ca] = [distance(a, b), distance(b, c), distance(c, a)];
    const half = (ab + bc + ca) / 2;
    const area = Math.sqrt(half * (half - ab) * (half - bc) * (half - ca));
    expectNear((ab * bc * ca) / (4 * area), bendRadius, bendRadius * 1e-3, 'bend radius');
    expectNear(innerBendRadius, bendRadius - 0.003, 1e-12);
  });
});

describe('what a cable does on a pipe', () => {
  it('38 m on 12.9 m of 3 in pipe lies about 100 mm from turn to turn (common practice: 75 to 100 mm)', () => {
    const { pitch, turns, gap } = helixOf(bench);
    expect(pitch).toBeGreaterThan(0.075);
    expect(pitch).toBeLessThan(0.101);
    expect(gap).toBeGreaterThan(0.075);
    expect(turns).toBeGreaterThan(120);
  });

  it('reaches its end straight when it is as long as the pipe', () => {
    expect(wind({ ...bench, cableLength: 12.9 })).toEqual({ outcome: 'straight' });
  });

  it('says how much is missing when it is shorter than the pipe, and does not throw', () => {
    const winding = wind({ ...bench, cableLength: 12 });
    expect(winding.outcome).toBe('too-short');
    if (winding.outcome === 'too-short') expectNear(winding.missing, 0.9, 1e-12);
  });

  it('says how much is too much when its turns would touch, and does not throw', () => {
    const most = longestCable(bench, 0);
    const winding = wind({ ...bench, cableLength: most + 2 });
    expect(winding.outcome).toBe('touching');
    if (winding.outcome === 'touching') {
      expectNear(winding.tooMuch, 2, 1e-9);
      expect(winding.gap).toBeLessThan(0);
    }
    expect(wind({ ...bench, cableLength: most - 0.01 }).outcome).toBe('wound');
  });

  it.each(['pipeDiameter', 'cableDiameter', 'pipeLength', 'cableLength'] as const)(
    'refuses a %s of nothing, less than nothing, or not a number',
    (name) => {
      for (const value of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
        expect(() => wind({ ...bench, [name]: value })).toThrow(OutOfRange);
      }
    },
  );
});

describe('laws of winding', () => {
  it('C² = L² + (n π (D + d))²: the triangle closes', () => {
    fc.assert(
      fc.property(anyWinding, (input) => {
        const { turns, pitch, turnLength } = helixOf(input);
        const around = circumference(input.pipeDiameter, input.cableDiameter);
        expectNear(Math.hypot(input.pipeLength, turns * around), input.cableLength, input.cableLength * 1e-9);
        expectNear(turns * pitch, input.pipeLength, input.pipeLength * 1e-9);
        expectNear(turns * turnLength, input.cableLength, input.cableLength * 1e-9);
      }),
    );
  });

  it('more cable on the same pipe lies closer, in more turns', () => {
    fc.assert(
      fc.property(anyWinding, (input) => {
        const less = helixOf(input);
        const more = helixOf({ ...input, cableLength: input.cableLength * 1.01 });
        expect(more.pitch).toBeLessThan(less.pitch);
        expect(more.gap).toBeLessThan(less.gap);
        expect(more.turns).toBeGreaterThan(less.turns);
      }),
    );
  });

  it('turns touch exactly when there is no gap', () => {
    fc.assert(
      fc.property(anyWinding, (input) => {
        const { outcome } = wind(input);
        const { gap } = helixOf(input);
        if (Math.abs(gap) > 1e-9) expect(outcome).toBe(gap < 0 ? 'touching' : 'wound');
      }),
    );
  });

  it('the longest cable for a gap has that gap, and the least pitch', () => {
    fc.assert(
      fc.property(anyPipe, fc.double({ min: 0, max: 0.2, noNaN: true }), (pipe, gap) => {
        const cableLength = longestCable(pipe, gap);
        const pitch = leastPitch(pipe.pipeDiameter, pipe.cableDiameter, gap);
        if (pitch === null) {
          expect(cableLength).toBe(pipe.pipeLength);
          return;
        }
        // Near a straight run a hair of cable is a long way of pitch.
        fc.pre(cableLength > pipe.pipeLength * 1.001);
        const helix = helixOf({ ...pipe, cableLength });
        expectNear(helix.gap, gap, 1e-9);
        expectNear(helix.pitch, pitch, pitch * 1e-6);
      }),
    );
  });

  it('pitch and cable per pipe are each other’s inverse', () => {
    fc.assert(
      fc.property(
        anyPipe,
        fc.double({ min: 1.01, max: 30, noNaN: true }),
        ({ pipeDiameter, cableDiameter }, ratio) => {
          const pitch = pitchFor(pipeDiameter, cableDiameter, ratio);
          expect(pitch).not.toBeNull();
          expectNear(cablePerPipeAt(pipeDiameter, cableDiameter, pitch ?? Number.NaN), ratio, ratio * 1e-9);
        },
      ),
    );
    expect(pitchFor(0.1, 0.006, 1)).toBeNull();
  });

  it('at the even pitch nothing is left over; wider leaves cable, closer leaves pipe', () => {
    fc.assert(
      fc.property(anyWinding, (input) => {
        const { pitch } = helixOf(input);
        const even = leftOverAt(input, pitch);
        expectNear(even.cable, 0, input.cableLength * 1e-9);
        expectNear(even.pipe, 0, input.pipeLength * 1e-9);
        const wide = leftOverAt(input, pitch * 1.1);
        expect(wide.cable).toBeGreaterThan(0);
        expect(wide.pipe).toBe(0);
        const close = leftOverAt(input, pitch * 0.9);
        expect(close.pipe).toBeGreaterThan(0);
        expect(close.cable).toBe(0);
      }),
    );
  });

  it('turns bunch on the inner side of a bend: half the pitch where the bend is twice the helix radius', () => {
    expectNear(pitchInsideBend(0.1, 0.11, 0.11), 0.05, 1e-12);
    expect(pitchInsideBend(0.1, 0.11, 0.05)).toBe(0);
  });
});
