import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { expectedParameters, priorsOf } from '../../calculators/bench/priors.ts';
import { ranged } from '../../calculators/bench/range.ts';
import { designNight, designRest, heatLost, restOn, type Rest } from '../../calculators/bench/steady.ts';
import type { Situation } from '../../calculators/calculator.ts';
import { loadRegions } from '../../scripts/content-files.ts';
import { anyBench, changed, startBench } from '../support/benches.ts';
import { expectNear } from '../support/near.ts';
import { inventedStation, metricRegion, situation } from '../support/situations.ts';

const at = (bench: Situation['bench']): Situation => ({
  bench,
  region: metricRegion,
  station: inventedStation,
});
const needed = (one: Situation): number => restOn(one, 'hold-roots').power;
const temperature = (rest: Rest, id: string): number => rest.temperatures[rest.body.ids.indexOf(id)] ?? NaN;

/** The exported network solved by a general library: conductances into a matrix, boundaries to the right-hand side. */
function solvedAgain({ network }: ReturnType<typeof designNight>): Record<string, number> {
  const ids = network.nodes.map(({ id }) => id);
  const A = Matrix.zeros(ids.length, ids.length);
  const b = Matrix.zeros(ids.length, 1);
  for (const { from, to, conductance } of network.links) {
    for (const [one, other] of [
      [from, to],
      [to, from],
    ] as const) {
      const row = ids.indexOf(one);
      if (row < 0) continue;
      A.set(row, row, A.get(row, row) + conductance);
      const column = ids.indexOf(other);
      const boundary = network.boundaries.find(({ id }) => id === other);
      if (column >= 0) A.set(row, column, A.get(row, column) - conductance);
      else b.set(row, 0, b.get(row, 0) + conductance * (boundary?.temperature ?? NaN));
    }
  }
  for (const { node, power } of network.heat) {
    const row = ids.indexOf(node);
    b.set(row, 0, b.get(row, 0) + power);
  }
  const x = solve(A, b);
  return Object.fromEntries(ids.map((id, row) => [id, x.get(row, 0)]));
}

describe('a bench at rest', () => {
  it('loses to house and ground what the cable brings, whatever the bench', () => {
    fc.assert(
      fc.property(
        anyBench,
        fc.constantFrom('no-heat' as const, 'thermostat' as const, 'hold-roots' as const),
        (bench, asked) => {
          const rest = restOn(at(bench), asked);
          const lost = Object.values(heatLost(rest)).reduce((sum, one) => sum + one, 0);
          // At rest each node moves by less than 1e-6 K, times the conductances that hang on it, moving air with them.
          const hanging = [...rest.links, ...rest.draws];
          const slack = 2e-6 * hanging.reduce((sum, { conductance }) => sum + conductance, 0);
          expectNear(lost, rest.power, slack, 'heat lost');
        },
      ),
      { numRuns: 300 },
    );
  });

  it('hands out a network that ml-matrix solves to the same temperatures within 0.001 K', () => {
    fc.assert(
      fc.property(anyBench, (bench) => {
        const night = designNight(at(bench));
        for (const [id, value] of Object.entries(solvedAgain(night))) {
          expectNear(value, night.steady[id] ?? NaN, 1e-3, id);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('stays between its boundaries without heat', () => {
    fc.assert(
      fc.property(anyBench, (bench) => {
        const rest = restOn(at(bench), 'no-heat');
        const around = ['house', 'ground', 'roof'].map((id) => temperature(rest, id));
        for (const one of rest.temperatures) {
          expect(one).toBeGreaterThanOrEqual(Math.min(...around) - 1e-5);
          expect(one).toBeLessThanOrEqual(Math.max(...around) + 1e-5);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('rests at one temperature when house, ground and sky have it and nothing heats', () => {
    const level = inventedStation.usualLowest;
    const one = situation({ place: { groundTemperature: level, houseOffset: 0 } });
    const rest = restOn(one, 'no-heat', { ...expectedParameters(one), clearness: 0 });
    for (const one of rest.temperatures) expectNear(one, level, 1e-4);
  });

  it('holds the sensor at the set point when the cable can, and runs flat out when it cannot', () => {
    const can = designRest(situation({ control: { sensor: 'air', setPoint: -8 } }), 'thermostat');
    expectNear(temperature(can, 'under'), -8, 1e-4);
    expect(can.power).toBeLessThan(can.fullPower);
    const cannot = designRest(situation({ control: { sensor: 'pot', setPoint: 5 } }), 'thermostat');
    expectNear(cannot.power, cannot.fullPower, 1e-9);
  });
});

describe('an ordinary bench without a cover', () => {
  const region = loadRegions().find(({ id }) => id === 'estermark') ?? metricRegion;
  const widths = [0.9, 1.2, 1.5, 1.8];

  // Where the coldest roots hang on the power, temperatures close in on their rest from one side, and slowly.
  it.each([0.6, 0.8, 0.9])('with %f of its skirt closed comes to rest at any size', (closed) => {
    for (const width of widths)
      for (let length = 2; length < 20; length += 0.6) {
        const bench = changed(startBench, { frame: { length, width }, skirt: { closed } });
        const one = { bench, region, station: region.stations[0] ?? inventedStation };
        const expected = expectedParameters(one);
        const { mediumConductivity } = priorsOf(one);
        for (const conductivity of [mediumConductivity.low, expected.mediumConductivity])
          for (const asked of ['no-heat', 'thermostat', 'hold-roots'] as const) {
            const rest = restOn(one, asked, { ...expected, mediumConductivity: conductivity });
            expect(rest.temperatures.every(Number.isFinite), `${length} m, ${asked}`).toBe(true);
          }
      }
  });
});

describe('what makes a bench need less heat', () => {
  it('is a cover, a second layer of skirt, wet film, a milder night; over film under the pots, closed gaps', () => {
    const bare = needed(situation());
    expect(needed(situation({ cover: { kind: 'film' } }))).toBeLessThan(bare);
    expect(needed(situation({ skirt: { layers: 2 } }))).toBeLessThan(bare);
    const filmed = situation({ frame: { top: 'film' }, cover: { kind: 'film' } });
    expect(
      needed({ ...filmed, bench: changed(filmed.bench, { skirt: { bottomGap: 0, topGap: 0 } }) }),
    ).toBeLessThan(needed(filmed));
    expect(needed(situation({ skirt: { wet: 'wet' } }))).toBeLessThan(bare);
    expect(needed(situation({ place: { designNight: 'own', ownLowest: -8 } }))).toBeLessThan(bare);
    expect(needed(situation({ skirt: { material: 'none' } }))).toBeGreaterThan(bare);
  });

  it('is air that rises past the pots: it leaves there what it would lose', () => {
    // The same leaks, and the same air through them, with less and with more of it close by the pots.
    const one = situation({ cover: { kind: 'film' } });
    const power = (closeBy: number): number =>
      restOn(one, 'hold-roots', { ...expectedParameters(one), closeBy }).power;
    expect(power(0.8)).toBeLessThan(power(0.2));
    // What the air itself takes away; warmer pots give it more water, which is told apart.
    const lost = (closeBy: number): number => {
      const { draws, temperatures: t } = restOn(one, 'thermostat', { ...expectedParameters(one), closeBy });
      return draws.reduce((sum, { from, to, conductance }) => sum - conductance * (t[from]! - t[to]!), 0);
    };
    expect(lost(0.8)).toBeLessThan(lost(0.2));
  });

  it('more power never leaves any part of any bench colder that is as warm as its house, but the wet floor', () => {
    fc.assert(
      fc.property(anyBench, (bench) => {
        const one = at(changed(bench, { control: { sensor: 'pot', setPoint: 25 } }));
        const parameters = expectedParameters(one);
        const less = restOn(one, 'thermostat', { ...parameters, cableOutput: 0.5 });
        const more = restOn(one, 'thermostat', parameters);
        // A bench below a cold roof may be colder than the house: then house air falls through it and warms it, and the
        // less so the less it is colder.
        fc.pre(temperature(less, 'under') >= temperature(less, 'house'));
        // More warmth draws more air over the floor, which dries: under a slab or a board, which let little warmth in, that
        // cools it by a tenth of a kelvin or so.
        more.temperatures.forEach((value, node) => {
          if (more.body.ids[node]?.startsWith('floor-')) return;
          expect(value).toBeGreaterThan((less.temperatures[node] ?? NaN) - 1e-4);
        });
      }),
      { numRuns: 100 },
    );
  });

  it('a range holds its expected value, and a measured gap narrows it', () => {
    const power = (one: Situation) =>
      ranged(one, (parameters) => restOn(one, 'hold-roots', parameters).power);
    const guessed = power(situation());
    expect(guessed.low).toBeLessThan(guessed.value);
    expect(guessed.high).toBeGreaterThan(guessed.value);
    expectNear(
      guessed.blame.reduce((sum, one) => sum + one.share, 0),
      1,
      1e-9,
    );
    const measured = power(
      situation({ skirt: { bottomGap: priorsOf(situation()).bottomGap.expected, topGap: 0.002 } }),
    );
    expect(measured.high - measured.low).toBeLessThan(guessed.high - guessed.low);
  });
});

describe('facts of the trade (common practice, no published source)', () => {
  // 6 m by 1.2 m, skirt to the floor on all four sides, film over and around, 3 in pipe as a U, cable of 500 to 700 W.
  // On a mild day such a bench read 64 °F where the house read 58 °F and outside 54 °F: 6 °F (3.33 K) over the house.
  const fahrenheit = (level: number): number => ((level - 32) * 5) / 9;
  const mild = (top: 'slats' | 'film'): Situation =>
    situation({
      place: { houseOffset: fahrenheit(58) - fahrenheit(54) },
      frame: { length: 6, width: 1.2, height: 0.8, top },
      skirt: { material: 'film-plain', layers: 1, closed: 1 },
      cover: { kind: 'film' },
      loop: { pipe: 'thin-wall-3in' },
      cable: { powerPerLength: 16, length: 38 },
      control: { sensor: 'air', setPoint: fahrenheit(64) },
    });
  const duty = (one: Situation): { power: number; share: number } => {
    const rest = restOn(one, 'thermostat', expectedParameters(one), fahrenheit(54));
    expectNear(temperature(rest, 'under'), fahrenheit(64), 1e-4);
    return { power: rest.power, share: rest.power / rest.fullPower };
  };

  it('a rise of 6 °F over the house is that of a 600 W cable on for about half to two thirds of the time', () => {
    for (const top of ['slats', 'film'] as const) {
      const { power, share } = duty(mild(top));
      expect(power).toBeGreaterThan(250);
      expect(power).toBeLessThan(450);
      expect(share).toBeGreaterThan(0.4);
      expect(share).toBeLessThan(0.75);
    }
  });

  it('with the skirt gaps anywhere in their range, a believable duty gives that rise', () => {
    const { bottomGap, topGap } = priorsOf(mild('film'));
    const tight = duty(changedSkirt(mild('film'), bottomGap.low, topGap.low));
    const loose = duty(changedSkirt(mild('slats'), bottomGap.high, topGap.high));
    expect(tight.share).toBeGreaterThan(0.3);
    expect(loose.share).toBeLessThan(1);
    expect(tight.power).toBeLessThan(loose.power);
  });
});

function changedSkirt(one: Situation, bottomGap: number, topGap: number): Situation {
  return { ...one, bench: changed(one.bench, { skirt: { bottomGap, topGap } }) };
}

describe('a sensor on the loop protects the loop, not the roots', () => {
  it('lets the cable rest while the air under the bench is far below freezing', () => {
    const onLoop = designRest(
      situation({ control: { sensor: 'loop', setPoint: 4.5 }, cover: { kind: 'film' } }),
      'thermostat',
    );
    const inPot = designRest(
      situation({ control: { sensor: 'pot', setPoint: 2 }, cover: { kind: 'film' } }),
      'thermostat',
    );
    expectNear(temperature(onLoop, 'loop'), 4.5, 1e-4);
    expect(temperature(onLoop, 'under')).toBeLessThan(-3);
    expect(onLoop.power).toBeLessThan(inPot.power);
    expect(onLoop.coldestRoots).toBeLessThan(inPot.coldestRoots);
  });

  it('stands 12 to 14 K above the air around it at 600 W over 13 m of 3 in pipe, and more under foil tape', () => {
    const rise = (contact: 'bare' | 'taped'): number => {
      const rest = designRest(
        situation({
          loop: { pipe: 'thin-wall-3in', length: 12.9 },
          cable: { powerPerLength: 15.8, length: 38, contact },
          control: { sensor: 'pot', setPoint: 10 },
        }),
        'thermostat',
      );
      return temperature(rest, 'loop') - temperature(rest, 'under');
    };
    // What a first model of such a bench gave, with a cable that lies bare on the pipe.
    expect(rise('bare')).toBeGreaterThan(12);
    expect(rise('bare')).toBeLessThan(14);
    expect(rise('taped')).toBeGreaterThan(rise('bare'));
  });
});

it('startBench is a bench that can be brought to rest', () => {
  expect(Number.isFinite(needed(at(startBench)))).toBe(true);
});
