import type { Prior } from './priors.ts';

/**
 * The 90th percentile of the standard normal distribution: four of five values lie within this many standard
 * deviations of the middle (NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.1, from memory).
 */
export const ninetieth = 1.2815515655446004;

/** Whether a quantity is spread by a factor rather than by a difference: what is positive and on no scale of its own. */
const byFactor = ({ quantity, low }: Prior): boolean =>
  low > 0 && quantity !== 'temperature' && quantity !== 'temperatureDifference' && quantity !== 'share';

/**
 * The value of an uncertain input that lies `z` standard deviations from the middle of what is believed: `expected` at
 * 0, `low` and `high` at the 10th and the 90th percentile, smooth and rising in between and beyond. Where the two
 * sides differ the curve is exponential (a shifted log-normal distribution: the g distribution of J. W. Tukey,
 * Exploratory Data Analysis, 1977, from memory); positive quantities are spread by factors.
 */
export function spreadValue(prior: Prior, z: number): number {
  if (prior.low === prior.high) return prior.expected;
  const scale = byFactor(prior) ? Math.log : (value: number) => value;
  const [low, middle, high] = [scale(prior.low), scale(prior.expected), scale(prior.high)];
  const [down, up] = [middle - low, high - middle];
  const skew = Math.log(up / down) / ninetieth;
  // (e^(skew z) − 1) / skew, which is z where both sides are alike.
  const stretched = Math.abs(skew) < 1e-6 ? z : Math.expm1(skew * z) / skew;
  const unit = Math.abs(skew) < 1e-6 ? up / ninetieth : (up * skew) / Math.expm1(skew * ninetieth);
  const value = middle + unit * stretched;
  if (byFactor(prior)) return Math.exp(value);
  // A share stays a share; what is more than all of it, such as output above a label, stays below twice.
  return prior.quantity === 'share' ? Math.min(2, Math.max(0, value)) : value;
}
