import { tubeResistance } from '../laws/conduction.ts';
import { cylinderFilm } from '../laws/natural-convection.ts';
import { radiantFilm } from '../laws/radiation.ts';
import type { Pipe } from '../tables/pipes.ts';
import { pipeInside } from './geometry.ts';

/** Emissivity of rigid PVC [1]: 0.91 to 0.93, from memory. */
const pipeEmissivity = 0.92;

/** Rounds in which the pipe's face settles: each leaves about a third of the error. */
const rounds = 16;

/**
 * By how much the fluid in a loop stands above the air around it [K] when it is given a steady power per length [W/m]:
 * inside film and wall in series with natural convection (Churchill and Chu) and radiation from the whole outer
 * surface to surroundings at the air's temperature.
 *
 * @param insideFilm between fluid and wall [W/(m²·K)]
 * @param air [°C]; the films are good from −60 to 120 °C of pipe and air
 */
export function loopAboveAir(
  pipe: Pick<Pipe, 'outsideDiameter' | 'wall' | 'conductivity'>,
  insideFilm: number,
  powerPerLength: number,
  air: number,
): number {
  const { outsideDiameter, wall, conductivity } = pipe;
  const inside = pipeInside({ outsideDiameter, wall });
  const around = Math.PI * outsideDiameter;
  let face = 0;
  for (let round = 0; round < rounds; round++) {
    const film =
      cylinderFilm(outsideDiameter, air + face, air) + radiantFilm(pipeEmissivity, air + face, air);
    face = powerPerLength / (film * around);
  }
  const behind =
    1 / (insideFilm * Math.PI * inside) + tubeResistance(outsideDiameter, inside, conductivity, 1);
  return face + powerPerLength * behind;
}
