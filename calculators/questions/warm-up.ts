import { ladder } from '../bench/ladder.ts';
import { ordinaryCold } from '../bench/outage.ts';
import { designOutside } from '../bench/place.ts';
import { expectedParameters } from '../bench/priors.ts';
import { designNightFields, reading, thermalFields } from '../bench/thermal-fields.ts';
import { warmUp } from '../bench/warm-up.ts';
import { amount, calculator, care, sentence, type Figure, type Warning } from '../calculator.ts';
import { cite } from '../sources.ts';

/** Light frosts that are looked at beside ordinary weather; in harder ones no pots thaw. */
const frosts = 3;

export default calculator({
  id: 'warm-up',
  question: 'How long until it is warm again?',
  summary:
    'After a power cut on the night that you build for: time from the return of the power until pots and loop are back.',
  reads: reading(
    'outlook.outageHours',
    'control.sensor',
    'control.setPoint',
    'plants.lowestRootTemperature',
    ...designNightFields,
    ...thermalFields,
  ),
  figures: {
    hoursToThaw: {
      label: 'Time until the pots are thawed',
      quantity: 'duration',
      explain:
        'No ice is left in any layer. Zero where none had formed, empty where it takes more than ten days. Outside it is as on an ordinary day of the coldest month.',
    },
    hoursToRootLimit: {
      label: 'Time until the roots are above your limit',
      quantity: 'duration',
      explain: 'Zero where they had not fallen below it.',
    },
    hoursToSetPoint: {
      label: 'Time until the thermostat first rests',
      quantity: 'duration',
      explain: 'Its sensor is at the set point.',
    },
    energy: {
      label: 'Energy to get there',
      quantity: 'energy',
      explain:
        'What the cable gives until the pots are thawed and the thermostat has rested once. Empty where that does not happen.',
    },
    loopFirstHour: {
      label: 'Loop warms in the first hour by',
      quantity: 'temperatureDifference',
      explain:
        'Read it on the pipe. A loop that warms much more slowly has a cable that lies badly, or is partly dead.',
    },
    rootsBefore: {
      label: 'Coldest roots when the power comes back',
      quantity: 'temperature',
      explain: 'After the time without power that you look at, at the lowest outside of your design night.',
    },
    outside: {
      label: 'Outside from then on',
      quantity: 'temperature',
      explain: 'The mean of day and night in the coldest month of the station.',
    },
  },
  tables: {
    ladder: {
      label: 'Time from the return of the power, by the outside temperature from then on',
      explain: 'An empty place is something that does not happen within ten days.',
      columns: {
        outside: { label: 'Outside', quantity: 'temperature' },
        setPoint: { label: 'Thermostat rests', quantity: 'duration' },
        rootLimit: { label: 'Roots above your limit', quantity: 'duration' },
        thawed: { label: 'Pots thawed', quantity: 'duration' },
      },
    },
  },
  formulas: [
    {
      tex: String.raw`t \approx \frac{C\,(T - T_0) + m_{\text{ice}}\,L}{P - G\,(\bar T - T_{\text{out}})}`,
      words:
        'For a single lump: the heat to warm it and to melt its ice, over the power that the losses leave. The guide follows all parts of the bench instead.',
      cites: [cite('incropera', 'lumped capacity'), cite('iapws-sr6', 'latent heat of freezing')],
    },
  ],
  cites: [cite('assumption', 'no sun; ordinary weather of the coldest month after the cut')],
  cautions: ['cable-instructions', 'mains-and-water'],
  compute(situation) {
    const { bench } = situation;
    const parameters = expectedParameters(situation);
    const cut = bench.outlook.outageHours;
    const during = designOutside(situation);
    const after = ordinaryCold(situation);
    const warm = warmUp(situation, parameters, { cut, during, after });
    const figure = (value: number | null): Figure | null => (value === null ? null : { value });
    const warnings: Warning[] = [];
    if (warm.thawed === null) {
      const text = sentence`After ${amount(cut, 'duration')} without power the pots are not thawed within ten days at ${amount(after, 'temperature')} outside with the heat as it is. Cover the plants until they are.`;
      warnings.push(care('stays-frozen', text));
    }
    if (warm.setPoint === 0 && warm.thawed !== 0) {
      const text = sentence`The thermostat would not heat: its sensor is at the set point while the roots are at ${amount(warm.coldestBefore, 'temperature')}. Turn it up until the pots are thawed, or move the sensor to a pot.`;
      warnings.push(care('thermostat-rests-on-ice', text));
    }
    return {
      figures: {
        hoursToThaw: figure(warm.thawed),
        hoursToRootLimit: figure(warm.rootLimit),
        hoursToSetPoint: figure(warm.setPoint),
        energy: warm.thawed === null || warm.setPoint === null ? null : { value: warm.energy },
        loopFirstHour: { value: warm.firstHour },
        rootsBefore: { value: warm.coldestBefore },
        outside: { value: after },
      },
      tables: {
        ladder: {
          rows: [after, ...ladder(situation.region).slice(0, frosts)].map((level) => {
            const { setPoint, rootLimit, thawed } = warmUp(situation, parameters, {
              cut,
              during,
              after: level,
            });
            return { outside: level, setPoint, rootLimit, thawed };
          }),
        },
      },
      warnings,
    };
  },
});
