import type { Body } from './assemble.ts';
import { stepper, type Surroundings } from './stepper.ts';

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

/**
 * Runs a bench with its thermostat, which switches off above set point plus half the differential and on below set
 * point minus half, at the moment the sensor crosses and not at the next step. So a night may be run in minutes and a
 * season in hours.
 */
export function simulate(run: Run): Course {
  const { body, surroundings, thermostat, powered, every } = run;
  const { sensor, setPoint, differential } = thermostat;
  const [switchOn, switchOff] = [setPoint - differential / 2, setPoint + differential / 2];
  const steps = stepper(body, surroundings, run.start);
  const course = courseOf(run, steps.now);
  let on = steps.now[sensor]! < switchOn;
  const past = (level: number): number => (on ? level - switchOff : switchOn - level);

  for (let index = 1; index <= course.count; index++) {
    const begin = (index - 1) * every;
    let done = 0;
    let given = 0;
    while (done < every) {
      const time = begin + done;
      steps.renew(time);
      const live = powered(time);
      if (live && past(steps.now[sensor]!) > 0) on = !on;
      const power = on && live ? steps.fullPower() : 0;
      let step = every - done;
      let beyond = past(steps.attempt(time, step, power)[sensor]!);
      const switches = live && beyond > 0;
      if (switches) {
        // The sensor crosses within the step: shorten it to end there (false position, kept within the bracket).
        let [low, high, short] = [0, step, past(steps.now[sensor]!)];
        for (let round = 0; round < 20 && Math.abs(beyond) > atThreshold; round++) {
          if (beyond > 0) high = step;
          else [low, short] = [step, beyond];
          const guess = low + ((high - low) * -short) / (Math.max(beyond, atThreshold) - short);
          step = guess > low && guess < high ? guess : (low + high) / 2;
          beyond = past(steps.attempt(time, step, power)[sensor]!);
        }
      }
      course.book(steps.accept(), power * step);
      given += power * step;
      done = every - done - step < 1e-6 ? every : done + step;
      if (switches) {
        on = !on;
        course.switched();
      }
    }
    course.keep(index, given / every, steps.now);
  }
  return course.finished();
}

/** Keeps the record of a run. */
function courseOf({ body, surroundings, until, every }: Run, start: Float64Array) {
  const count = Math.round(until / every);
  const times = Float64Array.from({ length: count + 1 }, (_, index) => index * every);
  const temperatures = body.curves.map(() => new Float64Array(count + 1));
  const house = times.map((time) => surroundings.house(time));
  const power = new Float64Array(count + 1);
  let [switchings, brought, lost, gained] = [0, 0, 0, 0];
  const keep = (index: number, mean: number, now: Float64Array): void => {
    power[index] = mean;
    temperatures.forEach((one, node) => (one[index] = now[node]!));
  };
  keep(0, 0, start);
  return {
    count,
    keep,
    book(heat: { gained: number; lost: number }, bringing: number): void {
      brought += bringing;
      lost += heat.lost;
      gained += heat.gained;
    },
    switched(): void {
      switchings++;
    },
    finished: (): Course => ({ times, temperatures, house, power, switchings, brought, lost, gained }),
  };
}
