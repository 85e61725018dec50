import { beforeReadings, believed } from '../bench/belief.ts';
import { calibrate, type Calibration, type Compared } from '../bench/calibrate.ts';
import { agreementOf, judge, lookAtReadings, nameOf, outOfReach, stillMissing } from '../bench/diagnose.ts';
import { hardNight } from '../bench/hard-night.ts';
import { nextReadings } from '../bench/next-reading.ts';
import { priorsOf, type Prior, type PriorId } from '../bench/priors.ts';
import { readingErrorCites, readingErrors } from '../bench/reading-errors.ts';
import { ninetieth, spreadValue } from '../bench/spread.ts';
import { designNightFields, reading, thermalFields } from '../bench/thermal-fields.ts';
import {
  amount,
  calculator,
  type Cell,
  type Figure,
  sentence,
  type Sentence,
  type Situation,
  type Table,
  type Warning,
} from '../calculator.ts';
import { cite } from '../cite.ts';

/** An input of which the readings take less than this off its range is one that they say nothing about [1]. */
const spokenTo = 0.1;
/** What is worth showing of what could be measured next: the best few, if they do anything. */
const mostNext = 4;
const leastNext = 0.01;

const temperature = 'temperature';

/** Units of the inputs that have no quantity of their own. */
const bareUnits: Partial<Record<PriorId, string>> = {
  contact: ' W/(m²·K)',
  insideFilm: ' W/(m²·K)',
  mediumConductivity: ' W/(m·K)',
  soilConductivity: ' W/(m·K)',
};

/** What is known of one input after the readings. */
interface Learned {
  readonly id: PriorId;
  readonly prior: Prior;
  readonly after: Required<Omit<Figure, 'beyond' | 'words'>>;
  /** Part of its range that went [1]; less than zero where a fault made room. */
  readonly narrowed: number;
  /** How far its middle moved, in standard deviations of what was believed. */
  readonly moved: number;
}

function learnedFrom(situation: Situation, { belief }: Calibration): Learned[] {
  const priors = priorsOf(situation);
  const size = belief.ids.length;
  return belief.ids.map((id, index) => {
    const prior = priors[id];
    const moved = belief.middle[index]!;
    const spread = Math.sqrt(belief.covariance[index * (size + 1)]!);
    const at = (by: number): number => spreadValue(prior, moved + by * spread);
    const after = { value: at(0), low: at(-ninetieth), high: at(ninetieth) };
    return { id, prior, after, narrowed: prior.low === prior.high ? 0 : 1 - spread, moved };
  });
}

const spoken = ({ narrowed, moved }: Learned): boolean =>
  narrowed >= spokenTo || Math.abs(moved) >= ninetieth;

function rangeWords(
  { quantity }: Prior,
  id: PriorId,
  { value, low, high }: Required<Omit<Figure, 'beyond' | 'words'>>,
): Sentence {
  const unit = bareUnits[id] ?? '';
  const one = (number: number) => amount(number, quantity ?? 'number');
  return [one(value), `${unit} (`, one(low), ' to ', one(high), ')'];
}

function inputsTable(learned: readonly Learned[]): Table {
  const rows = learned.filter(spoken).sort((one, other) => other.narrowed - one.narrowed);
  return {
    rows: rows.map(({ id, prior, after, narrowed }) => ({
      input: [prior.label],
      before: rangeWords(prior, id, { value: prior.expected, low: prior.low, high: prior.high }),
      after: rangeWords(prior, id, after),
      narrowed: Math.max(0, narrowed),
    })),
  };
}

function comparedTable(situation: Situation, compared: readonly Compared[]): Table {
  const quantityOf = ({ id }: Compared) =>
    id === 'power' ? 'power' : id === 'offset' || id === 'drift' ? 'temperatureDifference' : temperature;
  return {
    rows: compared.map((one): Record<string, Cell> => {
      const words = (value: number): Sentence => [amount(value, quantityOf(one))];
      return {
        reading: [nameOf(one.id, situation)],
        read: words(one.read),
        before: words(one.before),
        after: words(one.after),
        off: one.off,
      };
    }),
  };
}

const empty = { inputs: { rows: [] }, compared: { rows: [] }, next: { rows: [] } };

/**
 * The rise as it was read: under the bench less house [K], and the mean power for each degree of it [W/K]. Ranges of 80 %
 * by the errors of both thermometers and the meter (JCGM 100:2008, 5.1). Null where one was not read, and the loss also
 * where the rise is no larger than the thermometers may be off.
 */
function riseRead({ bench }: Situation): {
  readonly rise: Figure | null;
  readonly lossPerDegree: Figure | null;
} {
  const { house, under, power } = bench.readings;
  if (house === null || under === null) return { rise: null, lossPerDegree: null };
  const rise = under - house;
  const off = ninetieth * Math.hypot(readingErrors.house, readingErrors.under);
  const read = { value: rise, low: rise - off, high: rise + off };
  if (power === null || rise <= off) return { rise: read, lossPerDegree: null };
  const ofMeter = ninetieth * readingErrors.power;
  const loss = power / rise;
  // To each side the larger rise or power alone, added as independent errors.
  const below = Math.hypot(loss - power / (rise + off), loss * ofMeter);
  const above = Math.hypot(power / (rise - off) - loss, loss * ofMeter);
  return {
    rise: read,
    lossPerDegree: { value: loss, low: Math.max(0, loss - below), high: loss + above },
  };
}

export default calculator({
  id: 'readings',
  question: 'What do my readings say?',
  summary:
    'Your bench fitted to what you read on a calm night, and what that changes about the night you build for.',
  reads: reading(
    'readings.house',
    'readings.under',
    'readings.roots',
    'readings.rootsEarlier',
    'readings.power',
    'readings.running',
    'readings.outside',
    'readings.loop',
    ...designNightFields,
    'plants.lowestRootTemperature',
    ...thermalFields,
  ),
  figures: {
    coldestRootsBefore: {
      label: 'Coldest roots on the design night, before',
      quantity: temperature,
      explain: 'With the heat as it is, if that night never ended; what is expected of a bench like this.',
    },
    coldestRoots: {
      label: 'Coldest roots on the design night, after',
      quantity: temperature,
      explain: 'The same for your bench as the readings show it.',
    },
    requiredBefore: {
      label: 'Power needed, before',
      quantity: 'power',
      explain: 'To hold the coldest roots at your limit on that night; expected of a bench like this.',
    },
    required: {
      label: 'Power needed, after',
      quantity: 'power',
      explain: 'The same for your bench as the readings show it.',
    },
    rise: {
      label: 'Rise as read',
      quantity: 'temperatureDifference',
      explain: 'Under the bench less house. The range is what careful thermometers may be off.',
    },
    lossPerDegree: {
      label: 'Loss for each degree, as read',
      quantity: 'conductance',
      symbol: 'G',
      explain:
        'Mean power over the rise, as a sum by hand gives it. It leaves out pots that cool and a warm floor; the fit does not.',
    },
    designRiseBefore: {
      label: 'Rise on the design night, before',
      quantity: 'temperatureDifference',
      explain:
        'Under the bench over the house with the heat as it is, if that night never ended; expected of a bench like this.',
    },
    designRise: {
      label: 'Rise on the design night, after',
      quantity: 'temperatureDifference',
      explain: 'The same for your bench as the readings show it.',
    },
    agreement: {
      label: 'Sound benches that read further off',
      quantity: 'share',
      symbol: 'p',
      explain:
        'Of a hundred sound benches with careful readings, how many would lie further from the model than yours. Below 1 % something is wrong.',
    },
    output: {
      label: 'Output of the cable against its label',
      quantity: 'share',
      explain: 'Empty unless the cable was on all the time.',
    },
    bottomGap: {
      label: 'Gap at the floor that fits',
      quantity: 'size',
      explain: 'Empty where the readings say nothing about it.',
    },
    topGap: {
      label: 'Gap at the bench edge that fits',
      quantity: 'size',
      explain: 'Empty where the readings say nothing about it.',
    },
    houseOffset: {
      label: 'House above outside at night',
      quantity: 'temperatureDifference',
      explain: 'From both thermometers; one night stands for others to about a kelvin.',
    },
  },
  tables: {
    compared: {
      label: 'Readings and model',
      explain:
        'The last column says how far each reading is from what all others say, in parts of its usual error. Beyond 3 something is wrong.',
      columns: {
        reading: { label: 'Reading' },
        read: { label: 'Read' },
        before: { label: 'Expected' },
        after: { label: 'Fitted' },
        off: { label: 'Off', quantity: 'number' },
      },
    },
    inputs: {
      label: 'What the readings say of the bench',
      explain: 'Only what they say something about. Four of five benches lie in the ranges.',
      columns: {
        input: { label: 'Input' },
        before: { label: 'Before' },
        after: { label: 'After' },
        narrowed: { label: 'Range narrower by', quantity: 'share' },
      },
    },
    next: {
      label: 'What to measure next',
      explain: 'How much narrower the ranges of the coldest roots and of the power needed would be.',
      columns: {
        measure: { label: 'Measure' },
        roots: { label: 'Coldest roots', quantity: 'share' },
        power: { label: 'Power needed', quantity: 'share' },
      },
    },
  },
  formulas: [
    {
      tex: String.raw`G = \frac{P}{T_{\text{under}} - T_{\text{house}}}`,
      words:
        'The loss for each degree is the mean power divided by how much warmer it is under the bench than in the house.',
      cites: [cite('jcgm100', '5.1: ranges'), ...readingErrorCites],
    },
    {
      tex: String.raw`\min_{z}\ \sum_i \left(\frac{y_i - f_i(z)}{\sigma_i}\right)^2 + \sum_k z_k^2`,
      words:
        'Of all benches like yours the one is taken that contradicts the readings and the expectations least. Each reading y counts by its usual error σ, each uncertain input by how far z it is moved from what is expected of it, in standard deviations. What is left of the sum follows chi-square, and its curvature gives the ranges.',
      cites: [
        cite('more1978', 'the search for the least sum'),
        cite('jcgm100', '5.1: ranges'),
        cite('assumption', 'uncertain inputs and their ranges'),
      ],
    },
  ],
  cites: readingErrorCites,
  cautions: ['mains-and-water'],
  compute(situation) {
    const figure = (
      { value, low, high }: Required<Omit<Figure, 'beyond' | 'words'>>,
      least = -Infinity,
    ): Figure => ({
      value,
      low: Math.max(least, low),
      high,
    });
    // What is expected needs no reading.
    const before = believed(situation, beforeReadings(situation), hardNight(situation));
    const expected = {
      coldestRootsBefore: figure(before.coldestRoots),
      requiredBefore: figure(before.required, 0),
      designRiseBefore: figure(before.rise),
      ...riseRead(situation),
    };
    const nothing = (warnings: readonly Warning[]) => ({
      figures: {
        ...expected,
        coldestRoots: null,
        required: null,
        designRise: null,
        agreement: null,
        output: null,
        bottomGap: null,
        topGap: null,
        houseOffset: null,
      },
      tables: empty,
      warnings: [...lookAtReadings(situation), ...warnings],
    });
    const read = calibrate(situation);
    if (read.kind === 'missing') return nothing(read.any ? [stillMissing(read.missing)] : []);
    if (read.kind === 'out-of-reach') return nothing([outOfReach()]);

    const { calibration, warnings } = judge(situation, read.calibration);
    if (!calibration) return nothing(warnings);
    const after = believed(situation, calibration.belief, hardNight(situation));
    const learned = learnedFrom(situation, calibration);
    const fitted = (id: PriorId): Figure | null => {
      const one = learned.find((entry) => entry.id === id);
      return one && spoken(one) ? one.after : null;
    };
    const next = nextReadings(situation, calibration, [after.coldestRoots.slopes, after.required.slopes]);
    return {
      figures: {
        ...expected,
        coldestRoots: figure(after.coldestRoots),
        required: figure(after.required, 0),
        designRise: figure(after.rise),
        agreement: { value: agreementOf(calibration) },
        output: fitted('cableOutput'),
        bottomGap: fitted('bottomGap'),
        topGap: fitted('topGap'),
        houseOffset: fitted('houseOffset'),
      },
      tables: {
        compared: comparedTable(situation, read.calibration.compared),
        inputs: inputsTable(learned),
        next: {
          rows: next
            .filter(({ narrows }) => Math.max(...narrows) >= leastNext)
            .slice(0, mostNext)
            .map(({ what, narrows: [roots = 0, power = 0] }) => ({
              measure: 'reading' in what ? sentence`the ${nameOf(what.reading, situation)}` : [what.measure],
              roots,
              power,
            })),
        },
      },
      warnings: [...lookAtReadings(situation), ...warnings],
    };
  },
});
