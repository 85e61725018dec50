import { coverArea, loopLength, perimeter, pipeOf, topArea } from './bench/geometry.ts';
import { fields } from './bench/fields.ts';
import { amount, sentence, type Amount, type Figure, type Sentence, type Situation } from './calculator.ts';
import type { Answers } from './index.ts';
import { ruleSets } from './tables/rule-sets.ts';

/** Something to buy or to have ready for a bench. Words are the same in every region but for their units. */
export interface Purchase {
  /** Stable name. */
  readonly id: string;
  /** What part of the work it belongs to. */
  readonly group: 'loop' | 'heat' | 'enclosure' | 'control' | 'watching';
  readonly name: Sentence;
  readonly quantity: Sentence;
}

/** Corners of the loop, each a 90° bend, and ends to close or to carry on into a stand-pipe. */
const fittings = {
  u: { bends: 2, ends: 2 },
  ring: { bends: 4, ends: 0 },
  straight: { bends: 0, ends: 2 },
} as const;

/** Supports of a pipe that is warm and always full: half of the 1.2 m (4 ft) that is common for cold drain pipe [m] (from memory). */
const betweenSupports = 0.6;

/** Film of the skirt that is laid out on the floor and weighed down [m] (design rule of this guide). */
const onTheFloor = 0.15;

/** Places to read each day: outside, in the house, under the bench, in the coldest pot (common practice). */
const thermometers = 4;

const count = (number: number): Sentence => [amount(number, 'count')];

const ofFigure = (figure: Figure | null): number | null => figure?.value ?? null;

/** Pipe, fittings, stand-pipe, supports and what fills them. */
function loopPurchases({ bench }: Situation, { loop, mix }: Answers): Purchase[] {
  const { run, standpipeDiameter, expansion } = bench.loop;
  const length = loopLength(bench);
  const { bends, ends } = fittings[run];
  const list: Purchase[] = [
    {
      id: 'pipe',
      group: 'loop',
      name: [pipeOf(bench).label],
      quantity: [amount(length, 'length')],
    },
  ];
  if (bends > 0)
    list.push({ id: 'bends', group: 'loop', name: sentence`Bends of 90°`, quantity: count(bends) });
  if (ends > 0) list.push({ id: 'end-caps', group: 'loop', name: sentence`End caps`, quantity: count(ends) });
  // A closed ring has no last support beyond its first.
  const supports = Math.ceil(length / betweenSupports) + (run === 'ring' ? 0 : 1);
  list.push({ id: 'supports', group: 'loop', name: sentence`Pipe supports`, quantity: count(supports) });
  list.push({
    id: 'drain-plug',
    group: 'loop',
    name: expansion === 'standpipe' ? sentence`Drain plug, tee, cement` : sentence`Drain plug, cement`,
    quantity: count(1),
  });
  const standpipe = ofFigure(loop.figures.standpipeLength);
  if (expansion === 'standpipe' && standpipe !== null)
    list.push({
      id: 'standpipe',
      group: 'loop',
      name: sentence`Stand-pipe, ${amount(standpipeDiameter, 'size')} inside`,
      quantity: [amount(standpipe, 'size')],
    });
  const concentrate = ofFigure(mix.figures.concentrateVolume);
  const water = ofFigure(mix.figures.waterVolume);
  if (concentrate !== null) {
    const { label } = fields.mix.fields.antifreeze.options[bench.mix.antifreeze];
    list.push(
      {
        id: 'concentrate',
        group: 'loop',
        name: sentence`${label}, concentrate`,
        quantity: [amount(concentrate, 'volume')],
      },
      {
        id: 'refractometer',
        group: 'loop',
        name: sentence`Refractometer, food colour`,
        quantity: count(1),
      },
    );
  }
  if (water !== null)
    list.push({
      id: 'water',
      group: 'loop',
      name: sentence`Soft water`,
      quantity: [amount(water, 'volume')],
    });
  return list;
}

const cableName = {
  constant: (power: Amount) => sentence`Cable, constant, ${power}`,
  'self-regulating': (power: Amount) => sentence`Cable, self-regulating, ${power}`,
} as const;

/** The cable and what holds it. */
function heatPurchases({ bench: { cable } }: Situation): Purchase[] {
  const list: Purchase[] = [
    {
      id: 'cable',
      group: 'heat',
      name: cableName[cable.kind](amount(cable.powerPerLength, 'powerPerLength')),
      quantity: [amount(cable.length, 'length')],
    },
  ];
  if (cable.contact === 'taped')
    list.push({
      id: 'foil-tape',
      group: 'heat',
      name: sentence`Foil tape over the cable`,
      quantity: [amount(cable.length, 'length')],
    });
  else
    list.push({
      id: 'fastening',
      group: 'heat',
      name: sentence`Ties that its sheet allows`,
      quantity: count(1),
    });
  return list;
}

const coverName = {
  fleece: sentence`Cover: fleece`,
  film: sentence`Cover: film`,
  'film-infrared': sentence`Cover: film that holds back heat radiation`,
  both: sentence`Cover: fleece with film over it`,
} as const;

/** What closes the bench in. */
function enclosurePurchases({ bench }: Situation): Purchase[] {
  const { skirt, cover, frame } = bench;
  const list: Purchase[] = [];
  if (skirt.material !== 'none') {
    const { label } = fields.skirt.fields.material.options[skirt.material];
    list.push({
      id: 'skirt',
      group: 'enclosure',
      name: sentence`${label}, ${amount(frame.height + onTheFloor, 'length')} high`,
      quantity: [amount(perimeter(bench) * skirt.closed * skirt.layers, 'length')],
    });
  }
  if (cover.kind !== 'none')
    list.push({
      id: 'cover',
      group: 'enclosure',
      name: coverName[cover.kind],
      quantity: [amount(coverArea(bench), 'area')],
    });
  if (frame.floorInsulation > 0)
    list.push({
      id: 'floor-board',
      group: 'enclosure',
      name: sentence`Foam board for the floor, ${amount(frame.floorInsulation, 'size')}`,
      quantity: [amount(topArea(bench), 'area')],
    });
  return list;
}

/** What switches the heat, and cuts it when something is wrong. An electrician chooses and wires the devices. */
function controlPurchases({ bench, region }: Situation, { circuit, settings }: Answers): Purchase[] {
  const rules = ruleSets[region.mains.rules];
  const switched = circuit.figures.cableCurrent;
  const cut = ofFigure(settings.figures.limitThermostat);
  const frost = ofFigure(settings.figures.loopFrost);
  const list: Purchase[] = [
    {
      id: 'thermostat',
      group: 'control',
      name: switched
        ? sentence`Thermostat with a probe on a lead, for ${amount(switched.value, 'current')} or more`
        : sentence`Thermostat with a probe on a lead`,
      quantity: count(1),
    },
    {
      id: 'limit-thermostat',
      group: 'control',
      name:
        cut === null
          ? sentence`Limit thermostat with hand reset`
          : sentence`Limit thermostat with hand reset, to set at ${amount(cut, 'temperature')}`,
      quantity: count(1),
    },
  ];
  const pause = ofFigure(settings.figures.loopPause);
  if (pause !== null)
    list.push({
      id: 'pausing-thermostat',
      group: 'control',
      name: sentence`Pausing thermostat on the loop, at ${amount(pause, 'temperature')}`,
      quantity: count(1),
    });
  // A mix is liquid at any temperature that a bench comes to; plain water is not.
  if (bench.mix.antifreeze === 'none' && frost !== null)
    list.push({
      id: 'frost-thermostat',
      group: 'control',
      name: sentence`Frost thermostat on the loop, to set at ${amount(frost, 'temperature')}`,
      quantity: count(1),
    });
  list.push({
    id: 'ground-fault-device',
    group: 'control',
    name: sentence`Ground-fault device (${rules.groundFault.device}), ${amount(rules.tripsAt.value.people, 'faultCurrent')} or less`,
    quantity: count(1),
  });
  return list;
}

/** What tells that all is well. */
const watchingPurchases = (): Purchase[] => [
  {
    id: 'alarm',
    group: 'watching',
    name: sentence`Alarm with a battery, probes for pot and loop`,
    quantity: count(1),
  },
  {
    id: 'energy-meter',
    group: 'watching',
    name: sentence`Energy meter`,
    quantity: count(1),
  },
  {
    id: 'thermometers',
    group: 'watching',
    name: sentence`Minimum thermometers: outside, house, bench air, coldest pot`,
    quantity: count(thermometers),
  },
];

/**
 * All that the bench takes, in the order of the work, with quantities that follow from it: lengths as they lie, with nothing
 * added for waste. A quantity that no figure gives is left out of its name; what the bench does not have is not listed. Not for
 * a bench that has a reason against building it (a warning of level `stop`): what is wrong there may be what would be bought.
 */
export const shoppingList = (situation: Situation, answers: Answers): readonly Purchase[] => [
  ...loopPurchases(situation, answers),
  ...heatPurchases(situation),
  ...enclosurePurchases(situation),
  ...controlPurchases(situation, answers),
  ...watchingPurchases(),
];
