import type { Bench } from '../bench/fields.ts';
import { loopLength, pipeOf } from '../bench/geometry.ts';
import { loopAboveAir } from '../bench/loop-above-air.ts';
import type { Parameters, PriorId } from '../bench/priors.ts';
import { ranged } from '../bench/range.ts';
import { amount, calculator, care, sentence, stop, type Situation, type Warning } from '../calculator.ts';
import {
  foilEmissivity,
  sheathAtCrossing,
  sheathEmissivity,
  sheathInFreeAir,
  sheathTemperature,
  type CableLabel,
  type Sheath,
} from '../electric/cable.ts';
import { cite } from '../sources.ts';

/** Film inside a pipe that holds air where water should be [W/(m²·K)] (assumption: still air and radiation). */
const filmWhenEmpty = 5;

/** Between these the highest loop temperature is looked for [°C]: frozen hard, and boiling. */
const [coldestLoop, hottestLoop] = [-20, 100] as const;

/** The cable as it is, rather than as labelled. */
function labelOf({ cable }: Bench, { cableOutput }: Pick<Parameters, 'cableOutput'>): CableLabel {
  const { kind, powerPerLength, slope } = cable;
  return { kind, powerPerLength: powerPerLength * cableOutput, slope: slope * cableOutput };
}

/**
 * Emissivity of what faces the air: foil tape, or the sheath itself [1]. A turn that came loose or was laid across another is
 * taken to have its foil still on, as foil sends out less heat and so leaves it the hotter.
 */
const faceOf = (bench: Bench): number =>
  bench.cable.contact === 'taped' ? foilEmissivity : sheathEmissivity;

/** The cable at full power on the pipe, with fluid and air at these temperatures [°C]. */
const onPipe = (bench: Bench, parameters: Parameters, fluid: number, air: number): Sheath =>
  sheathTemperature(labelOf(bench, parameters), {
    pipe: pipeOf(bench),
    cableDiameter: bench.cable.diameter,
    contact: parameters.contact,
    spreading: parameters.spreading,
    insideFilm: parameters.insideFilm,
    emissivity: faceOf(bench),
    fluid,
    air,
  });

/**
 * The cable on a working bench: whatever the sensor is on is at the set point. A sensor that is not on the loop lets
 * the loop stand above the air by as much as the cable can lift it.
 */
function inService(bench: Bench, parameters: Parameters): Sheath {
  const { sensor, setPoint } = bench.control;
  const cool = onPipe(bench, parameters, setPoint, setPoint);
  if (sensor === 'loop') return cool;
  const intoLoop = (cool.powerPerLength * cool.fluidShare * bench.cable.length) / loopLength(bench);
  const lift = loopAboveAir(pipeOf(bench), parameters.insideFilm, intoLoop, setPoint);
  return onPipe(bench, parameters, setPoint + lift, setPoint);
}

/** The loop temperature [°C] at which, with the cable on, the sheath or the pipe comes to its limit. */
function highestLoop(bench: Bench, parameters: Parameters): number {
  const { highestService } = pipeOf(bench);
  let low: number = coldestLoop;
  let high: number = hottestLoop;
  // The sheath never cools as the loop warms, so halving the interval always closes in: to 0.001 K in 17 rounds.
  for (let round = 0; round < 17; round++) {
    const middle = (low + high) / 2;
    const { sheath, pipeUnderCable } = onPipe(bench, parameters, middle, middle);
    if (sheath > bench.cable.highestSheath || pipeUnderCable > highestService) high = middle;
    else low = middle;
  }
  return low;
}

/** What the temperature of a cable rests on and nobody knows. */
const uncertain: readonly PriorId[] = ['contact', 'spreading', 'insideFilm', 'cableOutput'];

/** With its range, from how well the cable may touch the pipe. */
function inRange(situation: Situation, result: (parameters: Parameters) => number) {
  const { value, low, high } = ranged(situation, result, uncertain);
  return { value, low, high };
}

export default calculator({
  id: 'sheath',
  question: 'How hot does the cable get?',
  summary:
    'The temperature of the sheath at full power: on the pipe, where a turn hangs loose, and where two turns cross.',
  reads: [
    'cable.powerPerLength',
    'cable.contact',
    'cable.highestSheath',
    'loop.hottest',
    'control.setPoint',
    'control.sensor',
    'cable.diameter',
    'loop.pipe',
    'cable.kind',
    'cable.slope',
    'cable.length',
    'loop.length',
    'loop.run',
    'loop.inset',
    'loop.fillTemperature',
    'frame.length',
    'frame.width',
  ],
  figures: {
    inService: {
      label: 'Sheath in service',
      quantity: 'temperature',
      symbol: 'T_s',
      explain:
        'At full power with the thermostat’s sensor at the set point. The range is how well or badly such cables touch the pipe.',
    },
    atHottest: {
      label: 'Sheath with the loop at its hottest',
      quantity: 'temperature',
      explain:
        'At full power because the thermostat is stuck, fluid and air at the hottest that the loop may get.',
    },
    pipeAtHottest: {
      label: 'Pipe under the cable with the loop at its hottest',
      quantity: 'temperature',
      explain: 'The outer face of the pipe, under the cable, in the same case.',
    },
    limitThermostat: {
      label: 'Limit thermostat on the loop, at most',
      quantity: 'temperature',
      explain:
        'Loop temperature at which, with the cable on, the sheath or the pipe comes to its limit. Set a second thermostat that cuts the power to the low end of the range or below.',
    },
    inFreeAir: {
      label: 'Sheath where a turn hangs loose',
      quantity: 'temperature',
      explain:
        'Off the pipe, cooled by still air alone, air at the hottest that the loop may get. A taped cable is taken to have its foil still on, which holds it hotter than a bare one.',
    },
    atCrossing: {
      label: 'Sheath where two turns cross',
      quantity: 'temperature',
      explain:
        'An upper estimate: half of the surface hidden, air at the hottest that the loop may get. A taped cable is taken to have its foil still on, which holds it hotter than a bare one. Above 120 °C the air data end and the figure is only a guide.',
    },
    pipeWhenEmpty: {
      label: 'Pipe under the cable without water',
      quantity: 'temperature',
      explain:
        'What happens when the cable is tried before the loop is filled, at the temperature when filling.',
    },
    waterShare: {
      label: 'Share of the heat that reaches the fluid',
      quantity: 'share',
      symbol: '\\eta',
      explain: 'The rest goes from the sheath straight into the air under the bench, where it is not lost.',
    },
  },
  formulas: [
    {
      tex: String.raw`P' = G_{cl}\,(T_s - T_{\text{loop}}) + G_{ca}\,(T_s - T_{\text{air}}),\qquad \eta = \frac{G_{cl}}{G_{cl} + G_{ca}}`,
      words:
        'The heat P′ of a length of cable leaves by two ways: by contact to the loop, and by convection and radiation to the air. The conductances G of the two set the share of each and how warm the sheath must be to drive the heat out.',
      cites: [
        cite('churchill-chu1975', 'horizontal cylinder'),
        cite('incropera', 'conductances in series, radiation'),
        cite('emissivities', 'plastic 0.95, polished aluminium 0.05'),
      ],
    },
  ],
  cites: [
    cite('assumption', 'contact, spreading and inside film with their ranges'),
    cite('assumption', 'a crossing hides half of the surface'),
    cite('assumption', 'a taped turn that is loose or crossed has its foil still on'),
    cite('pvc-supplier', '60 °C in service'),
  ],
  cautions: ['crossing', 'heat-and-plastic', 'cable-instructions'],
  compute(situation) {
    const { bench } = situation;
    const { loop, cable } = bench;
    const { highestService } = pipeOf(bench);
    const air = { cableDiameter: cable.diameter, air: loop.hottest, emissivity: faceOf(bench) };
    const hot = (parameters: Parameters) => onPipe(bench, parameters, loop.hottest, loop.hottest);
    const empty = (parameters: Parameters) =>
      onPipe(bench, { ...parameters, insideFilm: filmWhenEmpty }, loop.fillTemperature, loop.fillTemperature);
    const figures = {
      inService: inRange(situation, (one) => inService(bench, one).sheath),
      atHottest: inRange(situation, (one) => hot(one).sheath),
      pipeAtHottest: inRange(situation, (one) => hot(one).pipeUnderCable),
      limitThermostat: inRange(situation, (one) => highestLoop(bench, one)),
      inFreeAir: inRange(situation, (one) => sheathInFreeAir(labelOf(bench, one), air)),
      atCrossing: inRange(situation, (one) => sheathAtCrossing(labelOf(bench, one), air)),
      pipeWhenEmpty: inRange(situation, (one) => empty(one).pipeUnderCable),
      waterShare: inRange(situation, (one) => inService(bench, one).fluidShare),
    };
    const pipeInService = inRange(situation, (one) => inService(bench, one).pipeUnderCable);
    const taped = cable.contact === 'taped';
    const allowed = amount(cable.highestSheath, 'temperature');
    const warnings: Warning[] = [];
    // Too hot even on a loop as cold as the search goes: no limit on the loop saves such a cable.
    const unsaved = figures.limitThermostat.low < coldestLoop + 0.1;
    if (unsaved) {
      const text = sentence`Even on the coldest loop the sheath or the pipe comes past its limit. No limit thermostat saves this cable: take one of less power per length.`;
      warnings.push(stop('no-limit-saves', text));
    }
    if (figures.inService.high > cable.highestSheath) {
      const text = sentence`In service the sheath may come to ${amount(figures.inService.high, 'temperature')} and ${allowed} is allowed. Take a cable of less power per length, or put foil tape over it where its instructions allow that.`;
      warnings.push(stop('sheath-over-limit', text));
    }
    if (pipeInService.high > highestService) {
      const text = sentence`In service the pipe under the cable may come to ${amount(pipeInService.high, 'temperature')} and ${amount(highestService, 'temperature')} is allowed. Take a cable of less power per length.`;
      warnings.push(stop('pipe-over-limit', text));
    }
    const { atHottest, pipeAtHottest, limitThermostat } = figures;
    const stuckTooHot = atHottest.high > cable.highestSheath || pipeAtHottest.high > highestService;
    if (stuckTooHot && !unsaved) {
      const text = sentence`If the thermostat sticks and the loop comes to ${amount(loop.hottest, 'temperature')}, the sheath may come to ${amount(atHottest.high, 'temperature')} (allowed ${allowed}) and the pipe under it to ${amount(pipeAtHottest.high, 'temperature')} (allowed ${amount(highestService, 'temperature')}). Fit a limit thermostat on the loop that cuts the power at ${amount(limitThermostat.low, 'temperature')} or below.`;
      warnings.push(care('limit-thermostat', text));
    }
    if (figures.inFreeAir.value > cable.highestSheath) {
      const hot = amount(figures.inFreeAir.value, 'temperature');
      const text = taped
        ? sentence`Where the cable hangs loose, the foil still on, its sheath may come to ${hot} and ${allowed} is allowed. Lay the whole heated length against the pipe and fasten it at every bend.`
        : sentence`Where the cable hangs loose its sheath may come to ${hot} and ${allowed} is allowed. Lay the whole heated length against the pipe and fasten it at every bend.`;
      warnings.push(care('loose-over-limit', text));
    }
    if (figures.atCrossing.value > cable.highestSheath) {
      const hot = amount(figures.atCrossing.value, 'temperature');
      const text = taped
        ? sentence`Where two turns cross, the foil still on, the sheath may come to ${hot} and ${allowed} is allowed. This is why turns never cross or touch.`
        : sentence`Where two turns cross the sheath may come to ${hot} and ${allowed} is allowed. This is why turns never cross or touch.`;
      warnings.push(care('crossing-over-limit', text));
    }
    if (figures.pipeWhenEmpty.high > highestService) {
      const text = sentence`Without water the pipe under the cable may come to ${amount(figures.pipeWhenEmpty.high, 'temperature')} and ${amount(highestService, 'temperature')} is allowed. Fill the loop before the cable is ever switched on.`;
      warnings.push(care('empty-over-limit', text));
    }
    return {
      figures: { ...figures, limitThermostat: unsaved ? null : figures.limitThermostat },
      warnings,
    };
  },
});
