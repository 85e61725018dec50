import { within } from '../range.ts';

/**
 * A cable wound around a pipe in one layer, evenly and in one direction: a helix on the cylinder through the middle
 * of the cable, whose diameter is that of the pipe and one cable. Unrolled, the cylinder is a strip as long as the
 * pipe, the cable a straight line on it, and one turn the long side of a triangle with the sides pitch and
 * circumference. Everything here follows from that triangle. Lengths in m, angles in radians.
 */
export interface WindingInput {
  /** Outside diameter of the pipe. */
  readonly pipeDiameter: number;
  /** Outside diameter of the cable; of a flat cable its thickness. */
  readonly cableDiameter: number;
  /** Length of pipe that is wound. */
  readonly pipeLength: number;
  /** Heated length of the cable. */
  readonly cableLength: number;
}

export interface Helix {
  /** Full turns over the whole pipe. */
  readonly turns: number;
  /** From one turn to the next, along the pipe. */
  readonly pitch: number;
  /** Cable in one turn. */
  readonly turnLength: number;
  /** Between the cable and a ring around the pipe: small where the turns lie close, a quarter turn along the pipe. */
  readonly wrapAngle: number;
  /**
   * Clear space between two neighbouring turns, measured across the cable. Less than nothing where they would have to
   * overlap. With less than one turn there is no neighbour, and the figure means nothing.
   */
  readonly gap: number;
  /** Radius of curvature of the middle of the cable. */
  readonly bendRadius: number;
  /** Radius of curvature of the cable's inner side, which is what a sheet's smallest bend means. */
  readonly innerBendRadius: number;
  /** Cable per length of pipe [1]; also what it multiplies the cable's power per length by. */
  readonly cablePerPipe: number;
}

/**
 * `wound`: the cable lies in turns. `straight`: it is just as long as the pipe. `too-short`: it does not reach the end.
 * `touching`: there is more of it than fits with its turns apart; the helix is what would be tried.
 */
export type Winding =
  | ({ readonly outcome: 'wound' } & Helix)
  | { readonly outcome: 'straight' }
  | { readonly outcome: 'too-short'; readonly missing: number }
  | ({ readonly outcome: 'touching'; readonly tooMuch: number } & Helix);

/** Around the pipe through the middle of the cable, once: π (D + d). */
export const circumference = (pipeDiameter: number, cableDiameter: number): number =>
  Math.PI * (pipeDiameter + cableDiameter);

/** A cable is taken for straight when it is longer than the pipe by less than this share: a millimetre in a kilometre. */
const straightWithin = 1e-6;

function checked({ pipeDiameter, cableDiameter, pipeLength, cableLength }: WindingInput): void {
  for (const [name, value] of Object.entries({ pipeDiameter, cableDiameter, pipeLength, cableLength })) {
    within(`${name} [m]`, value, Number.MIN_VALUE, Number.MAX_VALUE);
  }
}

/** The triangle of one turn: everything about a helix that its pitch decides. */
function helixOf(pipeDiameter: number, cableDiameter: number, pipeLength: number, pitch: number): Helix {
  const around = circumference(pipeDiameter, cableDiameter);
  const turnLength = Math.hypot(pitch, around);
  const radius = (pipeDiameter + cableDiameter) / 2;
  // Curvature of a helix: R (1 + (p / 2πR)²), which is R (turn / circumference)².
  const bendRadius = radius * (turnLength / around) ** 2;
  return {
    turns: pipeLength / pitch,
    pitch,
    turnLength,
    wrapAngle: Math.atan2(pitch, around),
    gap: (pitch * around) / turnLength - cableDiameter,
    bendRadius,
    innerBendRadius: bendRadius - cableDiameter / 2,
    cablePerPipe: turnLength / pitch,
  };
}

/**
 * How a cable lies when the whole of it is spread evenly over the whole pipe: from C² = L² + (n π (D + d))².
 * Never throws for a cable that does not fit: that is an outcome. Throws `OutOfRange` on a length that is not positive.
 */
export function wind(input: WindingInput): Winding {
  checked(input);
  const { pipeDiameter, cableDiameter, pipeLength, cableLength } = input;
  if (cableLength < pipeLength * (1 - straightWithin)) {
    return { outcome: 'too-short', missing: pipeLength - cableLength };
  }
  if (cableLength <= pipeLength * (1 + straightWithin)) return { outcome: 'straight' };
  const across = Math.sqrt((cableLength - pipeLength) * (cableLength + pipeLength));
  const pitch = (pipeLength * circumference(pipeDiameter, cableDiameter)) / across;
  const helix = helixOf(pipeDiameter, cableDiameter, pipeLength, pitch);
  const tooMuch = cableLength - longestCable(input, 0);
  return tooMuch > 0 ? { outcome: 'touching', tooMuch, ...helix } : { outcome: 'wound', ...helix };
}

/**
 * The longest cable that fits with this clear gap between its turns: L π (D + d) / (d + g). It fills the strip of
 * unrolled pipe with bands as wide as one cable and one gap. Never less than the pipe itself, which a straight cable
 * covers whatever the gap.
 */
export function longestCable(
  { pipeDiameter, cableDiameter, pipeLength }: Omit<WindingInput, 'cableLength'>,
  gap: number,
): number {
  const around = circumference(pipeDiameter, cableDiameter);
  return pipeLength * Math.max(1, around / (cableDiameter + gap));
}

/**
 * The least pitch that leaves this clear gap between the turns, p = w S / √(S² − w²) with w = d + g and S the
 * circumference; null where the gap is wider than the pipe is around, so that only a straight cable keeps it.
 */
export function leastPitch(pipeDiameter: number, cableDiameter: number, gap: number): number | null {
  const around = circumference(pipeDiameter, cableDiameter);
  const band = cableDiameter + gap;
  return band < around ? (band * around) / Math.sqrt(around ** 2 - band ** 2) : null;
}

/** Cable per length of pipe at a pitch [1]: √(1 + (π (D + d) / p)²). */
export const cablePerPipeAt = (pipeDiameter: number, cableDiameter: number, pitch: number): number =>
  Math.hypot(1, circumference(pipeDiameter, cableDiameter) / pitch);

/** The pitch that lays this much cable on each length of pipe, p = π (D + d) / √(r² − 1); null for a straight run. */
export const pitchFor = (pipeDiameter: number, cableDiameter: number, cablePerPipe: number): number | null =>
  cablePerPipe > 1 ? circumference(pipeDiameter, cableDiameter) / Math.sqrt(cablePerPipe ** 2 - 1) : null;

/** What is left over when the cable is wound at some pitch other than the even one. Exactly one of the two is not zero. */
export interface LeftOver {
  /** Cable that has no more pipe to lie on. */
  readonly cable: number;
  /** Pipe that has no more cable on it. */
  readonly pipe: number;
}

/** What is left over at the end when the cable is wound at this pitch [m] all along. */
export function leftOverAt(input: WindingInput, pitch: number): LeftOver {
  checked(input);
  const perPipe = cablePerPipeAt(input.pipeDiameter, input.cableDiameter, pitch);
  const needed = input.pipeLength * perPipe;
  return {
    cable: Math.max(0, input.cableLength - needed),
    pipe: Math.max(0, input.pipeLength - input.cableLength / perPipe),
  };
}

/**
 * How far apart the turns come on the inner side of a bend in the pipe, along the pipe [m]: p (1 − R / B), with R the
 * helix radius and B the radius of the pipe's own middle line. Turns bunch up there, so a bend decides whether they touch.
 * Zero where the bend is so tight that its inner side has no length.
 */
export const pitchInsideBend = (pitch: number, helixDiameter: number, bendRadius: number): number =>
  pitch * Math.max(0, 1 - helixDiameter / 2 / bendRadius);
