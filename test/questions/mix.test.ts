import { describe, expect, it } from 'vitest';
import mix from '../../calculators/questions/mix.ts';
import { codesOf, valueOf } from '../support/answers.ts';
import type { BenchChanges } from '../support/benches.ts';
import { expectNear } from '../support/near.ts';
import { situation, soundSituation } from '../support/situations.ts';

const answer = (changes: BenchChanges) => mix.compute(situation(changes));

describe('mix', () => {
  // The warmer of two published figures. ASHRAE 2001 prints to 0.1 K, Melinder's published tests to 0.001 K; a share is
  // that of the ASHRAE row, so that no interpolation is in it.
  it.each([
    { antifreeze: 'propylene', share: 0.294, mass: 0.3, ashrae: -12.7, melinder: -12.789 },
    { antifreeze: 'propylene', share: 0.396, mass: 0.4, ashrae: -21.1, melinder: -20.568 },
    { antifreeze: 'propylene', share: 0.499, mass: 0.5, ashrae: -33.5, melinder: -32.193 },
    { antifreeze: 'ethylene', share: 0.277, mass: 0.3, ashrae: -14.1, melinder: -14.576 },
    { antifreeze: 'ethylene', share: 0.375, mass: 0.4, ashrae: -22.3, melinder: -23.813 },
  ] as const)(
    'takes the warmer figure for $share of $antifreeze glycol',
    ({ antifreeze, share, mass, ashrae, melinder }) => {
      const { figures } = answer({ mix: { antifreeze, share } });
      expectNear(valueOf(figures.freezingPoint), Math.max(ashrae, melinder), ashrae > melinder ? 0.05 : 0.01);
      expectNear(valueOf(figures.massShare), mass, 0.0005);
    },
  );

  // ASHRAE 2001 between its rows: 30 % propylene glycol by volume is 30.6 % by mass and freezes at −13.1 °C; 30 % by mass
  // would be −12.8 °C. The two must not be mixed up.
  it('reads the share as one by volume', () => {
    const { figures } = answer({ mix: { share: 0.3 } });
    expectNear(valueOf(figures.freezingPoint), -13.1, 0.05);
    expectNear(valueOf(figures.massShare), 0.306, 0.0005);
  });

  it('divides the volume of the loop by the share', () => {
    const { figures } = answer({ loop: { pipe: 'drain-110', length: 10 }, mix: { share: 0.4 } });
    // 8.4296 L/m of pipe (EN 1401), ten metres.
    expectNear(valueOf(figures.concentrateVolume), 0.0337184, 1e-6);
    expectNear(valueOf(figures.waterVolume), 0.0505776, 1e-6);
  });

  // ASHRAE 2001, propylene glycol 30 % by volume at 5 °C: 1034.46 kg/m³, 3807 J/(kg·K); water (IAPWS SR6-08):
  // 999.966 kg/m³, 4204.92 J/(kg·K). The two sources of glycol differ by up to 0.5 % in density and 0.9 % in heat capacity.
  it('loses about a sixteenth of the stored heat at 30 %', () => {
    const { figures } = answer({ mix: { share: 0.3 } });
    expectNear(
      valueOf(figures.heatCapacityLoss),
      1 - (1034.46 * 3807) / (999.966 * 4204.92),
      0.014 * (1 - 0.063),
    );
  });

  it('finds the share that it then says is enough', () => {
    for (const antifreeze of ['propylene', 'ethylene'] as const) {
      for (const protectTo of [0, -5, -10, -20, -40]) {
        const share = valueOf(answer({ mix: { antifreeze, protectTo } }).figures.shareNeeded);
        const enough = answer({ mix: { antifreeze, protectTo, share } });
        expectNear(valueOf(enough.figures.freezingPoint), protectTo, 1e-6);
        expect(codesOf(enough)).not.toContain('stop mix-freezes');
        if (protectTo === 0) continue;
        const less = answer({ mix: { antifreeze, protectTo, share: share - 0.02 } });
        expect(codesOf(less)).toContain('stop mix-freezes');
      }
    }
  });

  it('asks nothing of plain water but to be drained', () => {
    const { figures, warnings } = answer({ mix: { antifreeze: 'none', share: 0.3 } });
    expect(figures).toMatchObject({
      concentrateVolume: null,
      shareNeeded: null,
      shareToPour: null,
      concentrateToPour: null,
      massShare: null,
      heatCapacityLoss: null,
    });
    expect(valueOf(figures.freezingPoint)).toBe(0);
    expect(valueOf(figures.waterVolume)).toBeGreaterThan(0.1);
    expect(warnings.map(({ code }) => code)).toEqual(['no-antifreeze']);
  });

  // ASHRAE 2001: 19.4 % propylene glycol by volume freezes at −7.1 °C, 29.4 % at −12.7 °C; Melinder 2010 is within 0.1 K of
  // both. Ten litres of pipe: 8.4296 L/m (EN 1401).
  it('tells what to drain, or to add, when the loop was measured to be too weak', () => {
    const { figures, warnings } = answer({
      loop: { pipe: 'drain-110', length: 10 / 8.4296 },
      mix: { share: 0.294, protectTo: -12, measuredFreezing: -7.1 },
    });
    expectNear(valueOf(figures.presentShare), 0.194, 0.003);
    // (0.294 − 0.194) / (1 − 0.194) of the loop, and of 10 L on top / (1 − 0.294).
    expectNear(valueOf(figures.drainAndReplace), 0.01 * (0.1 / 0.806), 0.01 * 0.004);
    expectNear(valueOf(figures.addConcentrate), 0.01 * (0.1 / 0.706), 0.01 * 0.004);
    expect(warnings.map(({ code }) => code)).toContain('mix-measured-weak');
    const strong = answer({ mix: { share: 0.3, protectTo: -10, measuredFreezing: -20 } });
    expect(strong.figures).toMatchObject({ drainAndReplace: null, addConcentrate: null });
    expect(codesOf(strong)).not.toContain('care mix-measured-weak');
    const unmeasured = answer({ mix: { share: 0.3 } });
    expect(unmeasured.figures).toMatchObject({ presentShare: null, drainAndReplace: null });
  });

  // ASHRAE 2001: 39.6 % propylene glycol by volume freezes at −21.1 °C, Melinder 2010 has −20.568 °C for the same 40 % by mass;
  // 29.4 % freeze at −12.7 °C. A loop that was filled with 30 % is not to be brought back to 30 % when −20.5 °C is asked for.
  it('aims a correction at what is asked for, where the share in the loop is not enough', () => {
    const { figures, warnings } = answer({
      loop: { pipe: 'drain-110', length: 10 / 8.4296 },
      mix: { share: 0.3, protectTo: -20.568, measuredFreezing: -12.7 },
    });
    expectNear(valueOf(figures.shareNeeded), 0.396, 0.0005);
    // Of a concentrate of which 7 parts in a hundred are other things (common practice, from memory).
    const pour = 0.396 / 0.93;
    expectNear(valueOf(figures.shareToPour), pour, 0.0006);
    expectNear(valueOf(figures.concentrateToPour), 0.01 * pour, 0.01 * 0.0006);
    expectNear(valueOf(figures.drainAndReplace), (0.01 * (pour - 0.294)) / (1 - 0.294), 0.01 * 0.004);
    expectNear(valueOf(figures.addConcentrate), (0.01 * (pour - 0.294)) / (1 - pour), 0.01 * 0.006);
    const said = warnings.find(({ code }) => code === 'mix-measured-weak')?.text;
    expect(said).toContainEqual({ value: valueOf(figures.drainAndReplace), quantity: 'volume' });
    // With what it says done, and a concentrate as weak as they come, the loop is strong enough.
    const drained = valueOf(figures.drainAndReplace) / 0.01;
    const share = 0.294 * (1 - drained) + 0.93 * drained;
    expect(valueOf(answer({ mix: { share } }).figures.freezingPoint)).toBeLessThan(-20.568);
  });

  it('says first, and in litres, that a mix is too weak for what is asked', () => {
    const [first] = answer({ mix: { share: 0.3, protectTo: -20 } }).warnings;
    const { figures } = answer({ mix: { share: 0.3, protectTo: -20 } });
    expect(first).toMatchObject({ code: 'mix-freezes', level: 'stop' });
    expect(first?.text).toContainEqual({ value: valueOf(figures.concentrateToPour), quantity: 'volume' });
  });

  // ASHRAE 2001: 29.4 % propylene glycol by volume freezes at −12.7 °C; Melinder 2010, 30 % by mass: −12.789 °C.
  it('says down to where a mix is liquid for sure, as a concentrate holds other things', () => {
    const { figures } = answer({ mix: { share: 0.294 / 0.93 } });
    expectNear(valueOf(figures.liquidTo), -12.7, 0.05);
    expect(figures.freezingPoint).toMatchObject({ high: valueOf(figures.liquidTo) });
    expect(valueOf(answer({ mix: { antifreeze: 'none' } }).figures.liquidTo)).toBe(0);
    // Within what glycol alone bears, and not within what a weak concentrate does.
    const close = answer({ mix: { share: 0.294 / 0.93, protectTo: -13.2 } });
    expect(codesOf(close)[0]).toBe('care mix-concentrate-weak');
    const enough = answer({ mix: { share: 0.294 / 0.93, protectTo: -12.6 } });
    expect(codesOf(enough)).not.toContain('care mix-concentrate-weak');
  });

  // The table of the trade: 12 % propylene glycol down to 20 °F, 24 % down to 0 °F, 28 % down to −10 °F.
  it('is safe from bursting far below its first ice', () => {
    for (const [share, fahrenheit] of [
      [0.12, 20],
      [0.24, 0],
      [0.28, -10],
    ] as const)
      expectNear(valueOf(answer({ mix: { share } }).figures.burstPoint), ((fahrenheit - 32) * 5) / 9, 1e-9);
  });

  it('says that a mix bursts nothing below the end of the table, where the trade asks for no more', () => {
    // 35 % propylene and 31 % ethylene glycol are what the table has for −60 °F.
    expect(answer({ mix: { share: 0.35 } }).figures.burstPoint).toMatchObject({ beyond: 'below' });
    expect(answer({ mix: { antifreeze: 'ethylene', share: 0.31 } }).figures.burstPoint).toMatchObject({
      beyond: 'below',
    });
    expect(answer({ mix: { share: 0.34 } }).figures.burstPoint).not.toHaveProperty('beyond');
  });

  it('warns as far as there is a reason, and no further', () => {
    const of = (changes: BenchChanges): string[] => codesOf(mix.compute(soundSituation(changes)));
    expect(of({})).toEqual([]);
    expect(of({ mix: { protectTo: -25 } })).toEqual(['stop mix-freezes']);
    expect(of({ mix: { share: 0.3, protectTo: -10 } })).toEqual(['care mix-little-in-hand']);
    // A heater stops with the power; only milder weather leaves the same mix 5 K in hand.
    const held = { houseKind: 'held', houseMinimum: -5 } as const;
    expect(of({ place: held, mix: { share: 0.3, protectTo: -10 } })).toEqual(['care mix-little-in-hand']);
    const milder = { designNight: 'own', ownLowest: -7 } as const;
    expect(of({ place: milder, mix: { share: 0.3, protectTo: -10 } })).toEqual([]);
    expect(of({ mix: { share: 0.2, protectTo: -5 }, place: { designNight: 'own', ownLowest: -1 } })).toEqual([
      'care mix-weak-inhibitor',
    ]);
    expect(of({ mix: { antifreeze: 'ethylene' } })).toEqual(['care antifreeze-poison']);
    expect(of({ mix: { antifreeze: 'ethylene', share: 0.6 } })).toEqual([
      'stop mix-beyond-published',
      'care antifreeze-poison',
    ]);
    expect(of({ mix: { antifreeze: 'none' } })).toEqual(['care no-antifreeze']);
  });
});
