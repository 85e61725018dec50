import { loopLength, perimeter, pipeOf } from '../../calculators/bench/geometry.ts';
import { designOutside } from '../../calculators/bench/place.ts';
import { cautions } from '../../calculators/cautions.ts';
import type { BenchDrawing } from '../drawing/input.ts';

import { sectionDrawing } from '../drawing/section.ts';
import { windingDrawing } from '../drawing/winding.ts';
import type { Block, LabelledValue } from './blocks.ts';
import type { Band, Side } from './compose.ts';
import { field, labelled, rowsBut, shown, value, warningsOf, type Facts } from './facts.ts';
import { bold, run, type Run } from './text.ts';

const heading = (text: string): Block => ({ kind: 'heading', text });
const paragraph = (...runs: Run[]): Block => ({ kind: 'paragraph', runs });
const rows = (entries: readonly LabelledValue[]): Block[] =>
  entries.length > 0 ? [{ kind: 'rows', rows: entries }] : [];

/** A sign that stands for a caution on the other side: its title, beside the figures that it is about. */
const sign = (...ids: (keyof typeof cautions)[]): Block[] =>
  ids.map((id) => ({ kind: 'paragraph', mark: '⚠', runs: [bold(`${cautions[id].title}.`)] }));

/** Warnings that ask for care, beside the figures that they are about. */
const care = (facts: Facts, ...ids: string[]): Block[] =>
  warningsOf(facts, 'care', ids).map((text) => ({ kind: 'paragraph', mark: '⚠', runs: [run(text)] }));

/** Words of the grower and of the region, fit for paper. */
export interface Names {
  readonly bench: string;
  readonly house: string;
  readonly notes: string;
  readonly region: string;
  readonly station: string;
  /** Whether any of them has a letter that the sheet cannot print. */
  readonly incomplete: boolean;
}

function head(facts: Facts, names: Names): Band[] {
  const night = field(facts, 'place.designNight');
  const left: Block[] = [
    paragraph(bold('Side one: build')),
    { kind: 'title', text: names.bench },
    paragraph(run([names.house, names.region, names.station].filter((name) => name !== '').join(' · '))),
  ];
  const right: Block[] = [
    {
      kind: 'numbers',
      cells: [
        {
          label: 'outside on the night to build for',
          value: value(facts, designOutside(facts.situation), 'temperature'),
          note: night,
        },
      ],
    },
  ];
  return [
    {
      columns: [
        { share: 0.68, blocks: left },
        { share: 0.32, blocks: right },
      ],
    },
  ];
}

function stopBanner(facts: Facts): Band[] {
  const reasons = warningsOf(facts, 'stop');
  if (reasons.length === 0) return [];
  const block: Block = {
    kind: 'banner',
    title: 'Not to be built as it stands',
    entries: reasons.map((text) => [run(text)]),
  };
  return [{ columns: [{ share: 1, blocks: [block] }] }];
}

function noteBand({ notes, incomplete }: Names): Band[] {
  const blocks: Block[] = [];
  if (notes !== '') blocks.push(paragraph(bold('Notes: '), run(notes)));
  if (incomplete)
    blocks.push({
      kind: 'paragraph',
      small: true,
      runs: [
        run(
          '□ stands for a letter that this sheet cannot print. The bench in the guide has the text in full.',
        ),
      ],
    });
  return blocks.length > 0 ? [{ columns: [{ share: 1, blocks }] }] : [];
}

/** Corners of the loop, each a 90° bend. */
const bends = { u: 2, ring: 4, straight: 0 } as const;
/** Ends of the loop to close or to carry on into a stand-pipe. */
const ends = { u: 2, ring: 0, straight: 2 } as const;

function shopping(facts: Facts): LabelledValue[] {
  const { bench } = facts.situation;
  const { loop, cable, mix, skirt, frame } = bench;
  const list: LabelledValue[] = [
    { label: pipeOf(bench).label, value: value(facts, loopLength(bench), 'length') },
  ];
  if (bends[loop.run] > 0) list.push({ label: 'Bends of 90°, same pipe', value: String(bends[loop.run]) });
  if (ends[loop.run] > 0)
    list.push({ label: 'Ends: one closed, one to the stand-pipe', value: String(ends[loop.run]) });
  if (loop.expansion === 'standpipe')
    list.push({
      label: `Stand-pipe, ${value(facts, loop.standpipeDiameter, 'size')} inside, room to rise`,
      value: value(facts, loop.standpipeHeight, 'size'),
    });
  list.push({
    label: `Heating cable, ${field(facts, 'cable.kind').toLowerCase()}, ${field(facts, 'cable.powerPerLength')}`,
    value: value(facts, cable.length, 'length'),
  });
  const concentrate = shown(facts, 'mix.concentrateVolume');
  if (mix.antifreeze !== 'none' && concentrate)
    list.push({ label: `${field(facts, 'mix.antifreeze')}, concentrate`, value: concentrate });
  const water = shown(facts, 'mix.waterVolume');
  if (water) list.push({ label: 'Water', value: water });
  if (skirt.material !== 'none') {
    const layers = skirt.layers > 1 ? `, ${skirt.layers} layers` : '';
    list.push({
      label: `Skirt: ${field(facts, 'skirt.material')}, ${value(facts, frame.height, 'length')} high${layers}`,
      value: value(facts, perimeter(bench) * skirt.closed, 'length'),
    });
  }
  return list;
}

/** Filling, step by step. A step whose figures are not there is left out. */
function filling(facts: Facts): (readonly Run[])[] {
  const { bench } = facts.situation;
  const { loop, mix } = bench;
  const steps: (readonly Run[])[] = [[run('Fill with plain water. Look for drips for an hour. Drain.')]];
  const concentrate = shown(facts, 'mix.concentrateVolume');
  const water = shown(facts, 'mix.waterVolume');
  const freezing = shown(facts, 'mix.freezingPoint');
  const volume = shown(facts, 'loop.volume');
  if (mix.antifreeze !== 'none' && concentrate && water)
    steps.push([
      run('In a clean drum stir '),
      bold(concentrate),
      run(' of concentrate into '),
      bold(water),
      run(` of water: ${field(facts, 'mix.share')} by volume.`),
      ...(freezing ? [run(' Liquid down to '), bold(freezing), run('.')] : []),
    ]);
  steps.push([
    run(`Fill slowly at about ${field(facts, 'loop.fillTemperature')} until no more air comes`),
    ...(volume ? [run('; the loop holds '), bold(volume)] : []),
    run('.'),
  ]);
  const rise = shown(facts, 'loop.rise');
  if (loop.expansion === 'standpipe')
    steps.push([
      run('Stop with '),
      bold(value(facts, loop.standpipeHeight, 'size')),
      run(' free in the stand-pipe.'),
      ...(rise ? [run(' The level rises '), bold(rise), run(` by ${field(facts, 'loop.hottest')}.`)] : []),
      run(' Leave it open.'),
    ]);
  else {
    const swelling = shown(facts, 'loop.expansionVolume');
    steps.push([
      run('Leave air at the highest point, vented'),
      ...(swelling
        ? [run(': the fluid swells by '), bold(swelling), run(` up to ${field(facts, 'loop.hottest')}`)]
        : []),
      run('.'),
    ]);
  }
  steps.push([
    run(
      mix.antifreeze === 'none'
        ? 'Write on the loop: plain water, will freeze. Only then switch on.'
        : 'Write antifreeze and share on the loop. Only then switch on.',
    ),
  ]);
  return steps;
}

/** Where the heat must be cut, whatever the thermostat does: the pipe's limit in service. */
const settings = (facts: Facts): LabelledValue[] => [
  { label: 'Sensor', value: field(facts, 'control.sensor') },
  { label: 'Set point', value: field(facts, 'control.setPoint') },
  { label: 'Differential', value: field(facts, 'control.differential') },
  { label: 'Low alarm', value: field(facts, 'control.alarmLow') },
  { label: 'High alarm', value: field(facts, 'control.alarmHigh') },
  {
    label: 'Limit thermostat on the pipe, cuts off below',
    value: value(facts, pipeOf(facts.situation.bench).highestService, 'temperature'),
  },
];

const circuit = (facts: Facts): LabelledValue[] => [
  ...rowsBut(facts, 'circuit'),
  { label: 'Breaker of the circuit', value: field(facts, 'supply.breaker') },
  { label: 'Feeder, one way', value: field(facts, 'supply.feederLength') },
  { label: 'Conductor', value: field(facts, 'supply.conductor') },
  { label: 'Ground-fault protection', value: field(facts, 'supply.protection') },
];

/** The side that hangs beside the work: drawings, what to buy, how to fill, circuit and settings. */
export function buildSide(facts: Facts, names: Names): Side {
  const drawing = (draw: BenchDrawing): Block => ({
    kind: 'drawing',
    draw: (width) => draw({ ...facts, width }),
  });
  const winding = ['winding.pitch', 'winding.gap', 'winding.turns'];
  const numbers = labelled(facts, winding);
  return {
    bands: [
      ...head(facts, names),
      ...stopBanner(facts),
      ...noteBand(names),
      { columns: [{ share: 1, blocks: [heading('Plan'), drawing(sectionDrawing)] }] },
      {
        columns: [
          {
            share: 0.5,
            blocks: [
              heading('Section'),
              drawing(sectionDrawing),
              heading('What to buy'),
              ...rows(shopping(facts)),
              heading('Circuit'),
              ...rows(circuit(facts)),
              ...care(facts, 'circuit'),
              ...sign('mains-and-water'),
            ],
          },
          {
            share: 0.5,
            blocks: [
              heading('Winding the cable'),
              drawing(windingDrawing),
              ...(numbers.length > 0 ? [{ kind: 'numbers', cells: numbers } as const] : []),
              ...rows(rowsBut(facts, 'winding', ['pitch', 'gap', 'turns'])),
              ...care(facts, 'winding'),
              ...sign('crossing', 'cable-instructions'),
              heading('Fill and mix'),
              { kind: 'list', numbered: true, entries: filling(facts) },
              ...care(facts, 'loop', 'mix'),
              ...sign('antifreeze-poison', 'open-loop'),
              heading('Settings'),
              ...rows(settings(facts)),
            ],
          },
        ],
      },
    ],
  };
}
