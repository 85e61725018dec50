import { describe, expect, it } from 'vitest';
import { loopAboveAir } from '../../calculators/bench/loop-above-air.ts';
import sheath from '../../calculators/questions/sheath.ts';
import { codesOf, valueOf } from '../support/answers.ts';
import type { BenchChanges } from '../support/benches.ts';
import { expectNear } from '../support/near.ts';
import { situation, soundSituation } from '../support/situations.ts';

const answer = (changes: BenchChanges) => sheath.compute(situation(changes));
type Name = keyof ReturnType<typeof answer>['figures'];
const value = (changes: BenchChanges, name: Name): number => valueOf(answer(changes).figures[name]);

describe('sheath', () => {
  // Engineering tables of bare horizontal pipes at 50 °C in still air at 20 °C, emissivity 0.9, printed to 1 W/m. The
  // films' own scatter is larger than that; 3.5 % is what the correlation and that table are apart over these sizes.
  it.each([
    { diameter: 0.0889, watts: 95 },
    { diameter: 0.1016, watts: 107 },
    { diameter: 0.1143, watts: 119 },
    { diameter: 0.1397, watts: 142 },
    { diameter: 0.1683, watts: 167 },
  ])('stands a bare pipe of $diameter m 30 K above the air at $watts W/m', ({ diameter, watts }) => {
    // A wall that hinders nothing, and a fluid that clings to it.
    const bare = { outsideDiameter: diameter, wall: 1e-6, conductivity: 400 };
    expectNear(loopAboveAir(bare, 1e9, watts, 20), 30, 0.035 * 30);
  });

  // Worked by hand for 16 W/m of 6 mm cable under foil tape on 110 × 3.2 mm PVC, loop and air at 4.5 °C.
  // To the fluid: contact 150 W/(m²·K) over 6 mm, wall 3.2 mm of 0.17 W/(m·K) and inside film 100 W/(m²·K) over three
  // times that: 1 / (1.1111 + 1.0458 + 0.5556) = 0.36866 W/(m·K).
  // To the air, Çengel's table A-15 at 20 °C: Ra 721, Churchill and Chu Nu 2.447, h 10.25; foil 0.1 × 5.72; over
  // (π − 1) 6 mm: 0.1390 W/(m·K). That table's conductivity is 2.3 % below the one used here, so 3 % of that conductance.
  it('divides the heat as a hand calculation does', () => {
    const { figures } = answer({ control: { setPoint: 4.5 } });
    const [toFluid, toAir] = [0.36866, 0.139];
    const apart = 0.03 * toAir;
    expectNear(
      valueOf(figures.waterShare),
      toFluid / (toFluid + toAir),
      (toFluid * apart) / (toFluid + toAir) ** 2,
    );
    expectNear(
      valueOf(figures.inService),
      4.5 + 16 / (toFluid + toAir),
      (16 * apart) / (toFluid + toAir) ** 2,
    );
  });

  // By hand for 16 W/m of 6 mm cable in still air at 30 °C, Çengel's table A-15 at 60 °C: k 0.02808, ν 1.896e-5, Pr 0.7202.
  // Under foil at 67 K: Ra 844, Churchill and Chu Nu 2.524, h 11.81, foil 0.87; bare at 47 K: Ra 607, Nu 2.359, h 11.04, sheath
  // 7.14 W/(m²·K). Over π × 6 mm that is 66.9 and 46.7 K; the table's conductivity is 2.3 % below the one used here.
  it('takes a loose turn to have on what it had on the pipe: foil leaves it the hotter', () => {
    const at = (contact: 'taped' | 'bare') =>
      value({ cable: { contact }, loop: { hottest: 30 } }, 'inFreeAir');
    expectNear(at('taped'), 30 + 66.9, 0.03 * 66.9);
    expectNear(at('bare'), 30 + 46.7, 0.03 * 46.7);
    const crossed = (contact: 'taped' | 'bare') => value({ cable: { contact } }, 'atCrossing');
    expect(crossed('taped')).toBeGreaterThan(crossed('bare'));
  });

  it('lifts the loop above the air by nothing without heat, and more with more', () => {
    const pipe = { outsideDiameter: 0.11, wall: 0.0032, conductivity: 0.17 };
    const lifts = [0, 10, 20, 40, 80].map((power) => loopAboveAir(pipe, 100, power, 2));
    expect(lifts[0]).toBe(0);
    expect(lifts).toEqual([...lifts].sort((one, other) => one - other));
    // Films grow livelier, so twice the power gives less than twice the lift.
    expect(lifts[4]).toBeLessThan(2 * lifts[3]!);
  });

  it('is warmer the worse the cable is cooled: on the pipe, loose, crossing', () => {
    const { figures } = answer({});
    const ladder = (['inService', 'atHottest', 'inFreeAir', 'atCrossing'] as const).map((name) =>
      valueOf(figures[name]),
    );
    expect(ladder).toEqual([...ladder].sort((one, other) => one - other));
    expect(valueOf(figures.pipeAtHottest)).toBeLessThan(valueOf(figures.atHottest));
    // Plastic behind which there is no water is warmer by tens of kelvin than plastic that it cools.
    const sameLoop = { loop: { fillTemperature: 20, hottest: 20 } };
    expect(value(sameLoop, 'pipeWhenEmpty')).toBeGreaterThan(value(sameLoop, 'pipeAtHottest') + 20);
  });

  it('is cooler under foil tape, with less power, and self-regulating', () => {
    const bare = value({ cable: { contact: 'bare' } }, 'inService');
    expect(value({ cable: { contact: 'taped' } }, 'inService')).toBeLessThan(bare);
    expect(value({ cable: { powerPerLength: 8 } }, 'inService')).toBeLessThan(value({}, 'inService'));
    expect(value({ cable: { kind: 'self-regulating' } }, 'atHottest')).toBeLessThan(value({}, 'atHottest'));
  });

  it('brings more of the heat into the water under foil tape', () => {
    expect(value({ cable: { contact: 'taped' } }, 'waterShare')).toBeGreaterThan(
      value({ cable: { contact: 'bare' } }, 'waterShare'),
    );
  });

  it('gives each figure inside its range, with the contact to blame for most of it', () => {
    for (const [name, figure] of Object.entries(answer({}).figures)) {
      expect(figure, name).not.toBeNull();
      const { value: middle, low = NaN, high = NaN } = figure!;
      expect(low, name).toBeLessThan(middle);
      expect(high, name).toBeGreaterThan(middle);
    }
  });

  it('lets the loop stand above a sensor in the air, so that the sheath is warmer than with one on the loop', () => {
    const on = (sensor: 'loop' | 'air' | 'pot') => value({ control: { sensor } }, 'inService');
    expect(on('air')).toBeGreaterThan(on('loop') + 5);
    expect(on('pot')).toBe(on('air'));
  });

  it('cuts the power where the sheath, or else the pipe, comes to its limit', () => {
    const bySheath: BenchChanges = { cable: { highestSheath: 60 } };
    const limit = value(bySheath, 'limitThermostat');
    const at = { ...bySheath, loop: { hottest: limit } };
    expectNear(value(at, 'atHottest'), 60, 0.01);
    expect(value(at, 'pipeAtHottest')).toBeLessThan(60);
    const byPipe: BenchChanges = { cable: { highestSheath: 150 } };
    const lower = value(byPipe, 'limitThermostat');
    expectNear(value({ ...byPipe, loop: { hottest: lower } }, 'pipeAtHottest'), 60, 0.01);
  });

  it('warns as far as there is a reason, and no further', () => {
    const of = (changes: BenchChanges): string[] => codesOf(sheath.compute(soundSituation(changes)));
    expect(of({})).toEqual([]);
    expect(of({ cable: { powerPerLength: 60, contact: 'bare' } })).toContain('stop sheath-over-limit');
    expect(of({ cable: { powerPerLength: 60, highestSheath: 200 } })).toContain('stop pipe-over-limit');
    // What a bare cable of much power does on an empty pipe, and one that no limit thermostat can save.
    expect(of({ cable: { powerPerLength: 40, contact: 'bare' } })).toContain('care empty-over-limit');
    expect(of({ cable: { powerPerLength: 60, contact: 'bare', highestSheath: 30 } })).toContain(
      'stop no-limit-saves',
    );
    expect(of({ loop: { hottest: 58 } })).toContain('care limit-thermostat');
    expect(of({ cable: { highestSheath: 60 } })).toContain('care loose-over-limit');
    expect(of({ cable: { highestSheath: 80 } })).toEqual(['care crossing-over-limit']);
    expect(of({ cable: { powerPerLength: 5, highestSheath: 95 } })).toEqual([]);
  });
});
