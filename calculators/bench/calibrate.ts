import type { Situation } from '../calculator.ts';
import { mediumFreezes } from '../properties/medium.ts';
import { OutOfRange } from '../range.ts';
import { assemble, type Body, type BodyNow, type HeatEntry } from './assemble.ts';
import { beforeReadings, parametersAt, type Belief } from './belief.ts';
import { capacityAt } from './enthalpy.ts';
import type { Bench } from './fields.ts';
import { topArea } from './geometry.ts';
import { inverse, leastSquares, NoMinimum, normalMatrix } from './least-squares.ts';
import { around, houseAir } from './place.ts';
import { priorsOf, type PriorId } from './priors.ts';
import { readingErrors, rootsReadApart, unseen } from './reading-errors.ts';
import { sensorNode } from './sensor.ts';
import { NoRest, settle, type Settled } from './settle.ts';
import { ninetieth } from './spread.ts';

/**
 * Fits the bench to what was read on it: the uncertain inputs for which readings and expectations together are least
 * contradicted (maximum a posteriori, by regularised least squares), and how well they are known then (the curvature
 * there, Laplace's approximation). The model is the steady network that answers every other question, driven at the
 * power read, with the heat that a cooling bench and its floor still give off.
 */

/** What a single look at a bench does not show, in units of its own spread. */
type Unseen = 'surroundings' | 'power' | 'drift' | 'floor' | 'sky';
type Unknown = PriorId | Unseen;
const unseenIds: readonly Unseen[] = ['surroundings', 'power', 'drift', 'floor', 'sky'];

/**
 * The cable's output is read off the meter and the thermostat takes no part: the power is as read. The sky of the night
 * that was read is `sky`; that of the hard night is still to come.
 */
const notFitted: readonly PriorId[] = ['cableOutput', 'sensorError', 'clearness'];

/**
 * What is compared with the model, or could be: a thermometer; `surroundings`, the one that the model is given as the
 * air around the bench (in the house, or outside where the house was not read); the meter; house above outside; how far
 * the roots changed between their two readings.
 */
export const readingIds = [
  'under',
  'loop',
  'roots',
  'house',
  'surroundings',
  'power',
  'offset',
  'drift',
] as const;
export type ReadingId = (typeof readingIds)[number];

export interface Compared {
  readonly id: ReadingId;
  readonly read: number;
  /** What the model says before the fit and after it, in the unit of the reading. */
  readonly before: number;
  readonly after: number;
  /** Standard deviation that the reading is allowed [unit of the reading]. */
  readonly error: number;
  /**
   * How far the reading lies from what all else says, in standard deviations of that distance: the standardised deleted
   * residual (R. D. Cook and S. Weisberg, Residuals and Influence in Regression, 1982, from memory).
   */
  readonly off: number;
}

export interface Calibration {
  readonly belief: Belief;
  readonly compared: readonly Compared[];
  /**
   * How far each uncertain input lies from what was expected of it, in standard deviations of that distance: as `off`
   * of a reading, taking the expectation for one.
   */
  readonly surprise: Readonly<Record<PriorId, number>>;
  /** Sum of squares at the fit: a chi-square with `count` degrees of freedom for a sound bench with sound readings. */
  readonly misfit: number;
  readonly count: number;
  /** Output of the cable over its label by the meter [1], were it on all the time. */
  readonly output: number;
  /** Temperature at the thermostat's sensor by the fit [°C]. */
  readonly atSensor: number;
  /**
   * How readings that could be taken depend on the unknowns at the fit, over their errors; unknowns in the order of the
   * belief's ids and then the unseen, of which `joint` is the covariance.
   */
  readonly sensitivity: Readonly<Record<ReadingId, Float64Array>>;
  readonly joint: Float64Array;
}

/** What cannot be done without. */
export type Missing = 'power' | 'surroundings' | 'bench';

export type Calibrated =
  | { readonly kind: 'fitted'; readonly calibration: Calibration }
  /** Nothing was read, or not enough. */
  | { readonly kind: 'missing'; readonly missing: readonly Missing[]; readonly any: boolean }
  /** The readings are so far from the bench that the model cannot follow. */
  | { readonly kind: 'out-of-reach' };

/** A node of the body that cools and warms with the air under the bench: all but the floor. */
const aboveFloor = (id: string): boolean => !id.startsWith('floor');

/** Whether the water in the pots may be freezing or thawing, which holds them at one temperature; to half an error. */
export const rootsFreezing = (roots: number | null): boolean =>
  roots !== null &&
  roots <= mediumFreezes.from + readingErrors.roots / 2 &&
  roots >= mediumFreezes.to - readingErrors.roots / 2;

/** How much less is known of heat given off while water freezes (assumption). */
const freezingFactor = 5;

/** Temperature at which the heat capacity of the bench is taken where the roots were not read [°C]: not frozen. */
const thawed = 5;

/** Heat that each part above the floor gives off for each degree that it cools [J/K]. */
const heldAboveFloor = ({ ids, curves }: Body, temperature: number): HeatEntry[] =>
  curves.flatMap((curve, node) =>
    aboveFloor(ids[node] ?? '') ? [{ node, share: capacityAt(curve, temperature) }] : [],
  );

/** The body as it stood when it was read: the cable at the power read, and heat from what cools. */
function asRead(
  body: Body,
  power: number,
  held: readonly HeatEntry[],
  drift: number,
  floorHeat: number,
): Body {
  const stored = held.map(({ node, share }) => ({ node, share: -drift * share }));
  const floor = { node: body.ids.indexOf('floor-1'), share: floorHeat };
  return {
    ...body,
    // Shares in watts: the whole is driven at one watt.
    at: (temperatures, faces): BodyNow => {
      const now = body.at(temperatures, faces);
      const cable = now.heat.map(({ node, share }) => ({ node, share: share * power }));
      return { ...now, heat: [...cable, ...stored, floor] };
    },
  };
}

const isNumber = (value: number | null): value is number => value !== null;

function missingIn({ outside, house, under, loop, roots, power }: Bench['readings']): Missing[] {
  return [
    ...(power === null ? ['power' as const] : []),
    ...(outside === null && house === null ? ['surroundings' as const] : []),
    ...([under, loop, roots].some(isNumber) ? [] : ['bench' as const]),
  ];
}

/** The model of the readings: unknowns in, what each thermometer would show out. */
export function modelOfReadings(situation: Situation) {
  const { bench } = situation;
  const { readings } = bench;
  const priors = priorsOf(situation);
  const ids = Object.keys(priors) as PriorId[];
  const unknowns: readonly Unknown[] = [...ids, ...unseenIds];
  const index = (id: Unknown): number => unknowns.indexOf(id);
  const read = readings.power ?? 0;
  const freezing = rootsFreezing(readings.roots);
  const frozenAt = !freezing && readings.roots !== null && readings.roots < 0 ? readings.roots : thawed;
  const driftSpread = unseen.drift.spread * (freezing ? freezingFactor : 1);

  // Which no uncertain input changes.
  let held: readonly HeatEntry[] | undefined;

  const at = (place: ArrayLike<number>, from?: Settled) => {
    const of = (id: Unknown): number => place[index(id)]!;
    const parameters = parametersAt(priors, ids, place);
    const surroundings = (readings.house ?? readings.outside ?? 0) + of('surroundings') * readingErrors.house;
    const house =
      readings.house === null ? houseAir(situation, surroundings, parameters.houseOffset) : surroundings;
    const drift = unseen.drift.expected + of('drift') * driftSpread;
    const floorHeat = (unseen.floor.expected + of('floor') * unseen.floor.spread) * topArea(bench);
    const power = read + of('power') * errorOfReading('power', read);
    const clearness = Math.max(0, unseen.sky.expected + of('sky') * unseen.sky.spread);
    const outside = readings.outside ?? house - parameters.houseOffset;
    const body = assemble(situation, parameters);
    held ??= heldAboveFloor(body, frozenAt);
    const settled = settle(
      asRead(body, power, held, drift, floorHeat),
      around(situation, outside, { ...parameters, clearness }, house),
      { power: 1 },
      from && { from, within: closeEnough },
    );
    const temperature = (node: number): number => settled.temperatures[node] ?? NaN;
    const shown: Readonly<Record<ReadingId, number>> = {
      under: temperature(body.under),
      loop: temperature(body.loop),
      roots: temperature(sensorNode(body, 'pot')),
      house,
      surroundings,
      power,
      offset: parameters.houseOffset,
      drift: drift * rootsReadApart,
    };
    return {
      shown,
      settled,
      label: settled.fullPower / parameters.cableOutput,
      atSensor: temperature(sensorNode(body, bench.control.sensor)),
    };
  };
  return { ids, unknowns, at };
}

/** The standard deviation that a reading is allowed; of the power read [W]. */
export function errorOfReading(id: ReadingId, power: number): number {
  switch (id) {
    case 'offset':
      return Math.hypot(readingErrors.house, readingErrors.outside, unseen.houseOffset.spread);
    case 'drift':
      return readingErrors.difference;
    case 'power':
      return Math.max(1, power * readingErrors.power);
    case 'surroundings':
      return readingErrors.house;
    default:
      return readingErrors[id];
  }
}

/** What was read of each; null where it was not. */
function readOf({ bench }: Situation): Readonly<Record<ReadingId, number | null>> {
  const { outside, house, under, loop, roots, rootsEarlier, power } = bench.readings;
  // A heated house says nothing of how far an unheated one stands above outside.
  const unheated = bench.place.houseKind === 'unheated' || bench.place.houseMinimum === null;
  return {
    under,
    loop,
    roots,
    house,
    surroundings: house ?? outside,
    power,
    offset: house !== null && outside !== null && unheated ? house - outside : null,
    drift: roots !== null && rootsEarlier !== null ? roots - rootsEarlier : null,
  };
}

/** Readings that the fit has to meet; the others are what it starts from. */
const met: readonly ReadingId[] = ['under', 'loop', 'roots', 'offset', 'drift'];

/** Step of the differences by which the fit finds its way [standard deviations]. */
const step = 0.2;
/** How close a bench that differs by that step has to come to rest [K]: far below what the step moves. */
const closeEnough = 5e-4;
/** A fall of the sum of squares that no reader could tell. */
const enough = 5e-3;

type Sensitivity = Readonly<Record<ReadingId, Float64Array>>;

function fit(situation: Situation): Calibration {
  const model = modelOfReadings(situation);
  const { ids, unknowns } = model;
  const size = unknowns.length;
  const reads = readOf(situation);
  const power = reads.power ?? 0;
  const rows = met.flatMap((id) => {
    const read = reads[id];
    return read === null ? [] : [{ id, read, error: errorOfReading(id, power) }];
  });

  // The place looked at last is asked for twice: for its residuals, and for how they change.
  let last: { place: Float64Array; state: ReturnType<typeof model.at> } | undefined;
  const stateAt = (place: Float64Array): ReturnType<typeof model.at> => {
    if (last?.place !== place) last = { place, state: model.at(place) };
    return last.state;
  };
  let known: { place: Float64Array; sensitivity: Sensitivity } | undefined;
  const sensitivityAt = (place: Float64Array): Sensitivity => {
    if (known?.place === place) return known.sensitivity;
    const { shown: here, settled } = stateAt(place);
    const there = unknowns.map((id, column) =>
      (notFitted as readonly Unknown[]).includes(id)
        ? here
        : model.at(place.with(column, place[column]! + step), settled).shown,
    );
    const slopes = (id: ReadingId) =>
      Float64Array.from(there, (shown) => (shown[id] - here[id]) / (step * errorOfReading(id, power)));
    const sensitivity = Object.fromEntries(readingIds.map((id) => [id, slopes(id)])) as Record<
      ReadingId,
      Float64Array
    >;
    known = { place, sensitivity };
    return sensitivity;
  };
  const residualsAt = (place: Float64Array): Float64Array => {
    const { shown } = stateAt(place);
    return Float64Array.from([...rows.map(({ id, read, error }) => (shown[id] - read) / error), ...place]);
  };
  const start = new Float64Array(size);
  const before = stateAt(start).shown;
  const best = leastSquares(
    {
      residuals: (place) => {
        try {
          return residualsAt(place);
        } catch (error) {
          // A step into what no bench is, which the fit takes back. At the start there is no way back.
          if (place === start || !beyond(error)) throw error;
          return new Float64Array(rows.length + size).fill(Infinity);
        }
      },
      jacobian: (place) => {
        const sensitivity = sensitivityAt(place);
        return [
          ...rows.map(({ id }) => sensitivity[id]),
          ...unknowns.map((_, row) => new Float64Array(size).fill(1, row, row + 1)),
        ];
      },
    },
    start,
    { precision: 1e-3, enough, mostRounds: 60 },
  );
  const { shown, label, atSensor } = stateAt(best.x);
  const joint = inverse(size, normalMatrix(best.jacobian, size));

  const off = (row: number): number => {
    const slopes = best.jacobian[row]!;
    let told = 0;
    slopes.forEach((one, i) => slopes.forEach((other, j) => (told += one * other * joint[i * size + j]!)));
    // Where all else says nothing of it, nothing contradicts it.
    return told > 1 - 1e-6 ? 0 : -best.residuals[row]! / Math.sqrt(1 - told);
  };
  const compare = (id: ReadingId, row: number): Compared => ({
    id,
    read: reads[id] ?? NaN,
    before: before[id],
    after: shown[id],
    error: errorOfReading(id, power),
    off: off(row),
  });
  const output = label > 0 ? power / label : NaN;
  return {
    belief: beliefFrom(situation, best.x, joint, output, errorOfReading('power', power) / label),
    compared: [
      ...rows.map(({ id }, row) => compare(id, row)),
      ...(['surroundings', 'power'] as const).map((id) => compare(id, rows.length + unknowns.indexOf(id))),
    ],
    surprise: Object.fromEntries(ids.map((id, index) => [id, -off(rows.length + index)])) as Record<
      PriorId,
      number
    >,
    misfit: best.sum,
    count: rows.length,
    output,
    atSensor,
    sensitivity: sensitivityAt(best.x),
    joint,
  };
}

/**
 * What is believed after the fit. The output of a cable that was on all the time is the power read over its label; where
 * that lies within what labels promise, the two are weighed against each other; beyond, the label says nothing any more.
 */
function beliefFrom(
  situation: Situation,
  place: Float64Array,
  joint: Float64Array,
  output: number,
  error: number,
): Belief {
  const { ids } = beforeReadings(situation);
  const size = ids.length;
  const middle = place.slice(0, size);
  const covariance = new Float64Array(size * size);
  const all = place.length;
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) covariance[i * size + j] = joint[i * all + j]!;
  }
  if (situation.bench.readings.running === 'on' && Number.isFinite(output)) {
    const { expected, high } = priorsOf(situation).cableOutput;
    const own = (high - expected) / ninetieth;
    const index = ids.indexOf('cableOutput');
    const measured = (output - expected) / own;
    const variance = (error / own) ** 2;
    const faulty = Math.abs(measured) > 3 * Math.sqrt(1 + variance);
    middle[index] = faulty ? measured : measured / (1 + variance);
    covariance[index * (size + 1)] = faulty ? variance : variance / (1 + variance);
  }
  return { ids, middle, covariance };
}

/** Whether an error says that the model was asked for what no bench is. */
const beyond = (error: unknown): boolean =>
  error instanceof NoRest || error instanceof OutOfRange || error instanceof NoMinimum;

/** Fits a bench to its readings. */
export function calibrate(situation: Situation): Calibrated {
  const { readings } = situation.bench;
  const missing = missingIn(readings);
  if (missing.length > 0) {
    const { running: _, ...numbers } = readings;
    return { kind: 'missing', missing, any: Object.values(numbers).some(isNumber) };
  }
  try {
    return { kind: 'fitted', calibration: fit(situation) };
  } catch (error) {
    if (beyond(error)) return { kind: 'out-of-reach' };
    throw error;
  }
}
