import { describe, it } from 'vitest';
import type { Body } from '../../calculators/bench/assemble.ts';
import { capacityAt, sensible } from '../../calculators/bench/enthalpy.ts';
import { expectedParameters } from '../../calculators/bench/priors.ts';
import { restOn } from '../../calculators/bench/steady.ts';
import { stepper } from '../../calculators/bench/stepper.ts';
import { expectNear } from '../support/near.ts';
import { byOdex, exact } from '../../scripts/second-opinion.ts';
import { situation } from '../support/situations.ts';

const hours = 20;

/** House air that falls from +6 to −10 °C in seven hours, stays ten, and comes back. */
const house = (time: number): number => {
  const t = time / 3600;
  if (t < 6) return 6;
  if (t < 13) return 6 - (16 * (t - 6)) / 7;
  if (t < 23) return -10;
  return Math.min(6, -10 + (16 * (t - 23)) / 7);
};
const surroundings = { house, ground: () => 7, roof: (time: number) => house(time) - 4 };

function atRest() {
  const one = situation({ cover: { kind: 'film' } });
  return restOn(one, 'thermostat', expectedParameters(one), 4);
}

/** Node temperatures of our own solver at the end of each hour. */
function ours(body: Body, start: ArrayLike<number>, every: number, power: number): number[][] {
  const steps = stepper(body, surroundings, start);
  const hourly: number[][] = [];
  for (let time = 0; time < hours * 3600; time += every) {
    steps.renew(time);
    steps.attempt(time, every, power);
    steps.accept();
    if ((time + every) % 3600 === 0) hourly.push(Array.from(steps.now.subarray(0, body.nodeCount)));
  }
  return hourly;
}

function expectAlike(
  body: Body,
  found: readonly (readonly number[])[],
  expected: readonly (readonly number[])[],
  within: number,
): void {
  found.forEach((row, hour) =>
    row.forEach((t, node) =>
      expectNear(t, expected[hour]?.[node] ?? NaN, within, `${body.ids[node]} after ${hour + 1} h`),
    ),
  );
}

describe('a second opinion by the general integrator odex, on the same bench', () => {
  it('agrees within 0.001 K at minutes and 0.01 K at half hours where links and capacities stay as they are', () => {
    const { body: live, temperatures } = atRest();
    const faces = new Float64Array(live.faceCount).fill(NaN);
    for (let round = 0; round < 30; round++) live.at(temperatures, faces);
    const links = live.at(temperatures, faces);
    const fixed: Body = {
      ...live,
      faceCount: 0,
      curves: live.curves.map((curve) => sensible(capacityAt(curve, 5))),
      at: () => links,
    };
    const { temperatures: expected } = byOdex(fixed, surroundings, temperatures, hours, () => 300);
    expectAlike(fixed, ours(fixed, temperatures, 60, 300), expected, 0.001);
    expectAlike(fixed, ours(fixed, temperatures, 1800, 300), expected, 0.01);
  });

  it('agrees within 0.1 K where links follow the temperatures and pots freeze', () => {
    // Our links are asked for anew when a temperature has moved by 0.4 K; the integrator asks each time. So for a while
    // a link may be that of a temperature 0.4 K away, of a difference of some 10 K: about 1 % of it with laws that go
    // as the fourth root, for a node that follows within the hour.
    const { body, temperatures } = atRest();
    const { temperatures: expected } = byOdex(body, surroundings, temperatures, hours, () => 300, {
      ...exact,
      tolerance: 1e-7,
    });
    expectAlike(body, ours(body, temperatures, 60, 300), expected, 0.1);
    expectAlike(body, ours(body, temperatures, 600, 300), expected, 0.1);
  });
});
