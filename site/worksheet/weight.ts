import type { Warning } from '../../calculators/calculator.ts';

/**
 * What may happen, gravest first: someone is electrocuted; something burns or melts; the loop bursts or poisons; the
 * roots die; the heat fails unnoticed or works against its purpose. What is not named here comes last.
 */
const gravest: readonly string[] = [
  'no-ground-fault-protection',
  'equipment-protection-only',
  'turns-touch',
  'sheath-over-limit',
  'pipe-over-limit',
  'no-limit-saves',
  'gap-too-small',
  'runs-touch',
  'bend-too-tight',
  'wire-too-thin',
  'breaker-too-small',
  'cable-shorter-than-loop',
  'limit-thermostat',
  'crossing-over-limit',
  'loose-over-limit',
  'empty-over-limit',
  'wire-may-be-too-thin',
  'breaker-not-standard',
  'antifreeze-poison',
  'mix-freezes',
  'mix-beyond-published',
  'standpipe-too-short',
  'fill-above-hottest',
  'loop-freezes-in-snap',
  'loop-may-freeze',
  'mix-little-in-hand',
  'mix-measured-weak',
  'no-antifreeze',
  'limit-kills-roots',
  'roots-below-limit-in-snap',
  'roots-before-power',
  'limit-cuts-hard-nights',
  'limit-cuts-in-thaw',
  'limit-near-killing',
  'roots-may-fall-below-limit',
  'loop-sensor-rests',
  'sensor-on-loop',
  'sensor-rests-too-early',
  'thermostat-rests-on-ice',
  'set-point-low',
  'low-alarm-late',
  'high-alarm-silent',
  'short-of-heat',
  'roots-below-limit',
  'heat-from-below-fails',
  'set-point-wakes',
];

/**
 * Warnings that a grower may live with on a page of the guide, where the next step mends them, and that no sheet on a
 * wall may carry: a bench that loses its roots, or its loop, on the very night that it is built for.
 */
const fatal: ReadonlySet<string> = new Set(['roots-below-limit-in-snap', 'loop-freezes-in-snap']);

/** Whether a bench with this warning gets a sheet that is marked as not to be built. */
export const forbids = ({ level, code }: Warning): boolean => level === 'stop' || fatal.has(code);

const weightOf = ({ code }: Warning): number => {
  const at = gravest.indexOf(code);
  return at < 0 ? gravest.length : at;
};

/** The gravest first; those of one weight in the order of the guide. */
export const byWeight = (warnings: readonly Warning[]): readonly Warning[] =>
  warnings.toSorted((a, b) => weightOf(a) - weightOf(b));
