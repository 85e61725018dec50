import type { Body } from './assemble.ts';
import type { Surroundings } from './place.ts';
import { stepper, type Stepper } from './stepper.ts';

/** How the cable is driven through time. */
export interface Thermostat {
  /** The node at which the sensor sits. */
  readonly sensor: number;
  /** [°C] */
  readonly setPoint: number;
  /** From switching off to switching on again [K]. */
  readonly differential: number;
}

export interface Run {
  readonly body: Body;
  /** Temperatures at the start, in the order of the body's ids [°C]. */
  readonly start: ArrayLike<number>;
  readonly surroundings: Surroundings;
  readonly thermostat: Thermostat;
  /** Whether there is power at a time; a power cut is a gap. */
  readonly powered: (time: number) => boolean;
  /** Length of the run [s]; a whole number of `every`. */
  readonly until: number;
  /** Distance of the times that are kept, which is also the longest step [s]. */
  readonly every: number;
  /**
   * `switched`: the thermostat switches at each moment that its sensor crosses. `averaged`: where it would switch more
   * than twice within a step, the rest of the step has the steady power that ends it at the set point; for seasons,
   * where nobody asks for single switchings.
   */
  readonly control?: 'switched' | 'averaged';
  /** Ends the run early, after a time that is kept, by the temperatures then. */
  readonly enough?: (temperatures: Float64Array) => boolean;
}

/** A bench through time. The first entry of each is the start. */
export interface Course {
  readonly times: Float64Array;
  /** By node, boundaries left out. */
  readonly temperatures: readonly Float64Array[];
  readonly house: Float64Array;
  /** Mean power since the time before [W]. */
  readonly power: Float64Array;
  readonly switchings: number;
  /** Heat brought by the cable, lost to house and ground, and gained by the nodes [J]: brought = lost + gained. */
  readonly brought: number;
  readonly lost: number;
  readonly gained: number;
}

/** A switching moment is found to this distance of the sensor from its threshold [K]. */
const atThreshold = 1e-3;
const mostRounds = 20;

/** Switchings in one step after which its rest is averaged. */
const crowded = 2;

/** Takes the bench some way towards the end of a step and says how far [s], and at which power [W]. */
type Drive = (time: number, longest: number) => { readonly step: number; readonly power: number };

/**
 * A thermostat that switches off above set point plus half the differential and on below set point minus half, at the
 * moment the sensor crosses and not at the next step. So a night may be run in minutes and a season in hours.
 */
function thermostatDrive(
  steps: Stepper,
  { thermostat: { sensor, setPoint, differential }, powered, every, control }: Run,
  onSwitch: () => void,
): Drive {
  const [switchOn, switchOff] = [setPoint - differential / 2, setPoint + differential / 2];
  let on = steps.now[sensor]! < switchOn;
  let inStep = 0;
  const past = (level: number): number => (on ? level - switchOff : switchOn - level);
  return (time, longest) => {
    const live = powered(time);
    if (longest === every) inStep = 0;
    if (live && control === 'averaged' && inStep >= crowded) {
      return { step: longest, power: holdingPower(steps, time, longest, sensor, setPoint) };
    }
    if (live && past(steps.now[sensor]!) > 0) on = !on;
    const power = on && live ? steps.fullPower() : 0;
    let step = longest;
    let beyond = past(steps.attempt(time, step, power)[sensor]!);
    if (!live || beyond <= 0) return { step, power };
    // The sensor crosses within the step: shorten it to end there (false position, kept within the bracket).
    let [low, high, short] = [0, step, past(steps.now[sensor]!)];
    for (let round = 0; round < mostRounds && Math.abs(beyond) > atThreshold; round++) {
      if (beyond > 0) high = step;
      else [low, short] = [step, beyond];
      const guess = low + ((high - low) * -short) / (Math.max(beyond, atThreshold) - short);
      step = guess > low && guess < high ? guess : (low + high) / 2;
      beyond = past(steps.attempt(time, step, power)[sensor]!);
    }
    on = !on;
    inStep++;
    onSwitch();
    return { step, power };
  };
}

/** The steady power that ends a step with the sensor at the set point, as far as the cable goes [W]; it is tried last. */
function holdingPower(steps: Stepper, time: number, step: number, sensor: number, setPoint: number): number {
  const full = steps.fullPower();
  const excess = (power: number): number => steps.attempt(time, step, power)[sensor]! - setPoint;
  let [low, atLow, high] = [0, excess(0), full];
  if (atLow >= 0) return 0;
  let atHigh = excess(full);
  if (atHigh <= 0) return full;
  // In between, the sensor's temperature rises with the power in nearly a straight line.
  let power = full;
  for (let round = 0; round < mostRounds; round++) {
    power = low + ((high - low) * -atLow) / (atHigh - atLow);
    const at = excess(power);
    if (Math.abs(at) <= atThreshold) break;
    if (at < 0) [low, atLow] = [power, at];
    else [high, atHigh] = [power, at];
  }
  return power;
}

/** Runs a bench with its thermostat. */
export function simulate(run: Run): Course {
  const { body, surroundings, every, enough = () => false } = run;
  const steps = stepper(body, surroundings, run.start);
  const course = courseOf(run, steps.now);
  const drive = thermostatDrive(steps, run, course.switched);
  let kept = 0;
  while (kept < course.count && !enough(steps.now)) {
    const index = ++kept;
    const begin = (index - 1) * every;
    let done = 0;
    let given = 0;
    while (done < every) {
      steps.renew(begin + done);
      const { step, power } = drive(begin + done, every - done);
      steps.accept();
      given += power * step;
      done = every - done - step < 1e-6 ? every : done + step;
    }
    course.keep(index, given, steps.now);
  }
  return course.finished(kept + 1, steps);
}

/** Keeps the record of a run. */
function courseOf({ body, surroundings, until, every }: Run, start: Float64Array) {
  const count = Math.round(until / every);
  const times = new Float64Array(count + 1);
  for (let index = 0; index <= count; index++) times[index] = index * every;
  // One piece of memory for all nodes, which is got and given back at once.
  const all = new Float64Array(body.curves.length * (count + 1));
  const temperatures = body.curves.map((_, node) =>
    all.subarray(node * (count + 1), (node + 1) * (count + 1)),
  );
  const house = times.map((time) => surroundings.house(time));
  const power = new Float64Array(count + 1);
  let switchings = 0;
  let brought = 0;
  const keep = (index: number, given: number, now: Float64Array): void => {
    brought += given;
    power[index] = given / every;
    for (let node = 0; node < temperatures.length; node++) temperatures[node]![index] = now[node]!;
  };
  keep(0, 0, start);
  return {
    count,
    keep,
    switched: (): void => {
      switchings++;
    },
    finished: (count: number, { account: { gained, lost } }: Stepper): Course => ({
      times: times.subarray(0, count),
      temperatures: temperatures.map((of) => of.subarray(0, count)),
      house: house.subarray(0, count),
      power: power.subarray(0, count),
      switchings,
      brought,
      lost,
      gained,
    }),
  };
}
