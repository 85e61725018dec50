import { faceCount, stackTransmittance, type SheetStack } from '../calculators/bench/sheet-stack.ts';
import { cylinderFlowFilm } from '../calculators/laws/forced-convection.ts';
import {
  airGapFilm,
  cylinderFilm,
  horizontalFilm,
  verticalFilm,
} from '../calculators/laws/natural-convection.ts';
import { radiantFilm } from '../calculators/laws/radiation.ts';
import { air } from '../calculators/properties/air.ts';
import { freezingPoint, mixDensity, mixViscosity } from '../calculators/properties/glycol.ts';
import { moistPrandtl, saturationPressure } from '../calculators/properties/moist-air.ts';
import { waterConductivity, waterDensity } from '../calculators/properties/water.ts';
import { toBase } from '../calculators/quantities/quantity.ts';
import { sheets } from '../calculators/tables/films.ts';
import type { Case } from './bench-cases.ts';

const times = 1000;

/** A thousand evaluations between 0 and 20 °C: milliseconds for them are microseconds for one. */
const thousand =
  (evaluate: (t: number) => number): Case['work'] =>
  () => {
    let sum = 0;
    for (let time = 0; time < times; time++) sum += evaluate((20 * time) / times);
    return sum;
  };

/** A solver asks for properties a thousand times in a steady state, and for a season a million times: 1 µs each. */
const properties: Readonly<Record<string, (t: number) => number>> = {
  'density of water': waterDensity,
  'conductivity of water': waterConductivity,
  'density of a mix': (t) => mixDensity('propylene', 0.3, t),
  'viscosity of a mix': (t) => mixViscosity('propylene', 0.3, t),
  'freezing point of a mix': (t) => freezingPoint('propylene', t / 50),
  'all of air': (t) => air(t).prandtl,
  'pressure of vapour': saturationPressure,
  'Prandtl number of moist air': (t) => moistPrandtl(t, 0.9),
  'a unit converted': (t) => toBase('temperature', t, '°F'),
};

/** Films are asked for as often, each with two or three properties of air in it: 2 µs each. */
const films: Readonly<Record<string, (t: number) => number>> = {
  'film of a pipe': (t) => cylinderFilm(0.11, t + 1, 5),
  'film of a wall': (t) => verticalFilm(0.8, t + 1, 5),
  'film of a bench top': (t) => horizontalFilm(0.3, t + 1, 5, 'up'),
  'film of an air gap': (t) => airGapFilm(0.02, 0.8, t + 1, 5),
  'film of a pipe in a draught': (t) => cylinderFlowFilm(0.11, 0.5, t + 1, 5),
  'film of radiation': (t) => radiantFilm(0.9, t, 5),
};

/** One round of a skirt of one to three sheets, as a solver takes it. */
function skirt(count: number): Case {
  const stack: SheetStack = {
    sheets: Array.from({ length: count }, () => sheets['film-plain']),
    wet: false,
    longwave: 0,
    place: 'side',
    size: 0.8,
  };
  const faces = new Float64Array(faceCount(stack)).fill(NaN);
  return {
    name: `skirt of ${count} × 1000`,
    work: thousand((t) => stackTransmittance(stack, t, -9, faces, 0)),
  };
}

const asCases = (laws: Readonly<Record<string, (t: number) => number>>, budget: number): Case[] =>
  Object.entries(laws).map(([name, law]) => ({ name: `${name} × 1000`, work: thousand(law), budget }));

/** What properties and laws cost, a thousand evaluations to a run. */
export const lawCases: readonly Case[] = [
  ...asCases(properties, 1),
  ...asCases(films, 2),
  ...[1, 2, 3].map(skirt),
];
