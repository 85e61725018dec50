import { changed, type Changes } from '../bench/changed.ts';
import { nightLadder } from '../bench/night-ladder.ts';
import { nightOf, nightRange, summaryOf, type NightSummary } from '../bench/night.ts';
import { expectedParameters, priorsOf, type Parameters } from '../bench/priors.ts';
import { between, spreadAbout, type Ranged, type Span } from '../bench/range.ts';
import { designRanges, sharedWith } from '../bench/rest-ranges.ts';
import { actionAt } from '../bench/root-state.ts';
import { triedSetPoint } from '../bench/set-points.ts';
import { seasonSteps, throughSeason } from '../bench/season.ts';
import { designNightFields, reading, thermalFields } from '../bench/thermal-fields.ts';
import { courseColumns, courseCurve, courseSeries, courseTable } from '../bench/told.ts';
import {
  amount,
  calculator,
  care,
  sentence,
  type Cell,
  type Sentence,
  type Situation,
  type Warning,
} from '../calculator.ts';
import { cite } from '../sources.ts';
import { loopFreezes } from '../bench/heat-held.ts';

/** A difference smaller than this is none that a grower can read off a thermometer [K]. */
const readable = 0.5;

const through = (situation: Situation, changes: Changes, heat = true): NightSummary => {
  const other = changed(situation, changes);
  return summaryOf(other, nightOf(other, expectedParameters(other), { heat }));
};

/** The same night with the sensor in each of its places. */
function bySensor(situation: Situation, asIs: NightSummary) {
  const { control } = situation.bench;
  const tried = (sensor: typeof control.sensor) => {
    const own = control.sensor === sensor;
    const at = triedSetPoint(situation, sensor);
    return { at, night: own ? asIs : through(situation, { control: { sensor, setPoint: at } }) };
  };
  return {
    loop: tried('loop'),
    air: tried('air'),
    pot: tried('pot'),
  };
}

/** How many uncertain inputs are named. */
const mostNamed = 4;

function measureFirst(situation: Situation, { blame }: Ranged): Record<string, Cell>[] {
  const priors = priorsOf(situation);
  return blame.slice(0, mostNamed).map(({ id, share }) => ({
    input: [priors[id].label],
    share,
    how: [priors[id].measure],
  }));
}

const temperature = 'temperature';

export default calculator({
  id: 'night',
  question: 'What happens on the coldest night?',
  summary:
    'Your bench through the cold snap that it is built for: how cold the roots get, when, and what the heat takes.',
  reads: reading(
    ...designNightFields,
    'cover.kind',
    'control.sensor',
    'control.setPoint',
    'plants.lowestRootTemperature',
    'place.dayOffset',
    ...thermalFields,
  ),
  figures: {
    lowestRootTemperature: {
      label: 'Lowest root temperature',
      quantity: temperature,
      explain: 'Of the coldest layer of the pots, at any time of the snap, with the heat as you have it.',
    },
    coldestOfWinter: {
      label: 'Coldest roots, this night or an ordinary winter',
      quantity: temperature,
      explain:
        'The colder of two: the cold snap above, and the coldest hour of an ordinary winter of your station, in which cold nights follow each other and the pots have no time to thaw.',
    },
    lowestAt: {
      label: 'Roots are coldest after',
      quantity: 'duration',
      explain: 'Counted from the first hour at the lowest outside. Wet pots follow the air by hours.',
    },
    belowLimit: {
      label: 'Time below your limit',
      quantity: 'duration',
      explain: 'How long the coldest layer is below the lowest root temperature that you accept.',
    },
    lowestWithoutHeat: {
      label: 'Lowest root temperature without heat',
      quantity: temperature,
      explain: 'The same snap with the cable off from the beginning.',
    },
    lowestWithCover: {
      label: 'Lowest root temperature with a film cover',
      quantity: temperature,
      explain: 'Heat as you have it, and plain film over the plants. Empty where there is a cover already.',
    },
    energy: {
      label: 'Energy through the snap',
      quantity: 'energy',
      explain: 'What the cable takes in three days: the day before, the cold and the night after.',
    },
    meanPower: {
      label: 'Mean power while it is coldest',
      quantity: 'power',
      explain: 'Over the hours that it stays at the lowest outside.',
    },
    peakPower: {
      label: 'Highest power',
      quantity: 'power',
      explain: 'The most that the cable gives when it is on.',
    },
    lowestLoop: {
      label: 'Lowest loop temperature',
      quantity: temperature,
      explain: 'Compare it with the freezing point of your mix.',
    },
    outside: {
      label: 'Lowest outside',
      quantity: temperature,
      explain: 'The night that the bench is built for.',
    },
  },
  tables: {
    ways: {
      label: 'The same snap, changed in one thing',
      explain:
        'A sensor on the loop protects the loop. In the air or in a pot the same cable works for the roots, and takes more power for it.',
      columns: {
        bench: { label: 'Bench' },
        lowest: { label: 'Lowest at the roots', quantity: temperature },
        below: { label: 'Below your limit', quantity: 'duration' },
        energy: { label: 'Energy', quantity: 'energy' },
      },
    },
    measure: {
      label: 'What to measure first',
      explain:
        'Shares of the uncertainty of the lowest root temperature, and what would narrow them. Measure the first, and the range shrinks most.',
      columns: {
        input: { label: 'Uncertain' },
        share: { label: 'Share of the range', quantity: 'share' },
        how: { label: 'Measure' },
      },
    },
    ladder: {
      label: 'The same snap at other temperatures',
      explain:
        'The roots at their coldest, and how much of the time the cable is on while outside is lowest. A frost that lasts longer goes deeper.',
      columns: {
        outside: { label: 'Outside falls to', quantity: temperature },
        roots: { label: 'Coldest roots', quantity: temperature },
        on: { label: 'Cable on', quantity: 'share' },
        action: { label: 'What to do' },
      },
    },
    course: {
      label: 'The snap in numbers',
      explain: 'Every six hours; the power is the mean of the six hours before.',
      columns: courseColumns,
    },
  },
  curves: {
    course: {
      label: 'The snap',
      explain: 'Temperatures and power, every ten minutes.',
      series: courseSeries,
    },
  },
  formulas: [
    {
      tex: String.raw`\frac{dH_i}{dt} = \sum_j G_{ij}\,(T_j - T_i) + P_i`,
      words:
        'The heat H that each part of the bench holds changes by what flows to and from its neighbours and by what the cable brings. The conductances G are those of the steady state and are worked out again as temperatures change. H includes the heat that water gives up as it freezes, between 0 and −0.5 °C.',
      cites: [
        cite('churchill-chu1975', 'horizontal cylinder and vertical plate'),
        cite('mcadams1954', 'horizontal plates'),
        cite('incropera', 'radiation, conduction, lumped capacities'),
      ],
    },
  ],
  cites: [
    cite(
      'assumption',
      'the shape of the snap: drop in seven hours from three in the afternoon, half a recovery, a second night half as cold; no sun',
    ),
    cite('assumption', 'uncertain inputs and their ranges'),
    cite('common-practice', 'set points of 2 °C at the roots and 4 to 5 °C on the loop'),
  ],
  cautions: ['no-flame', 'mains-and-water'],
  compute(situation) {
    const { bench } = situation;
    const { lowestRootTemperature: limit } = bench.plants;
    const night = nightOf(situation);
    const asIs = summaryOf(situation, night);
    const range = nightRange(situation);
    const covered = bench.cover.kind !== 'none';
    const otherCover = { cover: { kind: covered ? 'none' : 'film' } } as const;
    const cold = through(situation, {}, false);
    const other = through(situation, otherCover);
    const sensors = bySensor(situation, asIs);
    const row = (
      name: Sentence,
      { lowestRoots, belowLimit, energy }: NightSummary,
    ): Record<string, Cell> => ({
      bench: name,
      lowest: lowestRoots,
      below: belowLimit,
      energy,
    });
    const [withOther, withOtherCold] = covered
      ? [sentence`Without the cover`, sentence`Without the cover, without heat`]
      : [sentence`With a film cover`, sentence`With a film cover, without heat`];
    // The ends of the range are run as finely as the night itself.
    const lowest = between(
      asIs.lowestRoots,
      range.lowestRoots.ends,
      (at) => summaryOf(situation, nightOf(situation, at)).lowestRoots,
    );
    const energy = between(
      asIs.energy,
      range.energy.ends,
      (at) => summaryOf(situation, nightOf(situation, at)).energy,
    );
    /** The lowest root temperature of the night changed in one thing, with the inputs as they are at the ends of the range. */
    const lowestOf = (value: number, changes: Changes, heat: boolean): Span => {
      const other = changed(situation, changes);
      const shared = sharedWith(situation, other);
      return between(
        value,
        range.lowestRoots.ends,
        (at) => summaryOf(other, nightOf(other, shared(at), { heat })).lowestRoots,
      );
    };
    const wholeWinter = (parameters: Parameters): number =>
      throughSeason(situation, parameters, undefined, { every: seasonSteps.coarse, control: 'averaged' })
        .lowestRoots;
    const winter = wholeWinter(expectedParameters(situation));
    const winters = between(winter, designRanges(situation).withHeat.ends, wholeWinter);
    const warnings: Warning[] = [];
    if (asIs.lowestRoots < limit) {
      const text = sentence`In the snap to ${amount(night.snap.lowest, temperature)} the roots come to ${amount(asIs.lowestRoots, temperature)} and stay below your limit of ${amount(limit, temperature)} for ${amount(asIs.belowLimit, 'duration')}.`;
      warnings.push(care('roots-below-limit-in-snap', text));
    } else if (lowest.low < limit) {
      const text = sentence`The roots may come to ${amount(lowest.low, temperature)} in the snap, below your limit of ${amount(limit, temperature)}. Measure what the range hangs on: the house and the gaps first.`;
      warnings.push(care('roots-may-fall-below-limit', text));
    }
    if (winter < asIs.lowestRoots - readable) {
      const text = sentence`One such night takes the roots to ${amount(asIs.lowestRoots, temperature)}; an ordinary winter, with cold nights on end, to ${amount(winter, temperature)}. Build for the colder of the two.`;
      warnings.push(care('winter-colder-than-night', text));
    }
    if (bench.control.sensor === 'loop' && sensors.pot.night.lowestRoots > asIs.lowestRoots + readable) {
      const text = sentence`With the sensor on the loop the roots come to ${amount(asIs.lowestRoots, temperature)}; with it in a pot at ${amount(sensors.pot.at, temperature)} to ${amount(sensors.pot.night.lowestRoots, temperature)}. Put it in a pot or in the air under the bench, with a second limit on the loop against freezing.`;
      warnings.push(care('sensor-on-loop', text));
    }
    if (asIs.lowestLoop < loopFreezes(bench)) {
      const text = sentence`The loop comes to ${amount(asIs.lowestLoop, temperature)}, below the ${amount(loopFreezes(bench), temperature)} at which it turns to slush.`;
      warnings.push(care('loop-freezes-in-snap', text));
    }
    return {
      figures: {
        lowestRootTemperature: lowest,
        coldestOfWinter: {
          value: Math.min(lowest.value, winters.value),
          low: Math.min(lowest.low, winters.low),
          high: Math.min(lowest.high, winters.high),
        },
        lowestAt: { value: asIs.lowestAt },
        belowLimit: spreadAbout(asIs.belowLimit, range.belowLimit, 0),
        lowestWithoutHeat: lowestOf(cold.lowestRoots, {}, false),
        lowestWithCover: covered ? null : lowestOf(other.lowestRoots, otherCover, true),
        energy,
        meanPower: spreadAbout(asIs.meanPower, range.meanPower, 0),
        peakPower: { value: asIs.peakPower },
        lowestLoop: spreadAbout(asIs.lowestLoop, range.lowestLoop),
        outside: { value: night.snap.lowest },
      },
      tables: {
        ways: {
          rows: [
            row(sentence`As it is`, asIs),
            row(sentence`Without heat`, cold),
            row(withOther, other),
            row(withOtherCold, through(situation, otherCover, false)),
            row(sentence`Sensor on the loop, at ${amount(sensors.loop.at, temperature)}`, sensors.loop.night),
            row(
              sentence`Sensor in the air under the bench, at ${amount(sensors.air.at, temperature)}`,
              sensors.air.night,
            ),
            row(sentence`Sensor in a pot, at ${amount(sensors.pot.at, temperature)}`, sensors.pot.night),
          ],
        },
        measure: { rows: measureFirst(situation, range.lowestRoots) },
        ladder: {
          rows: nightLadder(situation).map(({ outside, roots, on }) => ({
            outside,
            roots,
            on,
            action: actionAt(roots, limit),
          })),
        },
        course: courseTable(night, night.weather, 6),
      },
      curves: { course: courseCurve(night, night.weather) },
      warnings,
    };
  },
});
