import type { UnitSystem } from '../../calculators/quantities/quantity.ts';

/**
 * Scales that a ruler can follow, one to so many: the preferred ones of ISO 5455 with the steps between them that
 * rulers carry, and those of the inch, where 1:12 is an inch to the foot.
 */
const ratios = {
  metric: [
    1, 2, 2.5, 4, 5, 8, 10, 15, 20, 25, 30, 40, 50, 60, 75, 80, 100, 125, 150, 200, 250, 300, 400, 500, 750,
    1000,
  ],
  us: [1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 240, 288, 384, 480, 600, 768, 960],
} as const satisfies Record<UnitSystem, readonly number[]>;

/** A scale: paper per metre [mm/m], and its name, "1:25". */
export interface RoundScale {
  readonly perMetre: number;
  readonly name: string;
}

/**
 * The largest round scale that is not larger than this one [mm/m], or undefined where even the smallest is.
 *
 * @param enlarged by how much the drawing is printed larger than it is drawn; the scale is round on paper
 */
export function roundScale(perMetre: number, system: UnitSystem, enlarged = 1): RoundScale | undefined {
  const ratio = ratios[system].find((one) => 1000 / one <= perMetre * enlarged + 1e-9);
  return ratio === undefined ? undefined : { perMetre: 1000 / ratio / enlarged, name: `1:${ratio}` };
}
