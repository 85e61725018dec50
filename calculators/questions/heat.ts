import { potTopArea, topArea } from '../bench/geometry.ts';
import { likely } from '../bench/range.ts';
import { improvementRanges, type ImprovementId } from '../bench/improvement-ranges.ts';
import { designRanges } from '../bench/rest-ranges.ts';
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

/** By how much the share covered by pots may differ from what their number and size come to [1] (assumption). */
const shareApart = 0.15;

/**
 * Number and diameter of the pots say how large their tops, bases and sides are, the share that they cover says how much of
 * the bench top is left for air. Both are used as given; where they contradict each other, one of them is a slip.
 */
function potsContradict({ bench }: Situation): Warning[] {
  const worked = potTopArea(bench) / topArea(bench);
  const { potShare } = bench.frame;
  if (Math.abs(worked - potShare) <= shareApart) return [];
  const text = sentence`The pots by number and diameter would cover ${amount(worked, 'share')} of the bench top, and you gave ${amount(potShare, 'share')}. Number and diameter count for what the pots hold and lose, the share for the gaps between them that air passes. Correct whichever is wrong.`;
  return [care('pots-and-share-differ', text)];
}

export default calculator({
  id: 'heat',
  question: 'Where does the heat go?',
  summary:
    'The heat on each of its ways out on the design night with the roots held at your limit, and what one change would save.',
  reads: watts.reads,
  figures: {
    skirt: {
      label: 'Through the skirt',
      quantity: 'power',
      explain: 'Through the film and as radiation straight through it; also past what no skirt closes.',
    },
    leakage: {
      label: 'With air through gaps',
      quantity: 'power',
      explain:
        'Cold air comes in at the floor, warm air leaves at the bench edge and past the pots, and carries vapour off. What it gives to pots and plants on its way up is not lost and is taken off here.',
    },
    plants: {
      label: 'Up through and past the pots',
      quantity: 'power',
      explain: 'Through the medium, off the sides of the pots, between the pots and through the cover.',
    },
    edge: {
      label: 'Along the edge of the floor',
      quantity: 'power',
      explain: 'Through the floor to the colder floor of the house around the bench.',
    },
    ground: {
      label: 'Into the ground (less than zero: from the ground)',
      quantity: 'power',
      explain: 'On a cold night the ground below is warmer than the bench and gives it heat.',
    },
    throughMedium: {
      label: 'By conduction: up through the medium of the pots',
      quantity: 'power',
      explain: 'Handed on from particle to particle and through the water between them.',
    },
    radiated: {
      label: 'By radiation: straight through the film of the skirt',
      quantity: 'power',
      explain: 'A part of what leaves by the skirt. Dry plain film lets most of it pass; wet film, little.',
    },
    air: {
      label: 'Air under the bench then',
      quantity: 'temperature',
      explain: 'What it takes to hold the coldest roots at your limit.',
    },
    house: {
      label: 'House air then',
      quantity: 'temperature',
      explain: 'Outside air plus what the house keeps, or what its heater holds.',
    },
    saveCover: {
      label: 'A film cover over the plants would save',
      quantity: 'power',
      explain: 'Of the power needed to hold the roots. Empty where there is a cover already.',
    },
    saveGaps: {
      label: 'Closing the gaps of the skirt would save',
      quantity: 'power',
      explain: 'Weigh the skirt down all around and clip it to the bench: 1 mm left at floor and edge.',
    },
    saveSecondLayer: {
      label: 'A second layer of skirt would save',
      quantity: 'power',
      explain: 'A finger’s width of still air between two films.',
    },
    saveFloor: {
      label: 'Foam board on the floor would save',
      quantity: 'power',
      explain:
        '50 mm (2 in) on the floor under the bench. Less than zero: it would shut out more heat of the ground than it keeps in.',
    },
  },
  formulas: watts.formulas,
  cites: [
    cite('incropera', 'conduction, convection and radiation'),
    cite('us-standard-atmosphere', 'viscosity and conductivity of air'),
    cite('ashrae-fundamentals', 'chapter 6, Lewis relation for water in air, from memory'),
    cite('cengel-a15', 'heat capacity of air'),
    cite('codata2018', 'Stefan–Boltzmann constant'),
    cite('elsherbiny1982', 'upright air gaps between layers'),
    cite('hollands1976', 'level air gaps'),
    cite('assumption', 'gaps, strips and films as stated on the reference page'),
  ],
  cautions: ['no-flame'],
  compute(situation) {
    const paths = designRanges(situation);
    const { saves } = improvementRanges(situation);
    const saving = (id: ImprovementId): Figure<'power'> | null => saves[id] && likely(saves[id]);
    return {
      figures: {
        skirt: likely(paths.skirt),
        leakage: likely(paths.leakage),
        plants: likely(paths.plants),
        edge: likely(paths.edge),
        ground: likely(paths.ground),
        throughMedium: likely(paths.throughMedium),
        radiated: likely(paths.radiated),
        air: likely(paths.air),
        house: likely(paths.house),
        saveCover: saving('cover'),
        saveGaps: saving('gaps'),
        saveSecondLayer: saving('secondLayer'),
        saveFloor: saving('floor'),
      },
      warnings: potsContradict(situation),
    };
  },
});
