import { loopLength, pipeInside, pipeOf } from '../../calculators/bench/geometry.ts';
import type { Situation } from '../../calculators/calculator.ts';
import { leastPitch, wind, type Winding } from '../../calculators/electric/winding.ts';

/** How thick the pipe is drawn at least and at most [mm]. */
export const slenderest = 12;
export const thickest = 42;
/** However many turns that is, this much of the pipe is shown [mm]. */
const leastShown = 20;
/** More turns than this are not told apart. */
const mostTurns = 70;

/** What the drawing needs to know of the bench, in metres. */
export interface Wound {
  readonly pipe: number;
  readonly inside: number;
  readonly cable: number;
  readonly length: number;
  readonly winding: Winding;
  /** From turn to turn as drawn: turns that would lie on each other are drawn side by side. */
  readonly pitch: number | null;
}

/** A bench as its winding is drawn. */
export function woundOf({ bench }: Situation): Wound {
  const pipe = pipeOf(bench).outsideDiameter;
  const cable = bench.cable.diameter;
  const length = loopLength(bench);
  const winding = wind({
    pipeDiameter: pipe,
    cableDiameter: cable,
    pipeLength: length,
    cableLength: bench.cable.length,
  });
  const pitch =
    winding.outcome === 'wound'
      ? winding.pitch
      : winding.outcome === 'touching'
        ? (leastPitch(pipe, cable, 0) ?? winding.pitch)
        : null;
  return { pipe, inside: pipeInside(pipeOf(bench)), cable, length, winding, pitch };
}

/** How the pipe is shown from the side: all of it, a window on it, or two windows a turn apart. */
export interface View {
  readonly kind: 'whole' | 'window' | 'broken';
  /** Paper per metre [mm/m]. */
  readonly perMetre: number;
  /** Width on paper of what is shown of the pipe; of the broken view the strip included [mm]. */
  readonly wide: number;
}

/**
 * The largest scale at which some turns can be seen, on a pipe that is neither too thin nor too thick.
 *
 * @param room what the side view and the end view may take up together [mm]
 * @param most how thick the pipe may be [mm]
 * @param round the scale to keep for a scale that would fit
 */
export function viewOf(
  { pipe, cable, length, pitch }: Wound,
  room: number,
  most: number,
  round: (perMetre: number) => number,
): View {
  const end = pipe + 2 * cable;
  const fit = (shown: number): number => round(Math.min(most / end, room / (shown + end)));
  const whole = fit(length);
  if (pipe * whole >= slenderest) return { kind: 'whole', perMetre: whole, wide: length * whole };
  if (pitch !== null && pitch <= length) {
    const turns = [3.6, 2.6, 1.8, 1.35].find((number) => pipe * fit(number * pitch) >= slenderest);
    if (turns !== undefined) {
      const perMetre = fit(turns * pitch);
      const wide = Math.min(room - end * perMetre, Math.max(mostTurns * pitch * perMetre, leastShown));
      return { kind: 'window', perMetre, wide };
    }
  }
  const perMetre = slenderest / pipe;
  return {
    kind: pitch !== null && pitch <= length ? 'broken' : 'window',
    perMetre,
    wide: room - end * perMetre,
  };
}
