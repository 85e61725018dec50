import { restingTransmittance } from '../bench/sheet-stack.ts';
import { cite } from '../cite.ts';
import { windFilm } from '../laws/forced-convection.ts';
import { airGapFilm, horizontalFilm, verticalFilm } from '../laws/natural-convection.ts';
import { exchangeEmissivity, radiantFilm } from '../laws/radiation.ts';
import { sheets, type Sheet } from '../tables/films.ts';
import { fromCompanion } from './books.ts';
import type { Check, Tolerance } from './check.ts';

/*
 * Transmittances put together from the laws, against published ones. Published values are for whole houses and say little
 * of what they hold for. What is assumed here, once for all of them: an upright wall of 2 m, 15 °C within and −5 °C
 * without, still air within, wind without that makes a film of 4 + 4 v, everything around as warm as the air.
 */

const [inside, outside] = [15, -5];
const wallHeight = 2;
/** Wind of European standards, and of American ones: 15 mph [m/s]. */
const europeanWind = 4;
const americanWind = 6.7;

const [plain, infrared] = [sheets['film-plain'], sheets['film-infrared']];
/** Glass of 4 mm, 1.0 W/(m·K), emissivity 0.84 (EN 673, from memory): nothing passes through it. */
const glass: Sheet = { ...plain, resistance: 0.004, longwaveDry: 0, longwaveWet: 0, emissivity: 0.84 };

const wallOf = (layers: readonly Sheet[], wet: boolean, wind = europeanWind): number =>
  restingTransmittance(
    { sheets: layers, wet, longwave: 0, place: 'side', size: wallHeight, moving: windFilm(wind) },
    inside,
    outside,
  );

const britishThermal = 5.678263;
const saving = (of: number, against: number): number => 100 * (1 - of / against);

const fewDigits: Tolerance = {
  share: 0.1,
  because: 'no wind, size or temperatures are published; published values of one covering differ by 10 %',
};
/**
 * What a published value of a film leaves open: 4.4 dry, 3.2 wet for two of them. The dry one lies above what is published
 * because plain film lets three quarters of the heat radiation of all that stands under it pass (Hanson 1963: it holds back
 * 26 %). Two films that let nothing pass would have 2.7, half of it 3.9; two dry plain ones in calm air have 4.1. Films over
 * a crop are wet or dusty as a rule, and the published values are of such houses.
 */
const dryOrWet: Tolerance = {
  share: 0.25,
  because:
    'it does not say whether the film is wet: by the laws that alone is 12 % for one film, 30 % for two',
};

const extension = {
  kind: 'table',
  from: cite('extension-coverings', 'any single and double layer'),
  standing: 'seen',
} as const;
const ep406 = {
  kind: 'table',
  from: cite('ep406', 'heat transfer coefficients of coverings'),
  standing: 'memory',
} as const;
const rasheed = {
  kind: 'table',
  from: cite('rasheed2017', 'abstract, coverings against polyethylene'),
  standing: 'seen',
} as const;

const walls: readonly Check[] = [
  {
    ...extension,
    what: 'transmittance of one layer, plain film, dry',
    given: 'wind 4 m/s',
    printed: '1.0 to 1.2',
    unit: 'Btu/(h·ft²·°F)',
    computed: () => wallOf([plain], false) / britishThermal,
  },
  {
    ...extension,
    what: 'transmittance of one layer, plain film, wet',
    given: 'wind 4 m/s',
    printed: '1.0 to 1.2',
    unit: 'Btu/(h·ft²·°F)',
    computed: () => wallOf([plain], true) / britishThermal,
  },
  {
    ...extension,
    what: 'transmittance of two layers, plain film, dry',
    given: 'wind 4 m/s',
    printed: '0.6 to 0.7',
    unit: 'Btu/(h·ft²·°F)',
    computed: () => wallOf([plain, plain], false) / britishThermal,
    tolerance: dryOrWet,
  },
  {
    ...extension,
    what: 'transmittance of two layers, plain film, wet',
    given: 'wind 4 m/s',
    printed: '0.6 to 0.7',
    unit: 'Btu/(h·ft²·°F)',
    computed: () => wallOf([plain, plain], true) / britishThermal,
  },
  {
    ...extension,
    what: 'what a second layer of plain film saves, dry',
    given: 'wind 4 m/s',
    printed: '35',
    unit: '%',
    computed: () => saving(wallOf([plain, plain], false), wallOf([plain], false)),
    tolerance: { plusMinus: 5, because: 'a rule in steps of 5 %' },
  },
  {
    ...rasheed,
    what: 'what a second layer of plain film saves, dry',
    given: 'wind 4 m/s',
    printed: '34',
    unit: '%',
    computed: () => saving(wallOf([plain, plain], false), wallOf([plain], false)),
    tolerance: { plusMinus: 5, because: 'the abstract does not say the wind' },
  },
  {
    ...rasheed,
    what: 'what glass saves against plain film, dry',
    given: 'wind 4 m/s',
    printed: '15',
    unit: '%',
    computed: () => saving(wallOf([glass], false), wallOf([plain], false)),
    tolerance: { plusMinus: 5, because: 'the abstract does not say the wind' },
  },
  {
    ...rasheed,
    what: 'by how much the transmittance rises with the wind, plain film, dry',
    given: 'level, 1 m wide, 20 °C within, 0 °C without, 1 to 5 m/s',
    printed: '0.3',
    unit: 'W/(m²·K) per m/s',
    computed: () => {
      const roof = (wind: number): number =>
        restingTransmittance(
          { sheets: [plain], wet: false, longwave: 0, place: 'top', size: 1, moving: windFilm(wind) },
          20,
          0,
        );
      return (roof(5) - roof(1)) / 4;
    },
  },
  {
    what: 'what film that holds back heat radiation saves inside of plain film, dry',
    given: 'wind 4 m/s',
    printed: '10 to 20',
    unit: '%',
    computed: () => saving(wallOf([infrared, plain], false), wallOf([plain, plain], false)),
    kind: 'table',
    from: cite('extension-coverings', 'infrared film, as trade papers repeat it'),
    standing: 'seen',
  },
  {
    what: 'transmittance of a single pane',
    given: 'wind 6.7 m/s',
    printed: '5.98',
    unit: 'W/(m²·K)',
    computed: () => wallOf([glass], false, americanWind),
    tolerance: fewDigits,
    kind: 'table',
    from: cite('r-value-blog', 'single pane, R 0.95 h·ft²·°F/Btu'),
    standing: 'seen',
  },
  {
    what: 'transmittance of a single pane of 4 mm',
    given: 'wind 4 m/s',
    printed: '5.8',
    unit: 'W/(m²·K)',
    computed: () => wallOf([glass], false),
    tolerance: fewDigits,
    kind: 'table',
    from: cite('en673', 'single glass, 4 mm'),
    standing: 'memory',
  },
  {
    ...ep406,
    what: 'transmittance of a single pane',
    given: 'wind 6.7 m/s',
    printed: '6.2',
    unit: 'W/(m²·K)',
    computed: () => wallOf([glass], false, americanWind),
    tolerance: fewDigits,
  },
  {
    ...ep406,
    what: 'transmittance of one plain film, wet',
    given: 'wind 6.7 m/s',
    printed: '6.2',
    unit: 'W/(m²·K)',
    computed: () => wallOf([plain], true, americanWind),
    tolerance: fewDigits,
  },
  {
    ...ep406,
    what: 'transmittance of two plain films, dry',
    given: 'wind 6.7 m/s',
    printed: '4.0',
    unit: 'W/(m²·K)',
    computed: () => wallOf([plain, plain], false, americanWind),
    tolerance: dryOrWet,
  },
  {
    ...ep406,
    what: 'transmittance of two plain films, wet',
    given: 'wind 6.7 m/s',
    printed: '4.0',
    unit: 'W/(m²·K)',
    computed: () => wallOf([plain, plain], true, americanWind),
    tolerance: dryOrWet,
  },
];

/** Faces of a room: emissivity 0.9, 5 K between face and air (ISO 6946 has no temperatures of its own for this). */
const conventional: Tolerance = {
  share: 0.1,
  because: 'the standard rounds to a hundredth and takes one film for all sizes; 1 m, 5 K here',
};
const surfaceOf = (convection: number, mean: number): number =>
  1 / (convection + radiantFilm(0.9, mean, mean));

const surfaces: readonly Check[] = [
  {
    what: 'resistance of the air film, heat flow sideways',
    given: 'wall 1 m high, 15 °C in 20 °C',
    printed: '0.13',
    computed: () => surfaceOf(verticalFilm(1, 15, 20), 17.5),
    tolerance: conventional,
  },
  {
    what: 'resistance of the air film, heat flow up',
    given: 'ceiling, area over perimeter 0.5 m, 15 °C over 20 °C',
    printed: '0.10',
    computed: () => surfaceOf(horizontalFilm(0.5, 15, 20, 'down'), 17.5),
    tolerance: {
      share: 0.25,
      because: 'the standard has 5 W/(m²·K) of convection, McAdams’ law 3.1: a stated disagreement',
    },
  },
  {
    what: 'resistance of the air film, heat flow down',
    given: 'floor, area over perimeter 0.5 m, 15 °C under 20 °C',
    printed: '0.17',
    computed: () => surfaceOf(horizontalFilm(0.5, 15, 20, 'up'), 17.5),
    tolerance: conventional,
  },
  {
    what: 'resistance of the air film outside',
    given: 'wind 4 m/s, 0 °C',
    printed: '0.04',
    computed: () => surfaceOf(windFilm(europeanWind), 0),
  },
  {
    what: 'resistance of an upright air gap',
    given: 'gap 25 mm, 1 m high, faces at 12.5 °C and 7.5 °C',
    printed: '0.18',
    computed: () =>
      1 / (airGapFilm(0.025, 1, 12.5, 7.5) + radiantFilm(exchangeEmissivity(0.9, 0.9), 12.5, 7.5)),
    tolerance: conventional,
  },
].map((row): Check => ({
  ...row,
  unit: 'm²·K/W',
  kind: 'table',
  from: cite('iso6946', 'surface resistances and air layers'),
  standing: 'memory',
}));

const cengel97 = fromCompanion(cite('cengel', 'example 9-7'));
const sixMillimetres = (): number =>
  airGapFilm(0.006, 1, 2.5, -2.5) + radiantFilm(exchangeEmissivity(0.84, 0.84), 2.5, -2.5);
const ofTable: Tolerance = { share: 0.03, because: 'the book reads it off a table in steps of 5 K' };

const window: readonly Check[] = [
  {
    ...cengel97,
    what: 'film across the gap of a double pane',
    given: 'gap 6 mm, emissivity 0.84, 0 °C, 5 K',
    printed: '7.2',
    unit: 'W/(m²·K)',
    computed: sixMillimetres,
    tolerance: ofTable,
  },
  {
    ...cengel97,
    what: 'transmittance of a double pane',
    given: 'gap 6 mm, emissivity 0.84, films 8.29 and 34 W/(m²·K)',
    printed: '3.46',
    unit: 'W/(m²·K)',
    computed: () => 1 / (1 / 8.29 + 1 / sixMillimetres() + 1 / 34),
    tolerance: ofTable,
  },
];

export const coveringChecks: readonly Check[] = [...walls, ...surfaces, ...window];
