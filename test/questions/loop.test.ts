import { describe, expect, it } from 'vitest';
import { fluidDensity, loopMix } from '../../calculators/bench/loop-mix.ts';
import loop from '../../calculators/questions/loop.ts';
import { codesOf, valueOf } from '../support/answers.ts';
import type { BenchChanges } from '../support/benches.ts';
import { expectNear, expectPrinted } from '../support/near.ts';
import { situation, soundSituation } from '../support/situations.ts';

const answer = (changes: BenchChanges) => loop.compute(situation(changes));
/** Plain water in ten metres of 110 mm drain, so that the volume is 84.296 L. */
const water: BenchChanges = { loop: { length: 10 }, mix: { antifreeze: 'none' } };

describe('loop', () => {
  // Litres per metre from the printed outside diameters and walls: EN 1401, EN 1329-1, ASTM D2729 and D3034,
  // multiplied out by hand.
  it.each([
    { pipe: 'drain-110', printed: '8.4296' },
    { pipe: 'drain-75', printed: '3.7393' },
    { pipe: 'thin-wall-4in', printed: '8.3729' },
    { pipe: 'thin-wall-3in', printed: '4.9009' },
    { pipe: 'sdr35-4in', printed: '8.0063' },
  ] as const)('holds $printed L in a metre of $pipe', ({ pipe, printed }) => {
    const { figures } = answer({ loop: { pipe, length: 10 } });
    expectPrinted(valueOf(figures.volume) * 100, printed);
  });

  // Kell 1975 and IAPWS SR6-08 agree to the fifth digit: 999.702 kg/m³ at 10 °C, 992.216 at 40 °C.
  it('swells water by 0.75 % from 10 to 40 °C', () => {
    const { figures } = answer(water);
    expectNear(valueOf(figures.expansionVolume) / valueOf(figures.volume), 999.702 / 992.216 - 1, 2e-6);
    expectNear(valueOf(figures.fluidMass), 0.084296 * 999.702, 0.001);
  });

  // Melinder 2010 at 30 % by mass, printed densities of its correlation: 1028.0 kg/m³ at 10 °C, 1013.4 at 40 °C and
  // 1034.3 at −10 °C, so 1.44 % up and 2.06 % in all. 30 % by mass is 29.4 % by volume (ASHRAE 2001).
  it('swells 30 % propylene glycol by 1.44 % from 10 to 40 °C, and shrinks it down to −10 °C', () => {
    const { figures } = answer({ mix: { share: 0.294, protectTo: -10 } });
    const volume = valueOf(figures.volume);
    // Each density is printed to 0.05 kg/m³, the quotient so to 0.01 %.
    expectNear(valueOf(figures.expansionVolume) / volume, 1028.0 / 1013.4 - 1, 1e-4);
    expectNear(valueOf(figures.contractionVolume) / volume, 1 - 1028.0 / 1034.3, 1e-4);
  });

  // The same tables at 60 % by mass, which is 60 % by volume: 1035.9 kg/m³ at 30 °C, 1066.7 at −20 °C.
  it('shrinks 60 % propylene glycol by 2.9 % from 30 to −20 °C', () => {
    const { figures } = answer({ loop: { fillTemperature: 30 }, mix: { share: 0.6, protectTo: -20 } });
    expectNear(valueOf(figures.contractionVolume) / valueOf(figures.volume), 1 - 1035.9 / 1066.7, 1e-4);
  });

  it('lifts the stand-pipe by what does not fit in the pipe', () => {
    const { figures } = answer({ ...water, loop: { length: 10, standpipeDiameter: 0.1 } });
    // 84.296 L × 0.7545 % = 0.6360 L over 78.54 cm².
    expectNear(valueOf(figures.rise), (0.084296 * (999.702 / 992.216 - 1)) / 0.00785398, 1e-4);
    expect(figures.headspace).toBeNull();
  });

  // By hand: 84.296 L of water from 10 to 40 °C swell by 0.6360 L (Kell 1975). PVC grows by 5.3e-5 per K along each side
  // (supplier pages: 5.2 to 5.4e-5): 3 × 5.3e-5 × 30 × 84.296 L = 0.4021 L. Over 78.54 cm² the rest is 29.8 mm.
  it('lifts the stand-pipe by less, as the pipe grows too', () => {
    const { likelyRise, rise } = answer({ ...water, loop: { length: 10, standpipeDiameter: 0.1 } }).figures;
    expectNear(valueOf(likelyRise), (0.084296 * (999.702 / 992.216 - 1) - 0.4021e-3) / 0.00785398, 1e-4);
    expect(likelyRise!.low!).toBeLessThan(valueOf(likelyRise));
    expect(likelyRise!.high!).toBeGreaterThan(valueOf(likelyRise));
    expect(likelyRise!.high!).toBeLessThan(valueOf(rise));
  });

  // By hand for 30 % propylene glycol by mass in 84.296 L of pipe: 0.61 % (1028.0 to 1034.3 kg/m³, Melinder 2010) is 0.513 L
  // that it shrinks by down to −10 °C; 1.44 % (to 1013.4 kg/m³) is 1.214 L that it swells by up to 40 °C. Over 19.635 cm²:
  // 262 mm, 618 mm, and 50 mm kept free.
  it('tells how much stand-pipe to buy: for what shrinks, what swells, and a little more', () => {
    const mix = { share: 0.294, protectTo: -10 };
    const pipe = { length: 10, standpipeDiameter: 0.05, hottest: 40 } as const;
    const { figures } = answer({ mix, loop: { ...pipe, standpipeHeight: 0.5 } });
    // A twentieth of a kilogram in each printed density is 4 mm of stand-pipe.
    expectNear(valueOf(figures.fillLevel), 0.262, 0.005);
    expectNear(valueOf(figures.standpipeLength), 0.262 + 0.618 + 0.05, 0.01);
    // A free height that is more than enough is bought as it was given.
    const tall = answer({ mix, loop: { ...pipe, standpipeHeight: 1 } }).figures;
    expectNear(valueOf(tall.standpipeLength), valueOf(tall.fillLevel) + 1, 1e-9);
    const vented = answer({ loop: { expansion: 'headspace' } }).figures;
    expect(vented).toMatchObject({ likelyRise: null, fillLevel: null, standpipeLength: null });
  });

  // 84.296 L of water from 10 to 40 °C swell by 0.636 L (Kell 1975): a room of just that is full at 40 °C.
  it('says at which temperature the stand-pipe is full', () => {
    const room = 0.084296 * (999.702 / 992.216 - 1);
    const standpipeHeight = room / ((Math.PI / 4) * 0.05 ** 2);
    const at = (height: number) =>
      answer({ ...water, loop: { length: 10, standpipeDiameter: 0.05, standpipeHeight: height } }).figures
        .fullAt;
    expectNear(valueOf(at(standpipeHeight)), 40, 0.01);
    // Pipe of PVC is good to 60 °C, by when water of 10 °C has swollen by 1.68 %.
    const upTo60 = (0.084296 * (999.702 / 983.195 - 1)) / ((Math.PI / 4) * 0.05 ** 2);
    expect(at(upTo60 * 1.01)).toEqual({ value: 60, beyond: 'above' });
    expect(at(upTo60 * 0.99)).not.toHaveProperty('beyond');
    const vented = answer({ ...water, loop: { length: 10, expansion: 'headspace', hottest: 40 } }).figures;
    expectNear(valueOf(vented.headspace), 0.03 * 0.084296, 1e-7);
    expect(vented.fullAt).toEqual({ value: 60, beyond: 'above' });
  });

  it('leaves at least 3 % of air without a stand-pipe', () => {
    const { figures } = answer({ loop: { expansion: 'headspace' } });
    expect(figures.rise).toBeNull();
    expectNear(valueOf(figures.headspace), 0.03 * valueOf(figures.volume), 1e-9);
    const hot = answer({
      loop: { expansion: 'headspace', fillTemperature: 1, hottest: 60 },
      mix: { share: 0.6 },
    });
    expectNear(valueOf(hot.figures.headspace), valueOf(hot.figures.expansionVolume), 1e-12);
    expect(valueOf(hot.figures.headspace)).toBeGreaterThan(0.03 * valueOf(hot.figures.volume));
  });

  // Supplier pages: 5.3e-5 per K; a 6 m run that warms by 25 K grows 8 mm.
  it('lengthens a 6 m run by 8 mm for 25 K', () => {
    const run = answer({
      loop: { run: 'straight', length: 6, hottest: 25, fillTemperature: 10 },
      mix: { protectTo: 0 },
    });
    expectPrinted(valueOf(run.figures.pipeGrowth) * 1000, '8');
  });

  it('takes the longest side of a U or a ring as its longest run', () => {
    for (const run of ['u', 'ring'] as const) {
      const { figures } = answer({ loop: { run, hottest: 40 }, mix: { protectTo: -10 } });
      // 6 m less 0.15 m at either end, 50 K.
      expectNear(valueOf(figures.pipeGrowth), 5.7 * 5.3e-5 * 50, 1e-9);
    }
  });

  // Water at 5 °C: 4204.92 J/(kg·K) and 999.966 kg/m³ (IAPWS SR6-08); PVC: 900 J/(kg·K) and 1390 kg/m³ (EN 12524).
  it('stores what its water and its wall store', () => {
    const { figures } = answer(water);
    const wall = (Math.PI / 4) * (0.11 ** 2 - 0.1036 ** 2) * 10 * 1390;
    expectNear(valueOf(figures.pipeMass), wall, 1e-9);
    expectNear(valueOf(figures.heatCapacity), 0.084296 * 999.966 * 4204.92 + wall * 900, 10);
    expectNear(
      valueOf(figures.filledMassPerLength),
      (valueOf(figures.fluidMass) + valueOf(figures.pipeMass)) / 10,
      1e-12,
    );
  });

  it('never counts the swelling of water near freezing as a contraction', () => {
    const { figures } = answer({ ...water, loop: { fillTemperature: 2 } });
    expect(valueOf(figures.contractionVolume)).toBe(0);
    // From 10 °C down to 3.98 °C, where it is densest: 999.702 to 999.974 kg/m³.
    expectNear(valueOf(answer(water).figures.contractionVolume) / 0.084296, 1 - 999.702 / 999.974, 2e-6);
  });

  it('takes a share beyond the published tables as the highest that they have', () => {
    const beyond = { mix: { antifreeze: 'ethylene', share: 0.6 } } as const;
    expect(loopMix(situation(beyond).bench).beyondPublished).toBe(true);
    // ASHRAE 2001: 57.8 % ethylene glycol by volume is 60 % by mass.
    const highest = loopMix(situation({ mix: { antifreeze: 'ethylene', share: 0.578 } }).bench);
    expectNear(highest.massShare, 0.6, 1e-9);
    expectNear(
      valueOf(answer(beyond).figures.fluidMass),
      fluidDensity(highest, 10) * valueOf(answer(beyond).figures.volume),
      1e-9,
    );
  });

  it('warns as far as there is a reason, and no further', () => {
    const of = (changes: BenchChanges): string[] => codesOf(loop.compute(soundSituation(changes)));
    expect(of({})).toEqual([]);
    expect(of({ loop: { standpipeDiameter: 0.03 } })).toEqual(['stop standpipe-too-short']);
    expect(of({ loop: { fillTemperature: 35, hottest: 34 } })).toEqual(['stop fill-above-hottest']);
    expect(of({ loop: { expansion: 'headspace' } })).toEqual(['care headspace']);
    expect(of({ loop: { inset: 0.55 } })).toEqual(['stop runs-touch']);
    expect(of({ loop: { inset: 0.55, run: 'straight' } })).toEqual([]);
    // A stand-pipe that is too short for one bench is long enough when it is as tall as the level rises.
    const rise = valueOf(loop.compute(soundSituation({ loop: { standpipeDiameter: 0.05 } })).figures.rise);
    expect(of({ loop: { standpipeDiameter: 0.05, standpipeHeight: rise } })).toEqual([]);
    expect(of({ loop: { standpipeDiameter: 0.05, standpipeHeight: rise - 0.001 } })).toEqual([
      'stop standpipe-too-short',
    ]);
  });
});
