import { changed, type Changes } from '../bench/changed.ts';
import { improvements, type Improvement } from '../bench/improvements.ts';
import { triedSetPoint } from '../bench/set-points.ts';
import { restOn, warmestAir } from '../bench/steady.ts';
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

/** Roots this near to the limit are held there [K]. */
const atLimit = 0.01;

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

/** Power that holds the coldest roots at the limit; null where no heat from below does. */
function needed(situation: Situation): Figure<'power'> | null {
  const { power, coldestRoots } = restOn(situation, 'hold-roots');
  return coldestRoots < situation.bench.plants.lowestRootTemperature - atLimit ? null : { value: power };
}

/** The coldest roots on the design night with the thermostat as it is. */
const coldest = (situation: Situation): Figure<'temperature'> => ({
  value: restOn(situation, 'thermostat').coldestRoots,
});

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
    const { cover, gaps, secondLayer, floor } = improvements;
    const made = ({ present, changes }: Improvement): Changes => (present(situation.bench) ? {} : changes);
    const pot = sensorAt('pot', situation);
    const more = doubled(situation);
    const bare = after(situation, uncovered, sensorAt('loop', situation));
    const needs = {
      needCover: needed(after(situation, made(cover))),
      needGaps: needed(after(situation, made(gaps))),
      needSecondLayer: needed(after(situation, made(secondLayer))),
      needFloor: needed(after(situation, made(floor))),
      needAll: needed(after(situation, ...Object.values(improvements).map(made))),
    };
    const warnings: Warning[] = [];
    if (Object.values(needs).includes(null)) warnings.push(noHeatFromBelow);
    return {
      figures: {
        ...needs,
        bare: coldest(bare),
        cover: coldest(after(bare, cover.changes)),
        sensor: coldest(after(bare, pot)),
        moreWatts: coldest(after(bare, more)),
        coverAndSensor: coldest(after(bare, cover.changes, pot)),
        all: coldest(after(bare, cover.changes, pot, more)),
      },
      warnings,
    };
  },
});
