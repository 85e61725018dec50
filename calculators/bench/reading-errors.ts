import { cite } from '../cite.ts';

/**
 * How far a careful grower's reading may be from what the model means by it, as standard deviations: the thermometer,
 * and that it hangs in one spot of an air that is not the same everywhere.
 */
export const readingErrors = {
  /** [K] */
  outside: 0.5,
  house: 0.5,
  under: 0.8,
  /** On the pipe's face, not in the fluid [K]. */
  loop: 1,
  /** One pot of many [K]. */
  roots: 0.6,
  /** Of an energy meter, of its reading [1]. */
  power: 0.02,
  /** Of the difference of two readings of one thermometer in one place [K]. */
  difference: 0.2,
} as const;

export const readingErrorCites = [
  cite('common-practice', 'household thermometers are good to about half a kelvin, energy meters to 2 %'),
  cite('assumption', 'spread of the air under a bench and from pot to pot'),
];

/** Time between the two readings of the roots [s]. */
export const rootsReadApart = 2 * 3600;

/**
 * What a single look at a bench does not show: how fast it still cools, and the heat that its floor gives back from
 * the days before. Worked out with this guide's own model: at five in the morning of some 250 winter nights of weather
 * made up at random, example bench with and without a cover, the pots cooled by 0.25 to 0.6 K/h and the floor gave
 * 2 to 13 W/m² (assumption: wider, for calm cloudy nights and earlier hours).
 */
export const unseen = {
  /** Change of the bench's temperature [K/s]. */
  drift: { expected: -0.25 / 3600, spread: 0.2 / 3600 },
  /** Heat of the floor beside what comes from the ground below [W/m²]. */
  floor: { expected: 6, spread: 5 },
  /** How clear the sky was on the night of the readings, which may be any night [1]. */
  sky: { expected: 0.5, spread: 0.35 },
  /** From one night to another, of house above outside [K]. */
  houseOffset: { spread: 1 },
} as const;
