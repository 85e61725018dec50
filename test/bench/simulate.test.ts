import fc from 'fast-check';
import { EigenvalueDecomposition, Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { assemble, type Body } from '../../calculators/bench/assemble.ts';
import {
  curveThrough,
  enthalpyAt,
  sensible,
  temperatureAt,
  type EnthalpyCurve,
} from '../../calculators/bench/enthalpy.ts';
import { expectedParameters } from '../../calculators/bench/priors.ts';
import { simulate, type Run } from '../../calculators/bench/simulate.ts';
import { restOn } from '../../calculators/bench/steady.ts';
import { around, staying } from '../../calculators/bench/place.ts';
import { stepper } from '../../calculators/bench/stepper.ts';
import { anyBench } from '../support/benches.ts';
import { expectNear } from '../support/near.ts';
import { inventedStation, metricRegion, situation } from '../support/situations.ts';

const hour = 3600;
const day = 24 * hour;

/** A body of our own making: nodes in a chain that hangs on the house with its first node, links that never change. */
function chain(curves: readonly EnthalpyCurve[], toHouse: number, between: number, atEnd = 0): Body {
  const size = curves.length;
  const links = [
    { from: 0, to: size, conductance: toHouse, path: 'skirt' as const },
    ...curves
      .slice(1)
      .map((_, node) => ({ from: node, to: node + 1, conductance: between, path: 'pots' as const })),
    ...(atEnd > 0 ? [{ from: size - 1, to: size + 1, conductance: atEnd, path: 'floor' as const }] : []),
  ];
  return {
    ids: [...curves.map((_, node) => `node-${node}`), 'house', 'ground', 'roof'],
    nodeCount: size,
    curves,
    roots: [size - 1],
    loop: 0,
    under: 0,
    plants: size,
    house: size,
    ground: size + 1,
    roof: size + 2,
    faceCount: 0,
    at: () => ({ links, draws: [], heat: [{ node: 0, share: 1 }], fullPower: 0 }),
  };
}

/** Node temperatures after a time, without heat. */
function coast(
  body: Body,
  start: readonly number[],
  house: (time: number) => number,
  until: number,
  every: number,
  ground = 0,
): Float64Array {
  const steps = stepper(body, { house, ground: () => ground, roof: () => 0 }, [...start, 0, 0, 0]);
  for (let index = 0; index < Math.round(until / every); index++) {
    steps.renew(index * every);
    steps.attempt(index * every, every, 0);
    steps.accept();
  }
  return steps.now;
}

describe('enthalpy', () => {
  it('of a node that freezes goes to temperature and back, whatever the curve', () => {
    const curve = curveThrough([
      { t: 1, h: 4 },
      { t: 0, h: 0 },
      { t: -0.5, h: -340 },
      { t: -1.5, h: -342 },
    ]);
    fc.assert(
      fc.property(fc.double({ min: -40, max: 40, noNaN: true }), (t) => {
        expectNear(temperatureAt(curve, enthalpyAt(curve, t)), t, 1e-9);
      }),
    );
  });
});

describe('stepping through time agrees with closed solutions', () => {
  it('one node cools as e^(−t/τ), with τ = C/G', () => {
    const [capacity, conductance] = [250_000, 50];
    for (const every of [60, 600]) {
      const now = coast(chain([sensible(capacity)], conductance, 0), [10], () => -10, 2 * hour, every);
      const exact = -10 + 20 * Math.exp((-2 * hour * conductance) / capacity);
      expectNear(now[0] ?? NaN, exact, every === 60 ? 1e-4 : 0.01);
    }
  });

  it('a stiff chain agrees with its eigenvalues by ml-matrix within 0.001 K after an hour and a day', () => {
    const capacities = [3e3, 2e5, 1e6, 4e6, 9e6];
    const body = chain(capacities.map(sensible), 60, 40, 5);
    const [house, ground] = [-12, 7];
    const size = capacities.length;
    const K = Matrix.zeros(size, size);
    const b = Matrix.zeros(size, 1);
    for (const { from, to, conductance } of body.at([], new Float64Array(0)).links) {
      K.set(from, from, K.get(from, from) + conductance);
      if (to < size) {
        K.set(to, to, K.get(to, to) + conductance);
        K.set(from, to, K.get(from, to) - conductance);
        K.set(to, from, K.get(to, from) - conductance);
      } else b.set(from, 0, conductance * (to === body.house ? house : ground));
    }
    // C^(−½) K C^(−½) is symmetric: real eigenvalues, the modes of the network.
    const S = Matrix.zeros(size, size);
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++)
        S.set(i, j, K.get(i, j) / Math.sqrt((capacities[i] ?? 1) * (capacities[j] ?? 1)));
    }
    const { realEigenvalues, eigenvectorMatrix: V } = new EigenvalueDecomposition(S, {
      assumeSymmetric: true,
    });
    const rest = solve(K, b);
    const start = [5, 5, 4, 3, 6];
    for (const time of [hour, day]) {
      const scaled = Matrix.columnVector(
        start.map((t, i) => (t - rest.get(i, 0)) * Math.sqrt(capacities[i] ?? 1)),
      );
      const modes = V.transpose().mmul(scaled);
      realEigenvalues.forEach((rate, mode) =>
        modes.set(mode, 0, modes.get(mode, 0) * Math.exp(-rate * time)),
      );
      const exact = V.mmul(modes);
      const now = coast(body, start, () => house, time, 60, ground);
      for (let i = 0; i < size; i++) {
        expectNear(
          now[i] ?? NaN,
          rest.get(i, 0) + exact.get(i, 0) / Math.sqrt(capacities[i] ?? 1),
          1e-3,
          `node ${i}`,
        );
      }
    }
  });

  it('a yearly wave fades into soil as e^(−x√(ω/2a)) (periodic forcing of a semi-infinite solid)', () => {
    // Carslaw and Jaeger, section 2.6: amplitude and lag at depth x in a solid of diffusivity a.
    const [conductivity, volumeHeat, layer] = [1.2, 2e6, 0.1];
    const layers = 120;
    const body = chain(
      Array.from({ length: layers }, () => sensible(volumeHeat * layer)),
      conductivity / (layer / 2),
      conductivity / layer,
    );
    const omega = (2 * Math.PI) / (365 * day);
    const k = Math.sqrt((omega * volumeHeat) / (2 * conductivity));
    const wave = (depth: number, time: number): number =>
      10 * Math.exp(-k * depth) * Math.sin(omega * time - k * depth);
    // Started on the wave itself: what is left of any other start fades only over many years.
    const start = Array.from({ length: layers }, (_, node) => wave((node + 0.5) * layer, 0));
    const until = 2 * 365 * day;
    const now = coast(body, start, (time) => wave(0, time), until, day);
    for (const node of [4, 14, 24]) {
      const depth = (node + 0.5) * layer;
      const exact = wave(depth, until);
      // Layers of 100 mm against a wave that is 15 m long.
      expectNear(now[node] ?? NaN, exact, 0.05, `at ${depth} m`);
    }
  });

  it('a freezing front goes as 2λ√(at) (Neumann’s problem with the ground at the freezing point)', () => {
    // Stefan’s one-phase problem, Carslaw and Jaeger, section 11.2: λ e^(λ²) erf λ = c ΔT / (L √π).
    const [conductivity, volumeHeat, latent, drop] = [2.2, 1.9e6, 160e6, 10];
    const [layer, layers, until] = [0.004, 65, 2 * day];
    const freezing = curveThrough(
      [
        { t: 1, h: 1 * volumeHeat },
        { t: 0, h: 0 },
        { t: -0.02, h: -latent },
        { t: -1.02, h: -latent - volumeHeat },
      ].map(({ t, h }) => ({ t, h: h * layer })),
    );
    const body = chain(
      Array.from({ length: layers }, () => freezing),
      conductivity / (layer / 2),
      conductivity / layer,
    );
    const now = coast(
      body,
      Array.from({ length: layers }, () => 0),
      () => -drop,
      until,
      120,
    );
    const frozen = Array.from(now.subarray(0, layers)).filter((t) => t < -0.02).length * layer;
    const lambda = stefan((volumeHeat * drop) / latent);
    const exact = 2 * lambda * Math.sqrt((conductivity / volumeHeat) * until);
    // The front is known to a layer.
    expectNear(frozen, exact, 1.5 * layer);
  });
});

/** λ of Stefan’s problem for the Stefan number c ΔT / L, by bisection, with erf by its series. */
function stefan(number: number): number {
  const erf = (x: number): number => {
    let [sum, term] = [x, x];
    for (let n = 1; n < 40; n++) {
      term *= -(x * x) / n;
      sum += term / (2 * n + 1);
    }
    return (2 / Math.sqrt(Math.PI)) * sum;
  };
  let [low, high] = [0, 2];
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    if (Math.sqrt(Math.PI) * middle * Math.exp(middle ** 2) * erf(middle) < number) low = middle;
    else high = middle;
  }
  return low;
}

/** A night that falls from +2 to −15 °C in six hours, stays for a while, and comes back. */
const snap =
  (hours: number) =>
  (time: number): number => {
    const t = time / hour;
    if (t < 12) return 2;
    if (t < 18) return 2 - (17 * (t - 12)) / 6;
    if (t < 18 + hours) return -15;
    return Math.min(2, -15 + (17 * (t - 18 - hours)) / 6);
  };

function nightRun(one: ReturnType<typeof situation>, hours: number, every: number, powered = true): Run {
  const parameters = expectedParameters(one);
  const body = assemble(one, parameters);
  const { sensor, setPoint, differential } = one.bench.control;
  return {
    body,
    start: restOn(one, 'thermostat', parameters, 2).temperatures,
    surroundings: {
      house: (time) => snap(hours)(time) + parameters.houseOffset,
      ground: () => parameters.ground,
      roof: (time) => around(one, snap(hours)(time), parameters).roof,
    },
    thermostat: {
      sensor: { loop: body.loop, air: body.under, pot: body.roots[1] ?? 0 }[sensor],
      setPoint,
      differential,
    },
    powered: () => powered,
    until: 72 * hour,
    every,
  };
}

const lowestRoots = ({ body }: Run, course: ReturnType<typeof simulate>): number =>
  Math.min(
    ...body.roots.map((node) =>
      Array.from(course.temperatures[node] ?? []).reduce((a, b) => Math.min(a, b), Infinity),
    ),
  );

describe('a bench through a cold snap', () => {
  it('closes its energy balance to 1e-6, whatever the bench', () => {
    fc.assert(
      fc.property(anyBench, fc.integer({ min: 1, max: 40 }), (bench, hours) => {
        const one = { bench, region: metricRegion, station: inventedStation };
        const course = simulate(nightRun(one, hours, 600));
        const scale = Math.abs(course.brought) + Math.abs(course.lost) + Math.abs(course.gained) + 1;
        expectNear(course.brought - course.lost - course.gained, 0, 1e-6 * scale, 'heat unaccounted for');
      }),
      { numRuns: 60 },
    );
  });

  it('uses the energy of a one-second reference within 0.1 % at one-minute steps', () => {
    for (const sensor of ['loop', 'air'] as const) {
      const one = situation({
        control: { sensor, setPoint: sensor === 'loop' ? 4.5 : 2 },
        cover: { kind: 'film' },
      });
      const night = (every: number): Run => ({ ...nightRun(one, 10, every), until: 30 * hour });
      const minute = simulate(night(60));
      const second = simulate(night(1));
      expectNear(minute.brought / second.brought, 1, 1e-3);
    }
  });

  it('keeps the sensor within its differential while the cable can', () => {
    const one = situation({
      control: { sensor: 'loop', setPoint: 4.5, differential: 1 },
      cover: { kind: 'film' },
    });
    const course = simulate(nightRun(one, 10, 60));
    expect(course.switchings).toBeGreaterThan(20);
    for (const t of course.temperatures[0] ?? []) {
      expect(t).toBeGreaterThan(4.5 - 0.5 - 0.01);
      expect(t).toBeLessThan(4.5 + 0.5 + 0.01);
    }
  });

  it('comes to the steady state that is found without time', () => {
    const one = situation({
      control: { sensor: 'pot', setPoint: 10 },
      place: { designNight: 'own', ownLowest: 4 },
    });
    const parameters = expectedParameters(one);
    const rest = restOn(one, 'thermostat', parameters);
    const run = {
      ...nightRun(one, 0, hour),
      surroundings: staying(around(one, 4, parameters)),
      until: 120 * day,
    };
    const course = simulate(run);
    course.temperatures.forEach((one, node) => {
      expectNear(one.at(-1) ?? NaN, rest.temperatures[node] ?? NaN, 0.02, run.body.ids[node]);
    });
  });

  it('a steady cover is worth more than the cable: wet pots, a cover and a short night save roots', () => {
    const uncovered = nightRun(situation({ control: { sensor: 'pot', setPoint: 2 } }), 34, 300);
    const covered = nightRun(
      situation({ control: { sensor: 'pot', setPoint: 2 }, cover: { kind: 'film' } }),
      34,
      300,
      false,
    );
    expect(lowestRoots(covered, simulate(covered))).toBeGreaterThan(
      lowestRoots(uncovered, simulate(uncovered)),
    );
    const short = nightRun(situation({ cover: { kind: 'film' } }), 10, 300, false);
    expect(lowestRoots(short, simulate(short))).toBeGreaterThan(-0.5);
  });

  it('run in hours over a season of snaps it uses the energy of a run in five-minute steps within 1 %, in half hours 0.5 %', () => {
    // Steps in which pots begin or end to freeze are of first order: half the step, half the error.
    const season = (run: Run): Run => ({
      ...run,
      surroundings: {
        house: (time) => run.surroundings.house(time % (4 * day)),
        ground: run.surroundings.ground,
        roof: (time) => run.surroundings.roof(time % (4 * day)),
      },
      until: 40 * day,
    });
    for (const sensor of ['loop', 'air', 'pot'] as const) {
      const one = situation({
        control: { sensor, setPoint: sensor === 'loop' ? 4.5 : 2 },
        cover: { kind: 'film' },
      });
      const inMinutes = simulate(season(nightRun(one, 10, 300)));
      const inHours = simulate(season(nightRun(one, 10, hour)));
      const inHalves = simulate(season(nightRun(one, 10, hour / 2)));
      expectNear(inHours.brought / inMinutes.brought, 1, 0.01, `${sensor}, hours`);
      expectNear(inHalves.brought / inMinutes.brought, 1, 0.005, `${sensor}, half hours`);
    }
  });
});
