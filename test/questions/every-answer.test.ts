import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loopLength } from '../../calculators/bench/geometry.ts';
import { amountsOf, type Calculator, type Situation } from '../../calculators/calculator.ts';
import { sentenceText } from '../../site/widgets/text.ts';
import { freezingPoint, highestVolumeShare } from '../../calculators/properties/glycol.ts';
import circuit from '../../calculators/questions/circuit.ts';
import loop from '../../calculators/questions/loop.ts';
import mix from '../../calculators/questions/mix.ts';
import sheath from '../../calculators/questions/sheath.ts';
import winding from '../../calculators/questions/winding.ts';
import { codesOf } from '../support/answers.ts';
import { anyBench, withOthersFrom } from '../support/benches.ts';
import {
  inventedStation,
  metricRegion,
  soundSituation,
  soundUsSituation,
  usRegion,
} from '../support/situations.ts';

const calculators: readonly Calculator[] = [winding, sheath, loop, mix, circuit];

/** Nothing was measured, or the mix that is wanted freezes no colder than the one that was. */
function strongEnough({ bench: { mix: ofBench } }: Situation): boolean {
  const { antifreeze, share, measuredFreezing } = ofBench;
  if (antifreeze === 'none' || measuredFreezing === null) return true;
  return freezingPoint(antifreeze, Math.min(share, highestVolumeShare(antifreeze))) > measuredFreezing - 1e-6;
}

/** When a figure may be empty. A figure that is not named here never is. */
const mayBeEmpty: Readonly<Record<string, (situation: Situation) => boolean>> = {
  // No limit saves a cable that is too hot on the coldest loop.
  'sheath.limitThermostat': (one) => codesOf(sheath.compute(one)).includes('stop no-limit-saves'),
  'winding.pitch': ({ bench }) => bench.cable.length <= loopLength(bench) * 1.00001,
  'winding.turns': ({ bench }) => bench.cable.length <= loopLength(bench) * 1.00001,
  'winding.bendRadius': ({ bench }) => bench.cable.length <= loopLength(bench) * 1.00001,
  // Less than one turn has no neighbour; a turn is at most as long as the cable then is.
  'winding.gap': ({ bench }) => bench.cable.length <= loopLength(bench) * 1.00001 || loopLength(bench) < 60,
  'winding.leastPitch': ({ bench }) => bench.cable.leastGap > 0.15,
  'loop.rise': ({ bench }) => bench.loop.expansion === 'headspace',
  'loop.likelyRise': ({ bench }) => bench.loop.expansion === 'headspace',
  'loop.fillLevel': ({ bench }) => bench.loop.expansion === 'headspace',
  'loop.standpipeLength': ({ bench }) => bench.loop.expansion === 'headspace',
  'loop.headspace': ({ bench }) => bench.loop.expansion === 'standpipe',
  'mix.concentrateVolume': ({ bench }) => bench.mix.antifreeze === 'none',
  'mix.shareNeeded': ({ bench }) => bench.mix.antifreeze === 'none',
  'mix.shareToPour': ({ bench }) => bench.mix.antifreeze === 'none',
  'mix.concentrateToPour': ({ bench }) => bench.mix.antifreeze === 'none',
  'mix.massShare': ({ bench }) => bench.mix.antifreeze === 'none',
  'mix.heatCapacityLoss': ({ bench }) => bench.mix.antifreeze === 'none',
  'mix.presentShare': ({ bench }) => bench.mix.antifreeze === 'none' || bench.mix.measuredFreezing === null,
  'mix.drainAndReplace': strongEnough,
  'mix.addConcentrate': strongEnough,
  'circuit.startUpCurrent': ({ bench }) => bench.cable.kind === 'constant',
  'circuit.smallestBreaker': ({ bench }) =>
    (bench.cable.powerPerLength * bench.cable.length + bench.supply.otherLoad) /
      (bench.supply.voltage ?? 120) >
    30,
};

/** Benches for warnings that stand between two limits, which hardly any bench drawn at random comes between. */
const between: readonly Situation[] = [soundSituation({ mix: { share: 0.3, protectTo: -12.5 } })];

/** Figures that lie between 0 and 1 by their nature. */
const shares = ['sheath.waterShare', 'mix.massShare', 'mix.shareNeeded', 'mix.shareToPour'];

const anySituation: fc.Arbitrary<Situation> = fc
  .tuple(anyBench, fc.constantFrom(metricRegion, usRegion))
  .map(([bench, region]) => ({ bench, region, station: inventedStation }));

describe('every answer of pipe, cable and circuit', () => {
  it.each(calculators)('$id: every figure of any bench is a number, or empty for a stated reason', (one) => {
    fc.assert(
      fc.property(anySituation, (situation) => {
        const { figures } = one.compute(situation);
        expect(Object.keys(figures).sort()).toEqual(Object.keys(one.figures).sort());
        for (const [name, figure] of Object.entries(figures)) {
          const path = `${one.id}.${name}`;
          if (figure === null) {
            expect(mayBeEmpty[path]?.(situation) ?? false, `${path} is empty`).toBe(true);
            continue;
          }
          const { value, low = value, high = value } = figure;
          expect([value, low, high].every(Number.isFinite), `${path} is ${value} (${low} to ${high})`).toBe(
            true,
          );
          expect(low <= value && value <= high, `${path}: ${low} ≤ ${value} ≤ ${high}`).toBe(true);
          if (shares.includes(path)) expect(low >= 0 && high <= 1, `${path} is ${low} to ${high}`).toBe(true);
        }
      }),
      { numRuns: 400 },
    );
  });

  it.each(calculators)('$id: every warning of any bench says its quantities, once for each code', (one) => {
    fc.assert(
      fc.property(anySituation, (situation) => {
        const { warnings } = one.compute(situation);
        expect(new Set(warnings.map(({ code }) => code)).size).toBe(warnings.length);
        for (const { code, text } of warnings) {
          for (const { value } of amountsOf(text))
            expect(Number.isFinite(value), `${code}: ${value}`).toBe(true);
          expect(sentenceText(text, { system: 'metric', locale: 'en' })).toMatch(/\.$/u);
        }
      }),
      { numRuns: 200 },
    );
  });

  it.each(calculators)('$id: has nothing against a sound bench, by either set of rules', (one) => {
    expect(one.compute(soundSituation()).warnings).toEqual([]);
    expect(one.compute(soundUsSituation()).warnings).toEqual([]);
  });

  // A warning that no bench raises would guard nobody.
  it.each(calculators)('$id: raises each of its warnings on some bench', (one) => {
    const source = readFileSync(new URL(`../../calculators/questions/${one.id}.ts`, import.meta.url), 'utf8');
    const written = [...source.matchAll(/\b(?:stop|care)\('([a-z-]+)'/gu)].map(([, code]) => code);
    expect(written.length).toBeGreaterThan(2);
    const missing = new Set(written);
    for (const bench of [...between, ...fc.sample(anySituation, { numRuns: 3000, seed: 1125 })]) {
      for (const { code } of one.compute(bench).warnings) missing.delete(code);
      if (missing.size === 0) break;
    }
    expect([...missing]).toEqual([]);
  });

  it.each(calculators)('$id: reads the fields that its answer depends on, and says so', (one) => {
    fc.assert(
      fc.property(anySituation, anyBench, ({ bench, region, station }, other) => {
        const mixed = withOthersFrom(other, bench, one.reads);
        expect(one.compute({ bench: mixed, region, station })).toEqual(
          one.compute({ bench, region, station }),
        );
      }),
      { numRuns: 150 },
    );
  });
});
