import { designOutside, houseAir } from '../bench/place.ts';
import { currentsOf, dropOf, powerArriving, voltageOf } from '../bench/power-arriving.ts';
import {
  amount,
  calculator,
  care,
  sentence,
  stop,
  type Figure,
  type Situation,
  type Warning,
} from '../calculator.ts';
import { ratedPower } from '../electric/cable.ts';
import {
  acceptsProtection,
  circuitCurrent,
  coldestStart,
  powerShareAfterDrop,
  settledDrop,
  smallestBreaker,
  startUpRatio,
  voltageDrop,
} from '../electric/circuit.ts';
import { cite } from '../sources.ts';
import { conductors } from '../tables/conductors.ts';
import { ruleSets } from '../tables/rule-sets.ts';

/** Mains stay within a tenth of their nominal voltage (EN 50160, from memory); beyond it is another supply. */
const mainsSpread = 0.1;

/** Breakers that differ by less than this [A] are the same size. */
const sameSize = 0.01;

const figure = (value: number): Figure => ({ value });

/**
 * What is left of the label's power at the end of the feeder [W]. The resistance of a self-regulating cable falls as it cools,
 * so it loses less than the square of the voltage would take and gains nothing: half of that loss, from none to all of it.
 */
function arriving(situation: Situation): Figure {
  const { cable } = situation.bench;
  const rated = ratedPower(cable);
  if (cable.kind === 'constant') return figure(rated * powerArriving(situation));
  const low = rated * powerShareAfterDrop(settledDrop(dropOf(situation)));
  return { value: (low + rated) / 2, low, high: rated };
}

export default calculator({
  id: 'circuit',
  question: 'Is the circuit right?',
  summary: 'What the cable draws, the breaker that may feed it, and what the feeder loses on the way.',
  reads: [
    'cable.powerPerLength',
    'cable.length',
    'cable.kind',
    'supply.breaker',
    'supply.protection',
    'supply.conductor',
    'supply.feederLength',
    'supply.otherLoad',
    'supply.voltage',
    'place.region',
    'place.station',
    'place.designNight',
    'place.ownLowest',
    'place.houseKind',
    'place.houseOffset',
    'place.houseMinimum',
  ],
  figures: {
    current: {
      label: 'Current of the circuit',
      quantity: 'current',
      symbol: 'I',
      explain: 'Cable and other load together, once running.',
    },
    cableCurrent: {
      label: 'Current of the cable',
      quantity: 'current',
      symbol: 'I_c',
      explain: 'What an ammeter shows with nothing else on. Half of it means that half the cable is dead.',
    },
    startUpCurrent: {
      label: 'Current of the cable at a cold start',
      quantity: 'current',
      explain:
        'A self-regulating cable draws more while it is cold. By one maker’s table, on the night that you build for; the cable’s own sheet rules. Empty for a constant-wattage cable.',
    },
    continuousCurrent: {
      label: 'Current that the breaker must be good for',
      quantity: 'current',
      symbol: 'I_b',
      explain: 'A cable that runs for hours counts for more than it draws where the rules say so.',
    },
    smallestBreaker: {
      label: 'Smallest breaker',
      quantity: 'breakerSize',
      explain: 'The next standard size. The wire must suit the breaker: an electrician chooses both.',
    },
    loadShare: {
      label: 'Load on the present breaker',
      quantity: 'share',
      explain: 'Of the figure on its lever, everything on, at a cold start.',
    },
    voltageDrop: {
      label: 'Voltage lost in the feeder',
      quantity: 'share',
      symbol: 'u',
      explain: 'A constant-wattage cable loses about twice that share of its heat.',
    },
    voltageDropVolts: {
      label: 'Voltage lost',
      quantity: 'voltage',
      symbol: '\\Delta U',
      explain: 'There and back, with the conductor as warm as it may get.',
    },
    powerArriving: {
      label: 'Power that arrives at the cable',
      quantity: 'power',
      symbol: 'P_a',
      explain:
        'What is left of its label at the end of the feeder, with everything on. Count on this on the coldest night. A self-regulating cable makes up for a part of the loss: its range goes from none of it made up for to all, and by its line it gives more than its label to a loop that is colder than 10 °C (50 °F).',
    },
    groundFaultTrip: {
      label: 'Ground-fault device for people trips at, at most',
      quantity: 'faultCurrent',
      symbol: 'I_{\\Delta}',
      explain:
        'Printed on the device that protects people, by the rules of your region. A device for equipment trips at several times this, and a person may not survive that.',
    },
    longestFeeder: {
      label: 'Longest feeder of this wire',
      quantity: 'length',
      explain: 'One way, at the highest voltage drop that the rules recommend.',
    },
  },
  formulas: [
    {
      tex: String.raw`I = \frac{P}{U},\qquad I_b = k\,I`,
      words:
        'Current is power over voltage. For loads that run for hours k is 1.25 by US rules and 1 by IEC rules; the breaker is the next standard size that is not smaller.',
      cites: [...ruleSets.us.continuousLoad.cites, ...ruleSets.iec.continuousLoad.cites],
    },
    {
      tex: String.raw`\Delta U = 2\,R'\,\ell\,I,\qquad u = \frac{\Delta U}{U}`,
      words:
        'The current goes there and back, so twice the length of the feeder, times resistance per length.',
      cites: [
        cite('nec-chapter9', 'table 8'),
        cite('iec60228', 'resistance at 20 °C'),
        cite('iec60287', 'temperature coefficient of copper'),
      ],
    },
    {
      tex: String.raw`P_a = P\left(1 - \frac{u}{1 + u}\right)^2`,
      words:
        'A cable of fixed resistance gives heat with the square of the voltage that reaches it. As it takes less current at less voltage, a little less is lost than was reckoned with the full current.',
      cites: [cite('ohm-joule', 'P = U²/R, two resistances in series')],
    },
  ],
  cites: [
    ...ruleSets.us.voltageDrop.cites,
    ...ruleSets.iec.voltageDrop.cites,
    ...ruleSets.us.groundFault.cites,
    ...ruleSets.iec.groundFault.cites,
    cite('assumption', 'a self-regulating cable makes up for half of what the feeder takes, none to all'),
    cite('startup-table', 'one maker’s longest lengths by start-up temperature'),
  ],
  cautions: ['mains-and-water', 'cable-instructions'],
  compute(situation) {
    const { bench, region } = situation;
    const { cable, supply } = bench;
    const rules = ruleSets[region.mains.rules];
    const conductor = conductors[supply.conductor];
    const voltage = voltageOf(situation);
    const { cable: running, other } = currentsOf(situation);
    const coldest = houseAir(situation, designOutside(situation), bench.place.houseOffset);
    // A start colder than the table counts as its coldest: the table has no more to say.
    const starting =
      cable.kind === 'self-regulating'
        ? running * startUpRatio(cable.powerPerLength, Math.max(coldest, coldestStart))
        : null;
    const heating = starting ?? running;
    const needed = circuitCurrent(rules, heating, other);
    const smallest = smallestBreaker(rules, heating, other);
    const drop = dropOf(situation);
    const lost = drop * voltage;
    const lostPerLength = voltageDrop(conductor, 1, running + other);
    const longestFeeder = (rules.voltageDrop.value * voltage) / lostPerLength;
    const breaker = amount(supply.breaker, 'breakerSize');
    const trips = rules.tripsAt.value;
    const people = sentence`${rules.groundFault.device}, ${amount(trips.people, 'faultCurrent')} or less`;
    const warnings: Warning[] = [];
    if (supply.protection === 'none') {
      const text = sentence`The circuit has no ground-fault protection. A damaged cable on a wet bench kills without it. Have an electrician fit a device that protects people (${people}), before anything is plugged in.`;
      warnings.push(stop('no-ground-fault-protection', text));
    } else if (!acceptsProtection(rules, supply.protection)) {
      const text = sentence`Protection of equipment commonly lets through up to ${amount(trips.equipment, 'faultCurrent')}, which a person may not survive. Ask an electrician for a device that protects people (${people}).`;
      warnings.push(care('equipment-protection-only', text));
    }
    if (supply.breaker < needed - sameSize) {
      const least = smallest === null ? null : amount(smallest, 'breakerSize');
      const carries = sentence`The circuit must be good for ${amount(needed, 'current')} and its breaker is ${breaker}. `;
      const remedy = least
        ? sentence`It takes a breaker of ${least} or more, and a wire that suits it. Ask an electrician, or put other load on another circuit.`
        : sentence`No single standard breaker is that large. Take a shorter cable or share it out over several circuits.`;
      warnings.push(stop('breaker-too-small', sentence`${carries}${remedy}`));
    }
    if (supply.breaker > conductor.highestBreaker + sameSize) {
      const most = amount(conductor.highestBreaker, 'breakerSize');
      if (conductor.breakerHolds === 'always') {
        const text = sentence`A breaker of ${breaker} does not protect this wire, which takes ${most} at most: the wire can burn before the breaker trips. Have an electrician fit the right breaker or a thicker wire.`;
        warnings.push(stop('wire-too-thin', text));
      } else {
        const text = sentence`A breaker of ${breaker} is large for this wire: laid in a conduit it commonly takes ${most}. Have an electrician say what it takes the way it is laid.`;
        warnings.push(care('wire-may-be-too-thin', text));
      }
    }
    if (!rules.breakers.value.some((size) => Math.abs(size - supply.breaker) < sameSize)) {
      const text = sentence`A breaker of ${breaker} is not a standard size under the rules of this region. Read the figure on its lever again.`;
      warnings.push(care('breaker-not-standard', text));
    }
    if (drop > rules.voltageDrop.value) {
      const text = sentence`The feeder loses ${amount(drop, 'share')} of the voltage and ${amount(rules.voltageDrop.value, 'share')} is recommended at most. This wire may be ${amount(longestFeeder, 'length')} long for this load; take a thicker one or a nearer panel.`;
      warnings.push(care('voltage-drop', text));
    }
    if (Math.abs(voltage / region.mains.voltage - 1) > mainsSpread) {
      const text = sentence`The circuit has ${amount(voltage, 'voltage')} and the mains of this region ${amount(region.mains.voltage, 'voltage')}. Other rules may hold, such as a breaker with two poles. Ask an electrician which.`;
      warnings.push(care('rules-differ', text));
    }
    return {
      figures: {
        current: figure(running + other),
        cableCurrent: figure(running),
        startUpCurrent: starting === null ? null : figure(starting),
        continuousCurrent: figure(needed),
        smallestBreaker: smallest === null ? null : figure(smallest),
        loadShare: figure((heating + other) / supply.breaker),
        voltageDrop: figure(drop),
        voltageDropVolts: figure(lost),
        powerArriving: arriving(situation),
        groundFaultTrip: figure(trips.people),
        longestFeeder: figure(longestFeeder),
      },
      warnings,
    };
  },
});
