import type { Body } from './assemble.ts';
import { stepper, type Stepper, type Surroundings } from './stepper.ts';

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
   * `switched`: the thermostat switches at the moment its sensor crosses. `averaged`: each step has the steady power
   * that ends it at the set point, as far as the cable goes; for seasons, where nobody asks for single switchings.
   */
  readonly control?: 'switched' | 'averaged';
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

/** Takes the bench some way towards the end of a step and says how far [s], and at which power [W]. */
type Drive = (time: number, longest: number) => { readonly step: number; readonly power: number };

/**
 * A thermostat that switches off above set point plus half the differential and on below set point minus half, at the
 * moment the sensor crosses and not at the next step. So a night may be run in minutes and a season in hours.
 */
function switched(
  steps: Stepper,
  { sensor, setPoint, differential }: Thermostat,
  powered: Run['powered'],
  onSwitch: () => void,
): Drive {
  const [switchOn, switchOff] = [setPoint - differential / 2, setPoint + differential / 2];
  let on = steps.now[sensor]! < switchOn;
  const past = (level: number): number => (on ? level - switchOff : switchOn - level);
  return (time, longest) => {
    const live = powered(time);
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
    onSwitch();
    return { step, power };
  };
}

/** Whole steps at the power that ends each of them with the sensor at the set point, as far as the cable goes. */
function averaged(steps: Stepper, { sensor, setPoint }: Thermostat, powered: Run['powered']): Drive {
  let last = 0;
  return (time, step) => {
    const full = powered(time) ? steps.fullPower() : 0;
    const excess = (power: number): number => steps.attempt(time, step, power)[sensor]! - setPoint;
    const take = (power: number) => {
      last = power;
      return { step, power };
    };
    if (full === 0) {
      steps.attempt(time, step, 0);
      return take(0);
    }
    // What was right for the step before is tried first: cables rest or run flat out for days.
    const flatOut = last >= full;
    const [first, other] = flatOut ? [full, 0] : [0, full];
    const atFirst = excess(first);
    if (flatOut ? atFirst <= 0 : atFirst >= 0) return take(first);
    const atOther = excess(other);
    if (flatOut ? atOther >= 0 : atOther <= 0) return take(other);
    // In between, the sensor's temperature rises with the power in nearly a straight line.
    let [low, high] = [0, full];
    let [atLow, atHigh] = flatOut ? [atOther, atFirst] : [atFirst, atOther];
    let power = full;
    for (let round = 0; round < mostRounds; round++) {
      power = low + ((high - low) * -atLow) / (atHigh - atLow);
      const at = excess(power);
      if (Math.abs(at) <= atThreshold) break;
      if (at < 0) [low, atLow] = [power, at];
      else [high, atHigh] = [power, at];
    }
    return take(power);
  };
}

/** Runs a bench with its thermostat. */
export function simulate(run: Run): Course {
  const { body, surroundings, thermostat, powered, every } = run;
  const steps = stepper(body, surroundings, run.start);
  const course = courseOf(run, steps.now);
  const drive =
    run.control === 'averaged'
      ? averaged(steps, thermostat, powered)
      : switched(steps, thermostat, powered, course.switched);
  for (let index = 1; index <= course.count; index++) {
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
  return course.finished(steps);
}

/** Keeps the record of a run. */
function courseOf({ body, surroundings, until, every }: Run, start: Float64Array) {
  const count = Math.round(until / every);
  const times = Float64Array.from({ length: count + 1 }, (_, index) => index * every);
  const temperatures = body.curves.map(() => new Float64Array(count + 1));
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
    finished: ({ account: { gained, lost } }: Stepper): Course => ({
      times,
      temperatures,
      house,
      power,
      switchings,
      brought,
      lost,
      gained,
    }),
  };
}
