import { readFileSync } from 'node:fs';
import fontkit from '@pdf-lib/fontkit';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pipeOf } from '../calculators/bench/geometry.ts';
import type { Situation } from '../calculators/calculator.ts';
import { answer, type Answers } from '../calculators/index.ts';
import type { Manner } from '../calculators/quantities/show.ts';
import { closingDrawing } from '../site/drawing/closing.ts';
import { arc, at, clip, quarterSine, type Cubic } from '../site/drawing/curve.ts';
import { courseDrawing } from '../site/drawing/course.ts';
import { crossingDrawing } from '../site/drawing/crossing.ts';
import { across } from '../site/drawing/dimension.ts';
import type { Drawing, Mark, Point } from '../site/drawing/drawing.ts';
import { firstDrawing } from '../site/drawing/first.ts';
import { hatch } from '../site/drawing/hatch.ts';
import { heatPathsDrawing } from '../site/drawing/heat-paths.ts';
import { holdOverDrawing } from '../site/drawing/hold-over.ts';
import type { BenchDrawing } from '../site/drawing/input.ts';
import { boxOf, textWidth, wrap, type Box } from '../site/drawing/measure.ts';
import { feedDrawing } from '../site/drawing/feed.ts';
import { mixDrawing } from '../site/drawing/mix.ts';
import { monthsDrawing } from '../site/drawing/months.ts';
import { letters, pen } from '../site/drawing/pen.ts';
import { planDrawing } from '../site/drawing/plan.ts';
import { rootLayersDrawing } from '../site/drawing/root-layers.ts';
import { savingsDrawing } from '../site/drawing/savings.ts';
import { sectionDrawing } from '../site/drawing/section.ts';
import { sensorPlacesDrawing } from '../site/drawing/sensor-places.ts';
import { spread } from '../site/drawing/spread.ts';
import { standPipeDrawing } from '../site/drawing/stand-pipe.ts';
import { svgElement, svgMarkup } from '../site/drawing/svg.ts';
import { thermometersDrawing } from '../site/drawing/thermometers.ts';
import { temperatureLadderDrawing } from '../site/drawing/temperature-ladder.ts';
import { unrolledDrawing } from '../site/drawing/unrolled.ts';
import { waysDrawing } from '../site/drawing/ways.ts';
import { windingDrawing } from '../site/drawing/winding.ts';
import { anyBench, type BenchChanges } from './support/benches.ts';
import { faults, isText } from './support/drawing-faults.ts';
import { expectNear } from './support/near.ts';
import { inventedStation, metricRegion, situation } from './support/situations.ts';

const drawings = {
  winding: windingDrawing,
  unrolled: unrolledDrawing,
  crossing: crossingDrawing,
  plan: planDrawing,
  section: sectionDrawing,
  thermometers: thermometersDrawing,
  'root layers': rootLayersDrawing,
  'heat paths': heatPathsDrawing,
  closing: closingDrawing,
  first: firstDrawing,
  ways: waysDrawing,
  course: courseDrawing,
  'hold-over': holdOverDrawing,
  months: monthsDrawing,
  savings: savingsDrawing,
  'temperature ladder': temperatureLadderDrawing,
  'stand-pipe': standPipeDrawing,
  mix: mixDrawing,
  feed: feedDrawing,
  'sensor places': sensorPlacesDrawing,
} as const satisfies Record<string, BenchDrawing>;

const metric: Manner = { system: 'metric', locale: 'en' };
const us: Manner = { system: 'us', locale: 'en-US' };

/** Drawings of answers for which a bench has to come to rest, some of them many times. */
const slow: ReadonlySet<BenchDrawing> = new Set([
  crossingDrawing,
  rootLayersDrawing,
  heatPathsDrawing,
  closingDrawing,
  firstDrawing,
  waysDrawing,
  sensorPlacesDrawing,
]);

/** Drawings of answers for which a bench goes through nights, power cuts or a whole winter: fewer benches. */
const throughTime: ReadonlySet<BenchDrawing> = new Set([
  courseDrawing,
  holdOverDrawing,
  monthsDrawing,
  savingsDrawing,
  temperatureLadderDrawing,
]);

const known = new WeakMap<Situation, Answers>();
/** What a drawing may look at; worked out when it does, once for each situation. */
function answersOf(where: Situation): Answers {
  const answers = known.get(where) ?? answer(where);
  known.set(where, answers);
  return answers;
}

const stands = new Map<string, Situation>();
/** Where a bench stands: the same situation for the same bench, as one seed gives all drawings the same benches. */
function placed(bench: Situation['bench']): Situation {
  const name = JSON.stringify(bench);
  const where = stands.get(name) ?? { bench, region: metricRegion, station: inventedStation };
  stands.set(name, where);
  return where;
}

/** @param height the room on a worksheet, or none for a page of the guide */
const drawn = (draw: BenchDrawing, where: Situation, manner = metric, width = 150, height = 0): Drawing => {
  const answers = answersOf(where);
  return draw({
    situation: where,
    answers,
    manner,
    width,
    ...(height > 0 ? { sheet: { height, enlarged: 1 } } : {}),
  });
};

/** Benches at the ends of what can be built and typed. */
const extremes: Readonly<Record<string, BenchChanges>> = {
  start: {},
  'tiny bench': {
    frame: { length: 0.6, width: 0.4, height: 0.2, floorInsulation: 0.2 },
    loop: { pipe: 'schedule40-2in', run: 'straight' },
    cable: { length: 3 },
    pots: { diameter: 0.6, height: 0.6 },
  },
  'huge bench': {
    frame: { length: 60, width: 3, height: 1.5 },
    cable: { length: 300 },
    cover: { kind: 'both', height: 2 },
  },
  'long and narrow': { frame: { length: 60, width: 0.4 }, cable: { length: 300 }, loop: { run: 'ring' } },
  'short and wide': { frame: { length: 0.6, width: 3 }, cover: { kind: 'fleece', height: 0.1 } },
  'one turn': { cable: { length: 12.31 } },
  'less than one turn': { cable: { length: 12.3001 } },
  'straight cable': { loop: { length: 10 }, cable: { length: 10 } },
  'cable too short': { cable: { length: 5 } },
  'two thousand turns': {
    loop: { length: 40, pipe: 'schedule40-2in' },
    cable: { length: 300, diameter: 0.002 },
  },
  'turns that touch': { loop: { length: 0.5 }, cable: { length: 300, diameter: 0.025 } },
  'gap too small': { cable: { length: 150 } },
  'thick pipe, thin cable': {
    loop: { pipe: 'drain-160', length: 3 },
    cable: { diameter: 0.002, length: 250 },
  },
  'measured loop that is longer than the bench': { loop: { length: 200 }, cable: { length: 250 } },
  'plain water': { mix: { antifreeze: 'none' }, loop: { expansion: 'headspace' } },
  'a stand-pipe that spills': {
    loop: { standpipeDiameter: 0.01, standpipeHeight: 0.1, fillTemperature: 2, hottest: 60 },
    mix: { share: 0.55, protectTo: -40 },
  },
  'no protection, weak wire': { supply: { protection: 'none', breaker: 1, feederLength: 500, voltage: 12 } },
  'open bench': { skirt: { material: 'none' }, control: { sensor: 'pot' }, pots: { diameter: 0.03 } },
};

/** Benches at the ends of what can happen to them in time. */
const extremesOfTime: Readonly<Record<string, BenchChanges>> = {
  'all limits beyond': {
    place: { designNight: 'own', ownLowest: -45 },
    plants: { lowestRootTemperature: 0 },
    mix: { share: 0 },
    cover: { kind: 'none' },
  },
  'nothing freezes': { place: { designNight: 'own', ownLowest: 8 } },
  'hardly any cable': { cable: { powerPerLength: 1, length: 3 }, money: { tariff: 0 } },
  'much power, dear': { cable: { powerPerLength: 60, length: 250 }, money: { tariff: 5 / 3.6e6 } },
};

/** Each of them, built once for all drawings, widths and units: its answers are the same. */
const built = Object.entries(extremes).map(([name, changes]) => ({ name, where: situation(changes) }));
const builtForTime = [
  ...built.filter(({ name }) => ['start', 'tiny bench', 'huge bench', 'open bench'].includes(name)),
  ...Object.entries(extremesOfTime).map(([name, changes]) => ({ name, where: situation(changes) })),
];

const widths = [80, 120, 170];
const atAllWidths = (benches: typeof built) =>
  benches.flatMap(({ name, where }) =>
    widths.flatMap((width) => [metric, us].map((manner) => ({ name, where, width, manner }))),
  );
const [cases, casesOfTime] = [atAllWidths(built), atAllWidths(builtForTime)];

describe('drawings of benches', () => {
  for (const [name, draw] of Object.entries(drawings)) {
    it.each(throughTime.has(draw) ? casesOfTime : cases)(
      `${name}: nothing to stumble over, $name, $width mm, $manner.system`,
      (one) => {
        expect(faults(drawn(draw, one.where, one.manner, one.width))).toEqual([]);
      },
    );

    it(`${name}: nothing to stumble over on any bench that the fields allow`, () => {
      fc.assert(
        fc.property(
          anyBench,
          fc.integer({ min: 80, max: 200 }),
          fc.constantFrom(metric, us),
          fc.constantFrom(0, 45, 70),
          (bench, width, manner, height) => {
            expect(faults(drawn(draw, placed(bench), manner, width, height))).toEqual([]);
          },
        ),
        { numRuns: throughTime.has(draw) ? 4 : slow.has(draw) ? 15 : 60, seed: 20261125 },
      );
    });

    it(`${name}: the same bench gives the same drawing`, () => {
      // Two situations, so that the answers are worked out twice as well.
      const again = () => drawn(draw, situation(extremes['huge bench']));
      expect(again()).toEqual(again());
    });

    it(`${name}: says in words what it shows`, () => {
      const { title, description } = drawn(draw, situation());
      expect(title.length).toBeGreaterThan(5);
      expect(description.length).toBeGreaterThan(80);
      expect(description).not.toMatch(/NaN|undefined|null/u);
    });
  }

  it('finds a text on a text, a line through a text, small letters and what leaves the sheet', () => {
    const text = (place: Point, size = 4): Mark => ({ kind: 'text', at: place, text: 'letters', size });
    const sheet = (...marks: Mark[]): Drawing => ({
      width: 60,
      height: 40,
      title: '',
      description: '',
      marks,
    });
    expect(faults(sheet(text([5, 10])))).toEqual([]);
    expect(faults(sheet(text([5, 10]), text([9, 11])))).toEqual(['"letters" lies on "letters"']);
    const through: Mark = {
      kind: 'line',
      points: [
        [0, 9],
        [50, 9],
      ],
      stroke: 'ink',
    };
    expect(faults(sheet(through, text([5, 10])))).toEqual(['a line passes through "letters"']);
    const paper: Mark = {
      kind: 'line',
      points: [
        [0, 0],
        [40, 0],
        [40, 20],
        [0, 20],
      ],
      closed: true,
      fill: 'paper',
    };
    expect(faults(sheet(through, paper, text([5, 10])))).toEqual([]);
    expect(faults(sheet(text([5, 10], 2)))).toEqual(['text "letters" is 2 mm high']);
    expect(faults(sheet(text([55, 10])))).toEqual(['text "letters" leaves the sheet']);
  });
});

describe('what the drawings show', () => {
  const curves = (drawing: Drawing, tone: string) =>
    drawing.marks.filter((mark) => mark.kind === 'curve').filter(({ stroke }) => stroke === tone);
  const edges = (drawing: Drawing): number[] =>
    drawing.marks
      .filter((mark) => mark.kind === 'line')
      .filter(({ stroke, width, points }) => stroke === 'ink' && width === pen.outline && points.length === 2)
      .filter(({ points: [from, to] }) => from?.[1] === to?.[1])
      .map(({ points: [from] }) => from?.[1] ?? NaN);

  it.each([
    ['start', {}],
    ['more cable', { cable: { length: 80 } }],
    ['thin pipe', { loop: { pipe: 'schedule40-2in' } }],
    ['thick pipe', { loop: { pipe: 'drain-160' }, cable: { length: 60 } }],
  ] as [string, BenchChanges][])('winding: pitch and pipe have one scale, %s', (_, changes) => {
    const where = situation(changes);
    const drawing = drawn(windingDrawing, where);
    // Front halves that are not cut off at a break start at a crest: two quarters of a sine, seven points.
    const crests = curves(drawing, 'heat')
      .filter(({ points }) => points.length === 7)
      .map(({ points: [crest] }) => crest as Point);
    const [top, bottom] = [Math.min(...edges(drawing)), Math.max(...edges(drawing))];
    const wholeTurns = crests.filter(([, y]) => y < top);
    expect(wholeTurns.length).toBeGreaterThan(1);
    const paperPitch = (wholeTurns[1]?.[0] ?? 0) - (wholeTurns[0]?.[0] ?? 0);
    const pitch = answersOf(where).winding.figures.pitch?.value ?? NaN;
    const diameter = pipeOf(where.bench).outsideDiameter;
    expectNear(paperPitch / (bottom - top), pitch / diameter, 1e-6, 'drawn pitch over drawn pipe');
  });

  it('winding: every turn of a pipe that is shown whole', () => {
    const where = situation({ loop: { length: 0.5 }, cable: { length: 6 } });
    const turns = answersOf(where).winding.figures.turns?.value ?? NaN;
    const fronts = curves(drawn(windingDrawing, where), 'heat').length;
    expect(fronts).toBe(Math.ceil(turns));
  });

  it.each(Object.keys(extremes))('winding: says that it must not be built when it must not: %s', (name) => {
    const where = situation(extremes[name]);
    const stopped = answersOf(where).winding.warnings.some(({ level }) => level === 'stop');
    const drawing = drawn(windingDrawing, where);
    const bold = drawing.marks
      .filter((mark) => isText(mark))
      .some(({ text }) => text.startsWith('Not to be built'));
    expect(bold).toBe(stopped);
  });

  it('plan: as many turns as the calculator says', () => {
    const where = situation();
    const turns = answersOf(where).winding.figures.turns?.value ?? NaN;
    const drawing = drawn(planDrawing, where, metric, 170);
    const strokesOfCable = drawing.marks.filter((mark) => mark.kind === 'line' && mark.stroke === 'heat');
    expect(strokesOfCable).toHaveLength(Math.floor(turns));
  });

  it('plan and section: the bench has its own shape', () => {
    const where = situation({ frame: { length: 4, width: 1.6, height: 0.9 } });
    const plan = drawn(planDrawing, where).marks[0];
    if (plan?.kind !== 'line') throw new Error('the plan does not start with the outline of the bench');
    const outline = boxOf(plan.points);
    expectNear((outline.right - outline.left) / (outline.bottom - outline.top), 4 / 1.6, 1e-9);
  });

  it('unrolled: the triangle has the sides that the calculator gives', () => {
    const where = situation();
    const cables = drawn(unrolledDrawing, where).marks.filter(
      (mark) => mark.kind === 'line' && mark.stroke === 'heat',
    );
    const [from, to] = cables[0]?.kind === 'line' ? cables[0].points : [];
    const { pitch } = answersOf(where).winding.figures;
    const around = Math.PI * (0.11 + 0.006);
    expectNear(
      ((to?.[0] ?? 0) - (from?.[0] ?? 0)) / ((from?.[1] ?? 0) - (to?.[1] ?? 0)),
      (pitch?.value ?? NaN) / around,
      1e-9,
    );
  });

  it('closing: bars are as long as the watts that they stand for', () => {
    const where = situation({ cover: { kind: 'film' } });
    const { needGaps, needAll } = answersOf(where).first.figures;
    const drawing = drawn(closingDrawing, where, metric, 170);
    const bars = drawing.marks
      .filter((mark) => mark.kind === 'line')
      .filter(({ closed }) => closed)
      .map(({ points }) => boxOf(points))
      .map(({ left, right }) => right - left);
    expectNear((bars[1] ?? 0) / (bars.at(-1) ?? 1), (needGaps?.value ?? NaN) / (needAll?.value ?? NaN), 1e-6);
  });

  it('hold-over: the night built for stands once among the temperatures, in its place, and says each time', () => {
    const where = situation();
    const { outside, hoursToRootLimit } = answersOf(where).outage.figures;
    const { description } = drawn(holdOverDrawing, where);
    expect(description.match(/the night you build for/gu)).toHaveLength(1);
    const rows = [...description.matchAll(/At (−?[\d.]+)\u202f°C/gu)].map(([, at]) =>
      Number((at ?? '').replace('−', '-')),
    );
    expect(rows).toEqual(rows.toSorted((a, b) => b - a));
    expect(rows).toContain(outside?.value);
    const hours = ((hoursToRootLimit?.value ?? NaN) / 3600).toFixed(1);
    expect(description).toContain(`roots at your limit after ${hours}\u202fh`);
  });

  it('hold-over: a sign for each time that the table has, and words where there is none', () => {
    const signs = (where: Situation) => {
      const { ladder } = answersOf(where).outage.tables ?? {};
      const drawing = drawn(holdOverDrawing, where);
      const none = drawing.marks.filter((mark) => isText(mark) && mark.text === 'nothing within ten days');
      const empty = (ladder?.rows ?? []).filter(({ outside: _, ...times }) =>
        Object.values(times).every((time) => time === null),
      );
      return [none.length, empty.length + 1];
    };
    const [said, rows] = signs(situation(extremesOfTime['nothing freezes']));
    expect(said).toBeGreaterThan(0);
    expect(said).toBeLessThanOrEqual(rows ?? 0);
  });

  it('temperature ladder: ends at the night built for, with the roots that the snap comes to', () => {
    const where = situation();
    const { outside, lowestRootTemperature } = answersOf(where).night.figures;
    const { description, marks } = drawn(temperatureLadderDrawing, where);
    const rungs = marks.filter((mark) => isText(mark)).filter(({ text }) => text.includes(' outside'));
    const words = (value: number | undefined) => `${(value ?? NaN).toFixed(1).replace('-', '−')}\u202f°C`;
    expect(rungs.at(-1)?.text).toBe(`${words(outside?.value)} outside: you build for this`);
    expect(description).toContain(`Coldest roots ${words(lowestRootTemperature?.value)}`);
    const levels = rungs.map(({ text }) => Number(/^(−?[\d.]+)/u.exec(text)?.[1]?.replace('−', '-')));
    expect(levels).toEqual(levels.toSorted((a, b) => b - a));
  });

  it('months and savings: bars are as long as the energy that they stand for', () => {
    const lengths = (draw: BenchDrawing, where: Situation) =>
      drawn(draw, where, metric, 170)
        .marks.filter((mark) => mark.kind === 'line')
        .filter(({ closed }) => closed)
        .map(({ points }) => boxOf(points))
        .map(({ left, right }) => right - left);
    const where = situation({ place: { houseOffset: 0 } });
    const { figures, tables } = answersOf(where).season;
    const energies = (tables?.['months']?.rows ?? []).map(({ energy }) => Number(energy));
    const months = lengths(monthsDrawing, where);
    const january = energies.indexOf(Math.max(...energies));
    expect(months).toHaveLength(7);
    expectNear(
      (months[2] ?? 0) / (months[january] ?? 1),
      (energies[2] ?? 0) / (energies[january] ?? 1),
      1e-6,
    );
    const [asIs = NaN, best = NaN] = lengths(savingsDrawing, where);
    const saves = Number(tables?.['savings']?.rows[0]?.['saves']);
    expectNear(best / asIs, 1 - saves / (figures.energy?.value ?? NaN), 1e-6);
  });

  it('heat paths: says the watts of its arrows in words', () => {
    const where = situation();
    const { skirt, leakage } = answersOf(where).heat.figures;
    const { description } = drawn(heatPathsDrawing, where);
    for (const figure of [skirt, leakage]) {
      const said = `${Math.round(figure?.value ?? NaN)}`;
      expect(description.replace(/[,\u202f]/gu, '')).toContain(said);
    }
  });

  it('root layers: hatches only layers that come under the limit', () => {
    const hatched = (limit: number) => {
      const where = situation({ plants: { lowestRootTemperature: limit } });
      return drawn(rootLayersDrawing, where).description.includes('Hatched');
    };
    expect([hatched(-1), hatched(-30)]).toEqual([true, false]);
  });

  it('section: says which gaps were measured and which are taken', () => {
    const measured = drawn(sectionDrawing, situation({ skirt: { bottomGap: 0.012, topGap: 0 } })).description;
    expect(measured).toContain('Gap at the floor: 12 mm.'.replace(' mm', '\u202fmm'));
    expect(measured).toContain('Gap at the bench edge: none.');
    expect(drawn(sectionDrawing, situation()).description).toContain('Gap at the floor: not measured');
  });

  it('writes lengths in the reader’s units', () => {
    const said = (manner: Manner) => drawn(windingDrawing, situation(), manner).description;
    expect(said(metric)).toContain('110\u202fmm outside');
    expect(said(us)).toContain('4.33\u202fin outside');
  });
});

describe('a drawing as SVG', () => {
  const sample: Drawing = {
    width: 40,
    height: 20,
    title: 'A < B & "C"',
    description: 'Nothing much.',
    marks: [
      {
        kind: 'line',
        points: [
          [1.00499, -0.001],
          [2, 3],
        ],
        stroke: 'ink',
        width: 0.5,
      },
      {
        kind: 'line',
        points: [
          [3, 3],
          [4, 4],
        ],
        stroke: 'ink',
        width: 0.5,
      },
      { kind: 'circle', at: [10, 10], radius: 2, fill: 'water', stroke: 'soft' },
      {
        kind: 'curve',
        points: [
          [0, 0],
          [1, 1],
          [2, 1],
          [3, 0],
        ],
        stroke: 'heat',
        dash: [1, 2],
      },
      { kind: 'text', at: [5, 5], text: 'p < q', size: 4, bold: true, align: 'middle', upward: true },
    ],
  };

  /** As much of a document as is needed to build the tree and write it out again. */
  class FakeElement {
    readonly attributes: [string, string][] = [];
    readonly children: (FakeElement | string)[] = [];
    readonly name: string;
    readonly namespace: string;
    constructor(namespace: string, name: string) {
      this.namespace = namespace;
      this.name = name;
    }
    setAttribute(name: string, value: string) {
      this.attributes.push([name, value]);
    }
    append(child: FakeElement | string) {
      this.children.push(child);
    }
  }
  const fakeDocument = {
    createElementNS: (namespace: string, name: string) => new FakeElement(namespace, name),
    createTextNode: (text: string) => text,
  } as unknown as Document;
  const escaped = (text: string) =>
    text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
  const written = (node: FakeElement | string): string => {
    if (typeof node === 'string') return escaped(node);
    expect(node.namespace).toBe('http://www.w3.org/2000/svg');
    const attributes = node.attributes.map(([name, value]) => ` ${name}="${escaped(value)}"`).join('');
    if (node.children.length === 0) return `<${node.name}${attributes}/>`;
    return `<${node.name}${attributes}>${node.children.map(written).join('')}</${node.name}>`;
  };

  it('is the same in a page that is built and in one that is read', () => {
    for (const one of [sample, drawn(windingDrawing, situation())])
      expect(written(svgElement(one, 'x', fakeDocument) as unknown as FakeElement)).toBe(svgMarkup(one, 'x'));
  });

  it('holds under the strictest policy and can be heard', () => {
    for (const draw of Object.values(drawings)) {
      const markup = svgMarkup(drawn(draw, situation()), 'one');
      expect(markup).not.toMatch(/\sstyle=|<style|<script|\son[a-z]+=/u);
      expect(markup).toMatch(
        /^<svg [^>]*role="img"[^>]*aria-labelledby="one-title"[^>]*aria-describedby="one-description"/u,
      );
      expect(markup).toContain('<title id="one-title">');
      expect(markup).toContain('<desc id="one-description">');
    }
  });

  it('rounds to a hundredth of a millimetre, joins what one pen draws, and escapes words', () => {
    const markup = svgMarkup(sample, 'x');
    expect(markup).toContain('d="m1 0l1 3m1 0l1 1"');
    expect(markup).toContain('A &lt; B &amp; &quot;C&quot;');
    expect(markup).toContain(
      '<text class="tone-ink" fill="currentColor" font-size="4" font-weight="700" text-anchor="middle" x="5" y="5" transform="rotate(-90 5 5)">p &lt; q</text>',
    );
    expect(markup).not.toMatch(/\d\.\d{3}/u);
  });

  it('has a colour for every tone', () => {
    const css = readFileSync(new URL('../site/drawing/drawing.css', import.meta.url), 'utf8');
    const tones = Object.values(drawings)
      .flatMap((draw) => [...svgMarkup(drawn(draw, situation()), 'x').matchAll(/tone-[a-z]+/gu)])
      .map(([tone]) => tone);
    expect(new Set(tones).size).toBeGreaterThan(4);
    for (const tone of new Set(tones)) expect(css).toContain(`.${tone}`);
  });

  it('stays small', () => {
    for (const draw of Object.values(drawings))
      for (const { where } of throughTime.has(draw) ? builtForTime : built)
        expect(svgMarkup(drawn(draw, where), 'x').length).toBeLessThan(60_000);
  });
});

describe('the tools of drawing', () => {
  it('quarterSine(zero, crest) is a sine', () => {
    const curve = quarterSine([0, 0], [Math.PI / 2, 1]);
    for (let step = 0; step <= 50; step++) {
      const [x, y] = at(curve, step / 50);
      expectNear(y, Math.sin(x), 3e-4, `the wave at ${x}`);
    }
  });

  it('arc(centre, radius, from, to) keeps its distance from the centre', () => {
    const points = arc([3, 4], 10, 0.3, 4);
    for (let index = 0; index + 3 < points.length; index += 3)
      for (let step = 0; step <= 10; step++) {
        const [x, y] = at(points.slice(index, index + 4) as unknown as Cubic, step / 10);
        // The best cubic of a quarter of a circle is off by 0.03 % of the radius.
        expectNear(Math.hypot(x - 3, y - 4), 10, 0.003, 'the radius');
      }
  });

  it('clip(curve, left, right) keeps what lies between, on the same curve', () => {
    const curve = quarterSine([0, 0], [Math.PI / 2, 1]);
    const part = clip(curve, 0.4, 1.1);
    if (!part) throw new Error('nothing is left of the curve');
    expectNear(part[0][0], 0.4, 1e-6);
    expectNear(part[3][0], 1.1, 1e-6);
    expectNear(at(part, 0.5)[1], Math.sin(at(part, 0.5)[0]), 3e-4);
    expect(clip(curve, 2, 3)).toBeUndefined();
  });

  it('textWidth(text) is no less than the worksheet’s typeface needs, and not half as much again', () => {
    const files = { false: '400Regular/Inter_400Regular.ttf', true: '700Bold/Inter_700Bold.ttf' } as const;
    const samples = [
      'clear gap 112\u202fmm',
      'Gap at the floor: not measured, about 5\u202fmm taken',
      '99 turns of 6\u202fmm cable on 12.30\u202fm of 110\u202fmm pipe.',
      'Loop: 110 mm drain, PVC-U (EN 1401), cable wound round it',
      'WMÄÖ −12.5\u202f°F',
      '4.33\u202fin',
    ];
    for (const bold of [false, true]) {
      const file = new URL(`../node_modules/@expo-google-fonts/inter/${files[`${bold}`]}`, import.meta.url);
      const font = fontkit.create(readFileSync(file)) as unknown as {
        unitsPerEm: number;
        layout: (text: string) => { advanceWidth: number };
      };
      for (const text of samples) {
        const truly = (font.layout(text).advanceWidth / font.unitsPerEm) * letters.body;
        const rough = textWidth(text, letters.body, bold);
        expect(rough, text).toBeGreaterThanOrEqual(truly);
        expect(rough, text).toBeLessThan(truly * 1.5);
      }
    }
  });

  it('wrap(text, size, width) loses no word and keeps to the width', () => {
    const text = 'Gap at the floor: not measured, about five millimetres taken';
    const lines = wrap(text, 3.2, 40);
    expect(lines.join(' ')).toBe(text);
    for (const one of lines) expect(textWidth(one, 3.2)).toBeLessThanOrEqual(40);
    expect(wrap('incomprehensibilities', 3.2, 5)).toEqual(['incomprehensibilities']);
  });

  it('spread(wanted, apart, from, to) keeps order, distance and limits', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -50, max: 150, noNaN: true }), { minLength: 1, maxLength: 12 }),
        (wanted) => {
          const placed = spread(wanted, 6, 0, 100);
          const apart = Math.min(6, 100 / Math.max(1, wanted.length - 1));
          const order = wanted
            .map((_, index) => index)
            .sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0) || a - b);
          order.forEach((index, rank) => {
            const here = placed[index] ?? NaN;
            expect(here).toBeGreaterThanOrEqual(-1e-9);
            expect(here).toBeLessThanOrEqual(100 + 1e-9);
            const before = order[rank - 1];
            if (before !== undefined)
              expect(here - (placed[before] ?? NaN)).toBeGreaterThanOrEqual(apart - 1e-9);
          });
        },
      ),
    );
    expect(spread([10, 40, 90], 6, 0, 100)).toEqual([10, 40, 90]);
  });

  it('hatch(box, spacing) stays in its box', () => {
    const box: Box = { left: 10, right: 30, top: 5, bottom: 12 };
    const lines = hatch(box, 2);
    expect(lines.length).toBeGreaterThan(8);
    for (const mark of lines)
      if (mark.kind === 'line')
        for (const [x, y] of mark.points) {
          expect(x >= 10 - 1e-9 && x <= 30 + 1e-9 && y >= 5 - 1e-9 && y <= 12 + 1e-9).toBe(true);
        }
  });

  it('across({ … }) points inward where there is no room for arrows', () => {
    const tips = (to: number) =>
      across({ from: 10, to, at: 5, text: 'x', within: [0, 100] })
        .filter((mark) => mark.kind === 'line')
        .filter(({ fill }) => fill === 'ink')
        .map(({ points: [tip, wing] }) => Math.sign((wing?.[0] ?? 0) - (tip?.[0] ?? 0)));
    expect(tips(40)).toEqual([1, -1]);
    expect(tips(12)).toEqual([-1, 1]);
  });
});
