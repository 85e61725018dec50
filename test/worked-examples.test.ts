import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { pipeInside } from '../calculators/bench/geometry.ts';
import { expectedParameters } from '../calculators/bench/priors.ts';
import { priceAt } from '../calculators/bench/season.ts';
import { restOn } from '../calculators/bench/steady.ts';
import { slabResistance } from '../calculators/laws/conduction.ts';
import { buoyantFlow, flowConductance, openingsInSeries } from '../calculators/laws/leakage.ts';
import { radiantFlux } from '../calculators/laws/radiation.ts';
import { mediumFusionHeat, waterShareOf } from '../calculators/properties/medium.ts';
import { dewPoint, innerFace, saturationPressure } from '../calculators/properties/moist-air.ts';
import { waterFusionHeat, waterHeatCapacity } from '../calculators/properties/water.ts';
import { toBase, type QuantityName } from '../calculators/quantities/quantity.ts';
import { showQuantity, type Manner } from '../calculators/quantities/show.ts';
import circuit from '../calculators/questions/circuit.ts';
import loop from '../calculators/questions/loop.ts';
import mix from '../calculators/questions/mix.ts';
import roots from '../calculators/questions/roots.ts';
import watts from '../calculators/questions/watts.ts';
import { media } from '../calculators/tables/media.ts';
import { pipes } from '../calculators/tables/pipes.ts';
import { roundScale } from '../site/drawing/scale.ts';
import { expectNear, expectPrinted } from './support/near.ts';
import { situation, usSituation } from './support/situations.ts';
import { workedExample, type Column, type WorkedExample } from './support/worked-example.ts';

const columns = ['metric', 'us'] as const;

/** Every row whose cell ends in a sum comes to what stands behind it, worked out by mathjs. */
function sumsHold(example: WorkedExample, heads: readonly string[]): void {
  it.each(heads.flatMap((head) => columns.map((column) => [head, column] as const)))(
    '%s, %s: the sum comes to what stands behind it',
    (head, column) => {
      const { value, result } = example.sum(head, column);
      expectPrinted(value, result, head);
    },
  );
}

const manner = (column: Column): Manner => ({ system: column, locale: 'en' });

/** A sum's result as the guide writes that quantity. */
const written = (example: WorkedExample, head: string, column: Column): string => {
  const { result, unit } = example.sum(head, column);
  return `${result} ${unit}`;
};
const shown = (value: number | undefined, quantity: QuantityName, column: Column): string =>
  showQuantity(value ?? NaN, quantity, manner(column)).replace('\u202f', ' ');

describe('the example that is worked by hand in roots.mdx', () => {
  const example = workedExample('roots');
  sumsHold(example, [
    'Medium in one pot',
    'Medium in all',
    'Water in it',
    'Heat of freezing',
    'As much as the cable in',
  ]);

  it.each(columns)('the calculator agrees to the digit, %s', (column) => {
    const { given } = example;
    const [across, deep] = [/([\d.]+) (?:cm|in) across/u, /([\d.]+) (?:cm|in) of medium/u];
    const unit = column === 'metric' ? 'cm' : 'in';
    const length = 20;
    const { figures } = roots.compute(
      situation({
        pots: {
          count: given('Pots', column, /^(\d+) pots/u),
          diameter: toBase('size', given('Pots', column, across), unit),
          height: toBase('size', given('Pots', column, deep), unit),
          medium: 'bark',
          moisture: 0.8,
        },
        cable: { length, powerPerLength: given('Cable', column, /^(\d+) W$/u) / length },
      }),
    );
    expect(written(example, 'Water in it', column)).toBe(shown(figures.potWater?.value, 'mass', column));
    expect(written(example, 'Heat of freezing', column)).toBe(
      shown(figures.freezingHeat?.value, 'energy', column),
    );
    expect(written(example, 'As much as the cable in', column)).toBe(
      shown(figures.cableHours?.value, 'duration', column),
    );
  });
});

describe('the example that is worked by hand in heat.mdx', () => {
  const example = workedExample('heat');
  sumsHold(example, ['By conduction', 'By moving air', 'By radiation']);

  it.each(columns)('the laws of the calculator agree to the digit, %s', (column) => {
    const metric = column === 'metric';
    const given = (head: string, pattern: RegExp): number => example.given(head, column, pattern);
    const level = (head: string, pattern: RegExp): number =>
      toBase('temperature', given(head, pattern), metric ? '°C' : '°F');
    const area = (head: string): number =>
      toBase('area', given(head, /^([\d.]+) \S+ /u), metric ? 'm²' : 'ft²');

    const thickness = toBase('size', given('Foam board', /([\d.]+) (?:m|in) thick/u), metric ? 'm' : 'in');
    const drop = level('Foam board', /([−\d.]+) °. above/u) - level('Foam board', /([−\d.]+) °. below/u);
    // Extruded polystyrene, aged, 0.034 W/(m·K): what the bench takes for a board on its floor.
    const conducted = (area('Foam board') * drop) / slabResistance(thickness, 0.034);
    expectPrinted(conducted, example.sum('By conduction', column).result, 'conduction');

    const perCubicFoot = toBase('length', 1, 'ft') ** 3;
    const flow = given('Draught', /^([\d.]+) \S+ of air/u) * (metric ? 1 : perCubicFoot);
    const [coldAir, warmAir] = [level('Draught', /in at ([−\d.]+)/u), level('Draught', /out at ([−\d.]+)/u)];
    const carried = flowConductance(flow, (coldAir + warmAir) / 2) * (warmAir - coldAir);
    expectPrinted(carried, example.sum('By moving air', column).result, 'moving air');

    const [top, roof] = [
      level('Tops of the pots', / at ([−\d.]+) °. that/u),
      level('Tops of the pots', /roof at ([−\d.]+)/u),
    ];
    const sent = area('Tops of the pots') * radiantFlux(0.92, top, roof);
    expectPrinted(sent, example.sum('By radiation', column).result, 'radiation');
  });
});

describe('the example that is worked by hand in cover.mdx', () => {
  const example = workedExample('cover');
  sumsHold(example, [
    'Open at the floor',
    'Open at the edge',
    'Both as one opening',
    'Air each second',
    'Heat in it',
    'One gap closed',
    'Heat, both closed',
  ]);

  it.each(columns)('the laws of the calculator agree to the digit, %s', (column) => {
    const metric = column === 'metric';
    const given = (pattern: RegExp): number => example.given('Bench', column, pattern);
    const [long, short] = metric ? (['m', 'mm'] as const) : (['ft', 'in'] as const);
    const metres = (pattern: RegExp): number => toBase('length', given(pattern), long);
    const gap = (pattern: RegExp): number => toBase('size', given(pattern), short);
    const rim = metres(/^([\d.]+) \S+ around/u);
    const height = metres(/([\d.]+) \S+ high/u);
    const [below, above] = [gap(/([\d.]+) \S+ open below/u), gap(/([\d.]+) \S+ above/u)];
    const left = toBase('size', metric ? 1 : 0.04, short);
    const level = (pattern: RegExp): number =>
      toBase('temperature', example.given('Air', column, pattern), metric ? '°C' : '°F');
    const [warm, cold] = [level(/^([−\d.]+) °. under/u), level(/([−\d.]+) °. in the house/u)];
    const foot = toBase('length', 1, long);
    const print = (value: number, head: string): void => {
      expectPrinted(value, example.sum(head, column).result, head);
    };
    const carried = (flow: number): number => flowConductance(flow, (warm + cold) / 2) * (warm - cold);

    const opening = openingsInSeries(rim * below, rim * above);
    print((rim * below) / foot ** 2, 'Open at the floor');
    print((rim * above) / foot ** 2, 'Open at the edge');
    print(opening / foot ** 2, 'Both as one opening');
    const flow = buoyantFlow(opening, height, warm, cold);
    print(flow / foot ** 3, 'Air each second');
    print(carried(flow), 'Heat in it');
    print((rim * left) / foot ** 2, 'One gap closed');
    const closed = buoyantFlow(openingsInSeries(rim * left, rim * left), height, warm, cold);
    print(carried(closed), 'Heat, both closed');
  });
});

describe('the example that is worked by hand in ways.mdx', () => {
  const example = workedExample('ways');
  sumsHold(example, [
    'Cable it takes',
    'Power of the reel',
    'Share of the time',
    'A night of 14 hours',
    'Heat that it gives',
    'It lasts',
  ]);

  it.each(columns)('the calculator agrees to the digit, %s', (column) => {
    const metric = column === 'metric';
    const given = (head: string, pattern: RegExp): number => example.given(head, column, pattern);
    const reel = 'Needed, and cable';
    const { figures } = watts.compute(
      situation({
        supply: { feederLength: 0 },
        cable: {
          kind: 'constant',
          length: toBase('length', given(reel, /sold as (\d+)/u), metric ? 'm' : 'ft'),
          powerPerLength: toBase('powerPerLength', given(reel, /of (\d+) W/u), metric ? 'W/m' : 'W/ft'),
        },
      }),
    );
    expect(written(example, 'Power of the reel', column)).toBe(
      shown(figures.installed?.value, 'power', column),
    );

    const water = 'Water in the loop';
    const mass = toBase('mass', given(water, /^(\d+)/u), metric ? 'kg' : 'lb');
    const level = (pattern: RegExp): number =>
      toBase('temperature', given(water, pattern), metric ? '°C' : '°F');
    const [from, to] = [level(/from (\d+)/u), level(/down to (\d+)/u)];
    const heat = mass * waterHeatCapacity((from + to) / 2) * (from - to);
    expectPrinted(heat / 3.6e6, example.sum('Heat that it gives', column).result, 'heat of the water');
  });
});

describe('the example that is worked by hand in loop.mdx', () => {
  const example = workedExample('loop');
  sumsHold(example, [
    'Volume',
    'Mass of the fluid',
    'Mass of the pipe',
    'Weight per length',
    'Swelling',
    'Rise',
    'Growth of the run',
    'Heat for each degree',
    'It cools by 5 K, or 9 °F',
  ]);

  it.each(columns)('the calculator agrees to the digit, %s', (column) => {
    const metric = column === 'metric';
    const [long, short, degree] = metric ? (['m', 'mm', '°C'] as const) : (['ft', 'in', '°F'] as const);
    const given = (head: string, pattern: RegExp): number => example.given(head, column, pattern);
    const run = toBase('length', given('Longest run', /^([\d.]+)/u), long);
    const level = (pattern: RegExp): number => toBase('temperature', given('Longest run', pattern), degree);
    const inset = 0.15;
    const { bench } = situation();
    const { figures } = loop.compute(
      situation({
        frame: { length: run + 2 * inset },
        loop: {
          run: 'u',
          inset,
          pipe: metric ? 'drain-110' : 'schedule40-3in',
          length: toBase('length', given('Loop', /^(\d+)/u), long),
          expansion: 'standpipe',
          standpipeDiameter: toBase('size', given('Stand-pipe', /^(\d+)/u), short),
          fillTemperature: toBase('temperature', given('Filled at', /^(\d+)/u), degree),
          hottest: level(/and ([\d.]+)/u),
        },
        mix: { ...bench.mix, antifreeze: 'propylene', share: 0.3, protectTo: level(/between ([−\d.]+)/u) },
      }),
    );
    const same = (head: string, value: number | undefined, quantity: QuantityName): void =>
      expect(written(example, head, column)).toBe(shown(value, quantity, column));
    same('Volume', figures.volume?.value, 'volume');
    same('Mass of the fluid', figures.fluidMass?.value, 'mass');
    same('Mass of the pipe', figures.pipeMass?.value, 'mass');
    same('Weight per length', figures.filledMassPerLength?.value, 'massPerLength');
    same('Rise', figures.rise?.value, 'size');
    same('Growth of the run', figures.pipeGrowth?.value, 'size');
    same('Heat for each degree', figures.heatCapacity?.value, 'heatCapacity');
    // The table writes more digits of the swelling than a reader is shown, as the rise is worked out from it.
    const litre = toBase('volume', 1, metric ? 'L' : 'gal');
    expectPrinted((figures.expansionVolume?.value ?? NaN) / litre, example.sum('Swelling', column).result);
    const [drop, power] = [5, 500];
    const lasts = ((figures.heatCapacity?.value ?? NaN) * drop) / power;
    same('It cools by 5 K, or 9 °F', lasts, 'duration');
  });
});

describe('the example that is worked by hand in antifreeze.mdx', () => {
  const example = workedExample('antifreeze');
  sumsHold(example, [
    'Concentrate, new loop',
    'Water, new loop',
    'To drain and replace',
    'Or to add on top',
    'Antifreeze in it then',
  ]);

  it.each(columns)('the calculator agrees to the digit, %s', (column) => {
    const metric = column === 'metric';
    const given = (head: string, pattern: RegExp): number => example.given(head, column, pattern);
    const pipe = 'drain-110';
    const volume = toBase('volume', given('Loop', /^(\d+)/u), metric ? 'L' : 'gal');
    const { figures } = mix.compute(
      situation({
        // So long that it holds what the table says.
        loop: { pipe, length: volume / ((Math.PI / 4) * pipeInside(pipes[pipe]) ** 2) },
        mix: {
          antifreeze: 'propylene',
          share: given('Wanted', /^(\d+) %/u) / 100,
          measuredFreezing: toBase('temperature', given('Measured', /^([−\d.]+)/u), metric ? '°C' : '°F'),
        },
      }),
    );
    const same = (head: string, value: number | undefined): void =>
      expect(written(example, head, column)).toBe(shown(value, 'volume', column));
    same('Concentrate, new loop', figures.concentrateVolume?.value);
    same('Water, new loop', figures.waterVolume?.value);
    same('To drain and replace', figures.drainAndReplace?.value);
    same('Or to add on top', figures.addConcentrate?.value);
    same('Antifreeze in it then', figures.concentrateVolume?.value);
    expect(example.cell('First ice of such mix', column)).toBe(
      shown(figures.freezingPoint?.value, 'temperature', column),
    );
    expectPrinted(figures.presentShare?.value ?? NaN, '0.2105', 'the share in the loop now');
  });
});

describe('the example that is worked by hand in circuit.mdx', () => {
  const example = workedExample('circuit');
  sumsHold(example, [
    'Current',
    'Good for',
    'Voltage lost',
    'Share of it',
    'Power that arrives',
    'Longest feeder',
  ]);

  it.each(columns)('the calculator agrees to the digit, %s', (column) => {
    const metric = column === 'metric';
    const given = (head: string, pattern: RegExp): number => example.given(head, column, pattern);
    const inPlace = metric ? situation : usSituation;
    const length = 50;
    const { figures } = circuit.compute(
      inPlace({
        cable: { kind: 'constant', length, powerPerLength: given('Cable', /^(\d+) W/u) / length },
        supply: {
          voltage: given('Cable', /at (\d+) V/u),
          otherLoad: 0,
          feederLength: toBase('length', given('Feeder', /^(\d+)/u), metric ? 'm' : 'ft'),
          conductor: metric ? 'mm2-1.5' : 'awg-12',
        },
      }),
    );
    const same = (head: string, value: number | undefined, quantity: QuantityName): void =>
      expect(written(example, head, column)).toBe(shown(value, quantity, column));
    same('Current', figures.current?.value, 'current');
    same('Good for', figures.continuousCurrent?.value, 'current');
    same('Share of it', figures.voltageDrop?.value, 'share');
    same('Power that arrives', figures.powerArriving?.value, 'power');
    expect(figures.smallestBreaker?.value).toBe(given('Smallest breaker made', /^(\d+) A$/u));
    // The table writes a digit more, or less, of these two than a reader is shown.
    expectPrinted(figures.voltageDropVolts?.value ?? NaN, example.sum('Voltage lost', column).result);
    const foot = toBase('length', 1, metric ? 'm' : 'ft');
    const longest = (figures.longestFeeder?.value ?? NaN) / foot;
    expectPrinted(longest, example.sum('Longest feeder', column).result);
  });
});

describe('the example that is worked by hand in night.mdx', () => {
  const example = workedExample('night');
  sumsHold(example, ['From the cable', 'From the loop', 'Water in them', 'From the pots', 'Hours of cable']);

  it.each(columns)('what the bench is worked out with agrees to the digit, %s', (column) => {
    const metric = column === 'metric';
    const given = (head: string, pattern: RegExp): number => example.given(head, column, pattern);
    const kilowattHours = (joules: number): number => joules / toBase('energy', 1, 'kWh');
    const print = (value: number, head: string): void => {
      expectPrinted(value, example.sum(head, column).result, head);
    };
    const watts = given('Cable', /^(\d+) W/u);
    print(kilowattHours(watts * toBase('duration', given('Cable', /(\d+) h$/u), 'h')), 'From the cable');

    const kilograms = toBase('mass', given('Loop', /^(\d+) (?:kg|lb)/u), metric ? 'kg' : 'lb');
    const level = (pattern: RegExp): number =>
      toBase('temperature', given('Loop', pattern), metric ? '°C' : '°F');
    const drop = level(/from ([\d.]+)/u) - level(/to ([\d.]+)/u);
    print(kilowattHours(kilograms * waterHeatCapacity(5) * drop), 'From the loop');

    const cubicFoot = toBase('length', 1, 'ft') ** 3;
    const volume = given('Pots', /^(\d+) /u) * (metric ? 1e-3 : cubicFoot);
    const water = waterShareOf(media.bark, 1) * 1000 * volume;
    print(water / toBase('mass', 1, metric ? 'kg' : 'lb'), 'Water in them');
    const frozen = mediumFusionHeat(media.bark, 1) * volume;
    print(kilowattHours(frozen), 'From the pots');
    print(frozen / watts / toBase('duration', 1, 'h'), 'Hours of cable');
  });
});

describe('the example that is worked by hand in outage.mdx', () => {
  const example = workedExample('outage');
  sumsHold(example, ['Time constant', 'Until it freezes', 'While it freezes', 'In all']);

  it.each(columns)('the formula of the calculator agrees to the digit, %s', (column) => {
    const metric = column === 'metric';
    const given = (head: string, pattern: RegExp): number => example.given(head, column, pattern);
    const kilograms = (pattern: RegExp): number =>
      toBase('mass', given('Water', pattern), metric ? 'kg' : 'lb');
    const [pots, loop] = [kilograms(/^(\d+) \S+ in the pots/u), kilograms(/(\d+) \S+ in the loop/u)];
    // A British thermal unit is 1055.06 J and a degree Fahrenheit 5/9 K (NIST SP 811).
    const loss = given('Loss', /^(\d+) /u) * (metric ? 1 : (1055.06 / 3600) * 1.8);
    const level = (pattern: RegExp): number =>
      toBase('temperature', given('Temperatures', pattern), metric ? '°C' : '°F');
    const [first, outside] = [level(/^(\d+) °. at first/u), level(/([−\d]+) °. outside/u)];
    const hours = (seconds: number): number => seconds / toBase('duration', 1, 'h');
    const print = (value: number, head: string): void => {
      expectPrinted(value, example.sum(head, column).result, head);
    };
    const constant = ((pots + loop) * waterHeatCapacity(5)) / loss;
    const cooling = constant * Math.log((first - outside) / (0 - outside));
    const freezing = (pots * waterFusionHeat) / (loss * (0 - outside));
    print(hours(constant), 'Time constant');
    print(hours(cooling), 'Until it freezes');
    print(hours(freezing), 'While it freezes');
    print(hours(cooling + freezing), 'In all');
  });
});

describe('the example that is worked by hand in season.mdx', () => {
  const example = workedExample('season');
  sumsHold(example, ['Degree-hours', 'Energy', 'Cost at one price', 'Cost with cheap hours']);

  it.each(columns)('the price of the calculator agrees to the cent, %s', (column) => {
    const metric = column === 'metric';
    const given = (head: string, pattern: RegExp): number => example.given(head, column, pattern);
    const kilowattHour = toBase('energy', 1, 'kWh');
    const loss = given('Bench', /loses (\d+) /u) * (metric ? 1 : (1055.06 / 3600) * 1.8);
    const [nights, hours] = [given('Nights', /^(\d+),/u), given('Nights', /of (\d+) h/u)];
    const level = (pattern: RegExp): number =>
      toBase('temperature', given('Nights', pattern), metric ? '°C' : '°F');
    const held = level(/held at ([−\d]+)/u) - level(/without heat ([−\d]+)/u);
    const energy = loss * held * nights * hours * 3600;
    expectPrinted(energy / kilowattHour, example.sum('Energy', column).result, 'energy');

    const tariff = given('Prices', /^([\d.]+) /u) / kilowattHour;
    const nightTariff = given('Prices', /, ([\d.]+) from/u) / kilowattHour;
    // Twelve hours of heating that end with the cheap ones, at six in the morning.
    const heating = Array.from({ length: hours }, (_, index) => (18 + index + 0.5) * 3600);
    const cost = (money: { tariff: number; nightTariff: number | null }): number => {
      const price = priceAt(situation({ money: { ...money, nightFrom: 22 * 3600, nightUntil: 6 * 3600 } }));
      return heating.reduce((sum, clock) => sum + price(clock) * (energy / hours), 0);
    };
    const print = (value: number, head: string): void => {
      expectPrinted(value, example.sum(head, column).result, head);
    };
    print(cost({ tariff, nightTariff: null }), 'Cost at one price');
    print(cost({ tariff, nightTariff }), 'Cost with cheap hours');
  });

  it.each(columns)('the last line comes to what stands behind it, %s', (column) => {
    const metric = column === 'metric';
    const by = example.given('Held less warm', column, /^by (\d+) °/u) * (metric ? 1 : 1 / 1.8);
    const loss = example.given('Bench', column, /loses (\d+) /u) * (metric ? 1 : (1055.06 / 3600) * 1.8);
    const joules = loss * by * 30 * 12 * 3600;
    const printed = /= ([\d.]+) kWh$/u.exec(example.cell('Held less warm', column))?.[1] ?? '';
    expectPrinted(joules / toBase('energy', 1, 'kWh'), printed, 'held less warm');
  });
});

describe('the example that is worked by hand in proof.mdx', () => {
  const example = workedExample('proof');
  sumsHold(example, [
    'Mean power',
    'Share of the time',
    'Rise',
    'Loss per degree',
    'Rise at full power',
    'Under the bench then',
  ]);

  it.each(columns)('quantities agree to the digit, %s', (column) => {
    const metric = column === 'metric';
    const given = (head: string, pattern: RegExp): number => example.given(head, column, pattern);
    const level = (pattern: RegExp): number =>
      toBase('temperature', given('House, under bench', pattern), metric ? '°C' : '°F');
    const energy = toBase('energy', given('Meter', /^([\d.]+) kWh/u), 'kWh');
    const power = energy / toBase('duration', given('Meter', /in (\d+) h/u), 'h');
    const rise = level(/, ([\d.]+) °/u) - level(/^([\d.]+) °/u);
    const full = given('Meter', /gives (\d+) W/u);
    const perStep = toBase('conductance', 1, metric ? 'W/K' : 'W/°F');
    const step = toBase('temperatureDifference', 1, metric ? 'K' : '°F');
    const print = (value: number, head: string): void => {
      expectPrinted(value, example.sum(head, column).result, head);
    };
    print(power, 'Mean power');
    print(power / full, 'Share of the time');
    print(rise / step, 'Rise');
    print(power / rise / perStep, 'Loss per degree');
    print((full * rise) / power / step, 'Rise at full power');
    const hard = given('House on hard night', /^([−\d]+) °/u);
    print(hard + (full * rise) / power / step, 'Under the bench then');
  });
});

describe('the reading of the trade in proof.mdx (common practice, no published source)', () => {
  const fahrenheit = (level: number): number => toBase('temperature', level, '°F');
  const text = readFileSync(new URL('../content/chapters/proof.mdx', import.meta.url), 'utf8');
  const quantities = (of: string): number[] =>
    [...text.matchAll(new RegExp(`<Quantity value=\\{([\\d.]+)\\} of="${of}" />`, 'gu'))].map(([, value]) =>
      Number(value),
    );

  it('is 64 °F under the bench and 58 °F in the house', () => {
    const [under = NaN, house = NaN] = quantities('temperature');
    const [rise = NaN] = quantities('temperatureDifference');
    expect(shown(under, 'temperature', 'us')).toBe('64.0 °F');
    expect(shown(house, 'temperature', 'us')).toBe('58.0 °F');
    expect(shown(rise, 'temperatureDifference', 'us')).toBe('6.0 °F');
  });

  it('belongs to the power that the chapter gives, to ten watts, with film and with slats', () => {
    // 6 m by 1.2 m, skirt to the floor all round, film cover, 3 in pipe as a U, cable of 600 W; outside 54 °F.
    const power = (top: 'film' | 'slats'): number => {
      const one = situation({
        place: { houseOffset: fahrenheit(58) - fahrenheit(54) },
        frame: { length: 6, width: 1.2, height: 0.8, top },
        skirt: { material: 'film-plain', layers: 1, closed: 1 },
        cover: { kind: 'film' },
        loop: { pipe: 'thin-wall-3in' },
        cable: { powerPerLength: 16, length: 38 },
        control: { sensor: 'air', setPoint: fahrenheit(64) },
      });
      const rest = restOn(one, 'thermostat', expectedParameters(one), fahrenheit(54));
      // "On for about three fifths of the time".
      expectNear(rest.power / rest.fullPower, 3 / 5, 0.06, `duty on ${top}`);
      return rest.power;
    };
    const said = quantities('power');
    expect(said).toHaveLength(2);
    expect(said).toEqual((['film', 'slats'] as const).map((top) => Math.round(power(top) / 10) * 10));
  });
});

describe('the example that is worked by hand in care.mdx', () => {
  const example = workedExample('care');
  sumsHold(example, [
    'Vapour in the air',
    'Dew point',
    'Face of single film',
    'Face of double film',
    'Energy of week 5',
    'Mean power',
  ]);
  const text = readFileSync(new URL('../content/chapters/care.mdx', import.meta.url), 'utf8');
  // A conventional inch of mercury is 3386.389 Pa (NIST SP 811, appendix B.8).
  const inchOfMercury = 3386.389;

  it('the table of what air can hold is that of the law, to the digit', () => {
    const rows = [...text.matchAll(/^\| (\d+) °C +\| (\d+) +\| (\d+) °F +\| ([\d.]+) +\|$/gmu)];
    expect(rows).toHaveLength(6);
    for (const [, celsius, pascals = '', fahrenheit, inches = ''] of rows) {
      expectPrinted(saturationPressure(Number(celsius)), pascals, `${celsius} °C`);
      const other = toBase('temperature', Number(fahrenheit), '°F');
      expectPrinted(saturationPressure(other) / inchOfMercury, inches, `${fahrenheit} °F`);
    }
  });

  it.each(columns)('the laws of moist air agree to the digit, %s', (column) => {
    const metric = column === 'metric';
    const given = (head: string, pattern: RegExp): number => example.given(head, column, pattern);
    const unit = metric ? '°C' : '°F';
    const level = (pattern: RegExp): number => toBase('temperature', given('House, outside', pattern), unit);
    const [inside, outside] = [level(/^(\d+) °. inside/u), level(/(\d+) °. outside/u)];
    const humidity = given('Vapour in the air', /^([\d.]+) ×/u);
    const print = (value: number, head: string): void => {
      expectPrinted(value, example.sum(head, column).result, head);
    };
    const printLevel = (celsius: number, head: string): void => {
      expect(shown(celsius, 'temperature', column)).toBe(written(example, head, column));
    };
    print((humidity * saturationPressure(inside)) / (metric ? 1 : inchOfMercury), 'Vapour in the air');
    const dew = dewPoint(inside, humidity);
    printLevel(dew, 'Dew point');
    // One h·ft²·°F/Btu is 0.176110 m²·K/W (NIST SP 811, appendix B.8).
    const resistance = (pattern: RegExp): number => given('Resistances', pattern) * (metric ? 1 : 0.17611);
    const [film, space, out] = [
      resistance(/^([\d.]+) inside/u),
      resistance(/([\d.]+) air space/u),
      resistance(/([\d.]+) outside/u),
    ];
    const single = innerFace(inside, outside, 1 / (film + out), 1 / film);
    const double = innerFace(inside, outside, 1 / (film + space + out), 1 / film);
    printLevel(single, 'Face of single film');
    printLevel(double, 'Face of double film');
    expect(single).toBeLessThan(double);
    expect(double).toBeLessThan(dew);
  });

  it('takes its week from the log', () => {
    const meter = [...text.matchAll(/^\| \d +\|.*\| (\d+) +\|$/gmu)].map(([, kwh]) => Number(kwh));
    expect(meter).toHaveLength(6);
    const used = (meter[4] ?? NaN) - (meter[3] ?? NaN);
    expectPrinted(used, example.sum('Energy of week 5', 'metric').result);
    const mean = toBase('energy', used, 'kWh') / toBase('duration', 7 * 24, 'h');
    expectPrinted(mean, example.sum('Mean power', 'metric').result);
  });
});

describe('the example that is worked by hand in worksheet.mdx', () => {
  const example = workedExample('worksheet');
  sumsHold(example, [
    'Width of the bench',
    'The same, shrunk',
    'Printed at',
    'Energy of the week',
    'Mean power',
    'Roots above house',
  ]);

  it.each(columns)('scale, power and difference agree to the digit, %s', (column) => {
    const metric = column === 'metric';
    const given = (head: string, pattern: RegExp): number => example.given(head, column, pattern);
    const ratio = given('Section, measured', /1:(\d+)$/u);
    // A scale that the sheet has.
    expect(roundScale(1000 / ratio, column)?.name).toBe(`1:${ratio}`);
    const paper = toBase('size', given('Section, measured', /^([\d.]+) /u), metric ? 'mm' : 'in');
    expect(shown(paper * ratio, 'length', column)).toBe(written(example, 'Width of the bench', column));

    const week = (pattern: RegExp): number => toBase('energy', given('Meter, a week apart', pattern), 'kWh');
    const used = week(/and ([\d.]+) kWh$/u) - week(/^([\d.]+) kWh/u);
    expect(shown(used, 'energy', column)).toBe(written(example, 'Energy of the week', column));
    const mean = used / toBase('duration', 7 * 24, 'h');
    expect(shown(mean, 'power', column)).toBe(written(example, 'Mean power', column));

    const lowest = (pattern: RegExp): number =>
      toBase('temperature', given('Lowest of the week', pattern), metric ? '°C' : '°F');
    const above = lowest(/roots ([\d.]+) °/u) - lowest(/house ([−\d.]+) °/u);
    expect(shown(above, 'temperatureDifference', column)).toBe(written(example, 'Roots above house', column));
  });
});
