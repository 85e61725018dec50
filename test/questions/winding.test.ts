import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import winding from '../../calculators/questions/winding.ts';
import { codesOf, valueOf } from '../support/answers.ts';
import { anyBench, changed, type BenchChanges } from '../support/benches.ts';
import { expectNear } from '../support/near.ts';
import { situation } from '../support/situations.ts';

/** 4 in thin-wall drain (107.061 mm) with a 6 mm cable of 5 W/ft, on ten metres of loop. */
const wound = (cablePerPipe: number, more: BenchChanges['cable'] = {}): BenchChanges => ({
  loop: { pipe: 'thin-wall-4in', length: 10 },
  cable: { diameter: 0.006, length: 10 * cablePerPipe, powerPerLength: 5 / 0.3048, ...more },
});
const answer = (changes: BenchChanges) => winding.compute(situation(changes));

describe('winding', () => {
  // Table of helix geometry: pitch, cable per pipe and power per length of pipe, worked out beforehand with another
  // program from r = √(1 + (π (D + d) / p)²); printed to four decimals and to 0.01 W/m.
  it.each([
    { pitch: 0.05, ratio: 7.1739, power: 117.68 },
    { pitch: 0.1, ratio: 3.69, power: 60.53 },
    { pitch: 0.15, ratio: 2.5704, power: 42.17 },
    { pitch: 0.3, ratio: 1.5498, power: 25.42 },
  ])('lays $ratio m of cable on a metre of pipe $pitch m from turn to turn', ({ pitch, ratio, power }) => {
    const { figures } = answer(wound(ratio));
    // Half of the ratio's last digit moves the pitch by up to 0.02 mm.
    expectNear(valueOf(figures.pitch), pitch, 2e-5);
    expectNear(valueOf(figures.cablePerPipe), ratio, 5e-5);
    expectNear(valueOf(figures.powerPerPipeLength), power, 0.006);
    expectNear(valueOf(figures.turns), 10 / pitch, 0.02);
  });

  // Installation manual of a maker of heating cables (seen, address withheld): to give 12 W/ft with an 8 W/ft cable,
  // lay 1.5 ft of it on each foot of pipe.
  it('needs half as much cable again to give 12 W/ft with an 8 W/ft cable', () => {
    const { figures } = answer(wound(1.5, { powerPerLength: 8 / 0.3048 }));
    expectNear(valueOf(figures.powerPerPipeLength), 12 / 0.3048, 1e-9);
  });

  // Common practice, no published source: 75 to 100 mm between turns on 3 in pipe. What it is worth with a common
  // cable of 5 W/ft: the 46 W/m of 600 W on a 13 m loop must lie inside.
  it('finds 600 W on a 13 m loop of 3 in pipe near common practice', () => {
    const power = (length: number, pitch: number): number => {
      const around = Math.PI * (3.25 * 0.0254 + 0.006);
      return (length * Math.hypot(1, around / pitch) * 5) / 0.3048;
    };
    expect(power(13, 0.1)).toBeLessThan(650);
    expect(power(13, 0.075)).toBeGreaterThan(600);
    const { figures } = answer({
      loop: { pipe: 'thin-wall-3in', length: 13 },
      cable: { diameter: 0.006, length: 600 / (5 / 0.3048), powerPerLength: 5 / 0.3048 },
    });
    expect(valueOf(figures.pitch)).toBeGreaterThan(0.075);
    expect(valueOf(figures.pitch)).toBeLessThan(0.11);
  });

  it('measures the gap square across the turns', () => {
    // 3-4-5: pitch 3/4 of the circumference, so that a turn makes 5/4 of it and the distance across is 3/5 of it.
    const around = Math.PI * (4.215 * 0.0254 + 0.006);
    const { figures } = answer(wound(5 / 3));
    expectNear(valueOf(figures.pitch), 0.75 * around, 1e-9);
    expectNear(valueOf(figures.gap), 0.6 * around - 0.006, 1e-9);
    // Curvature of a helix, cos²(slope) / R, with R the radius to the middle of the cable.
    expectNear(valueOf(figures.bendRadius), (around / (2 * Math.PI)) * (5 / 4) ** 2 - 0.003, 1e-9);
  });

  it('has no turns where the cable is just as long as the loop or too short', () => {
    for (const ratio of [1, 0.9]) {
      const { figures } = answer(wound(ratio));
      expect([figures.pitch, figures.gap, figures.turns, figures.bendRadius]).toEqual([
        null,
        null,
        null,
        null,
      ]);
      expectNear(valueOf(figures.powerPerPipeLength), (ratio * 5) / 0.3048, 1e-9);
    }
  });

  it('has no gap where there is less than one turn', () => {
    const { figures, warnings } = answer({
      loop: { pipe: 'drain-160', length: 0.5 },
      cable: { length: 0.51, leastGap: 0.2 },
    });
    expect(valueOf(figures.turns)).toBeLessThan(1);
    expect(figures.gap).toBeNull();
    expect(warnings.map(({ code }) => code)).not.toContain('gap-too-small');
  });

  it('has no least pitch where the gap is wider than the pipe is around', () => {
    const { figures } = answer({
      loop: { pipe: 'schedule40-2in' },
      cable: { diameter: 0.025, leastGap: 0.2, smallestBend: 0.02 },
    });
    expect(valueOf(answer({}).figures.leastPitch)).toBeGreaterThan(0.031);
    // 2.375 in and a 25 mm cable are 268 mm around; 25 and 200 mm fit.
    expect(figures.leastPitch).not.toBeNull();
    const thin = answer({ loop: { pipe: 'schedule40-2in' }, cable: { diameter: 0.002, leastGap: 0.2 } });
    // 195.8 mm around and 202 mm asked.
    expect(thin.figures.leastPitch).toBeNull();
    expectNear(valueOf(thin.figures.longestCable), 12.3, 1e-9);
  });

  it('warns as far as there is a reason, and no further', () => {
    const of = (changes: BenchChanges): string[] => codesOf(answer(changes));
    expect(of({})).toEqual([]);
    expect(of({ loop: { length: 40 } })).toEqual(['stop cable-shorter-than-loop']);
    expect(of({ cable: { length: 300 }, loop: { length: 4 } })).toEqual(['stop turns-touch']);
    expect(of({ cable: { length: 160 } })).toEqual(['stop gap-too-small']);
    expect(of({ cable: { length: 144 } })).toEqual([]);
    expect(of({ cable: { smallestBend: 0.07 } })).toEqual(['stop bend-too-tight']);
    expect(of({ cable: { length: 14 } })).toEqual(['care pitch-wide']);
    expect(of({ cable: { length: 12.3 }, loop: { length: 12.3 } })).toEqual(['care pitch-wide']);
  });

  it('holds to the limits themselves', () => {
    const of = (changes: BenchChanges): string[] => codesOf(answer(changes));
    const { figures } = answer({});
    const gap = valueOf(figures.gap);
    expect(of({ cable: { leastGap: gap } })).toEqual([]);
    // A millimetre can be read off a ruler, a twentieth of one cannot.
    expect(of({ cable: { leastGap: gap + 0.00005 } })).toEqual([]);
    expect(of({ cable: { leastGap: gap + 0.001 } })).toEqual(['stop gap-too-small']);
    const bend = valueOf(figures.bendRadius);
    expect(of({ cable: { smallestBend: bend } })).toEqual([]);
    expect(of({ cable: { smallestBend: bend + 0.001 } })).toEqual(['stop bend-too-tight']);
    const around = Math.PI * (4.215 * 0.0254 + 0.006);
    const ratioAt = (pitch: number): number => Math.hypot(1, around / pitch);
    expect(of(wound(ratioAt(0.299)))).toEqual([]);
    expect(of(wound(ratioAt(0.301)))).toEqual(['care pitch-wide']);
  });

  it('takes the longest cable at exactly the least gap, and no more', () => {
    fc.assert(
      fc.property(anyBench, (bench) => {
        const at = (length: number) =>
          winding.compute({ ...situation(), bench: changed(bench, { cable: { length } }) });
        const longest = valueOf(winding.compute({ ...situation(), bench }).figures.longestCable);
        const fitting = at(longest);
        fc.pre(fitting.figures.gap !== null);
        expectNear(valueOf(fitting.figures.gap), bench.cable.leastGap, 1e-6);
        expectNear(valueOf(fitting.figures.pitch), valueOf(fitting.figures.leastPitch), 1e-5);
        expect(codesOf(fitting)).not.toContain('stop gap-too-small');
        const tooLong = codesOf(at(longest * 1.05));
        const refused = tooLong.includes('stop gap-too-small') || tooLong.includes('stop turns-touch');
        // Below about a millimetre a gap that is a twentieth too small may be within what a ruler shows.
        expect(refused || bench.cable.leastGap + bench.cable.diameter < 0.0025).toBe(true);
      }),
    );
  });
});
