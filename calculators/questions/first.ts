import { changed, type Changes } from '../bench/changed.ts';
import { improvements } from '../bench/improvements.ts';
import { expectedParameters } from '../bench/priors.ts';
import { between, likely } from '../bench/range.ts';
import { improvementRanges } from '../bench/improvement-ranges.ts';
import { designRanges, restFromFirst, sharedWith } from '../bench/rest-ranges.ts';
import { triedSetPoint } from '../bench/set-points.ts';
import { warmestAir } from '../bench/steady.ts';
import { reading, thermalFields } from '../bench/thermal-fields.ts';
import {
  amount,
  calculator,
  care,
  sentence,
  type Figure,
  type Situation,
  type Warning,
} from '../calculator.ts';
import { cite } from '../sources.ts';
import watts from './watts.ts';

const uncovered: Changes = { cover: { kind: 'none' } };

/** The thermostat at one place, at the grower’s own set point if it is there already. */
const sensorAt = (place: 'loop' | 'pot', situation: Situation): Changes => ({
  control: { sensor: place, setPoint: triedSetPoint(situation, place) },
});

/** A cable that gives twice as much on each part of its length. */
const doubled = ({ bench: { cable } }: Situation): Changes => ({
  cable: { powerPerLength: 2 * cable.powerPerLength, slope: 2 * cable.slope },
});

const after = (situation: Situation, ...steps: readonly Changes[]): Situation =>
  steps.reduce((one, step) => changed(one, step), situation);

/** Why a power that is asked for has no figure. */
const noHeatFromBelow = care(
  'no-heat-from-below',
  sentence`Where there is no figure for the power, no heat from below holds the roots: the air under the bench would have to be hotter than ${amount(warmestAir, 'temperature')}. The tops of the pots lose more than their bases can let in. Cover the plants, and see what is left.`,
);

export default calculator({
  id: 'first',
  question: 'What do I change first?',
  summary:
    'Your bench on its design night after each change, one at a time and together: the power it then needs, and how cold the roots get with the heat you have.',
  reads: reading(...watts.reads, ...thermalFields),
  figures: {
    needCover: {
      label: 'Power needed with a film cover',
      quantity: 'power',
      explain: 'All else as it is. A bench that has a cover keeps its own.',
    },
    needGaps: {
      label: 'Power needed with the gaps closed',
      quantity: 'power',
      explain: 'All else as it is; 1 mm left at floor and edge.',
    },
    needSecondLayer: {
      label: 'Power needed with a second layer of skirt',
      quantity: 'power',
      explain: 'All else as it is.',
    },
    needFloor: {
      label: 'Power needed with foam board on the floor',
      quantity: 'power',
      explain: 'All else as it is; 50 mm (2 in) of board.',
    },
    needAll: {
      label: 'Power needed with all four',
      quantity: 'power',
      explain: 'Covered, closed, with two layers and a board.',
    },
    bare: {
      label: 'Coldest roots, no cover and the sensor on the pipe',
      quantity: 'temperature',
      explain: 'Where many a first bench begins. The pipe at your set point, or at 4.5 °C (40 °F).',
    },
    cover: {
      label: 'Coldest roots, only a film cover added to that',
      quantity: 'temperature',
      explain: 'The same cable, the sensor still on the pipe.',
    },
    sensor: {
      label: 'Coldest roots, only the sensor moved into a pot',
      quantity: 'temperature',
      explain:
        'The same cable, no cover. The pot at your set point, or at the one that the chapter on sensors works out for it.',
    },
    moreWatts: {
      label: 'Coldest roots, only twice the watts',
      quantity: 'temperature',
      explain: 'A cable of double power, no cover, the sensor on the pipe.',
    },
    coverAndSensor: {
      label: 'Coldest roots, cover and sensor',
      quantity: 'temperature',
      explain: 'The first two changes together, with the cable that you have.',
    },
    all: {
      label: 'Coldest roots, cover, sensor and twice the watts',
      quantity: 'temperature',
      explain: 'All three together.',
    },
  },
  formulas: watts.formulas,
  cites: [
    cite('common-practice', 'a thermostat on the pipe at about 40 °F; a root zone held at 2 to 5 °C'),
    cite('assumption', 'improvements: 1 mm of gap left, 50 mm of board, a finger of air between two films'),
  ],
  cautions: ['no-flame'],
  compute(situation) {
    const { needs: found } = improvementRanges(situation);
    const need = (id: keyof typeof found): Figure<'power'> | null => found[id] && likely(found[id]);
    const needs = {
      needCover: need('cover'),
      needGaps: need('gaps'),
      needSecondLayer: need('secondLayer'),
      needFloor: need('floor'),
      needAll: need('all'),
    };
    const pot = sensorAt('pot', situation);
    const more = doubled(situation);
    const { changes: covered } = improvements.cover;
    const bare = after(situation, uncovered, sensorAt('loop', situation));
    const { ends } = designRanges(situation).withHeat;
    /** The coldest roots on the design night after these changes, with the thermostat as it then is. */
    const coldest = (...steps: readonly Changes[]): Figure<'temperature'> => {
      const other = after(bare, ...steps);
      const rest = restFromFirst(other, 'thermostat');
      const shared = sharedWith(situation, other);
      const value = rest(expectedParameters(other)).coldestRoots;
      // What makes the roots colder as the bench is makes them colder with each of these changes.
      return between(value, ends, (at) => rest(shared(at)).coldestRoots);
    };
    const warnings: Warning[] = [];
    if (Object.values(needs).includes(null)) warnings.push(noHeatFromBelow);
    return {
      figures: {
        ...needs,
        bare: coldest(),
        cover: coldest(covered),
        sensor: coldest(pot),
        moreWatts: coldest(more),
        coverAndSensor: coldest(covered, pot),
        all: coldest(covered, pot, more),
      },
      warnings,
    };
  },
});
