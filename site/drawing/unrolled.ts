import { loopLength, pipeOf } from '../../calculators/bench/geometry.ts';
import { circumference, wind } from '../../calculators/electric/winding.ts';
import { showQuantity } from '../../calculators/quantities/show.ts';
import { leader } from './arrow.ts';
import { across, roomUnder, upright } from './dimension.ts';
import type { Drawing, Mark } from './drawing.ts';
import type { BenchDrawing } from './input.ts';
import { notes, widest } from './key.ts';
import { labels, leading, letters, line, pen, polygon, rectangle } from './pen.ts';

/** All on paper [mm]. */
const margin = 2;
const highest = 56;
const lowest = 14;
const narrowest = 7;
/** From the sheet to the pitch's dimension line. */
const dimensionDrop = 8;
/** As many turns as tell that it goes on. */
const mostTurns = 5;

/**
 * The skin of the pipe cut open along a line and laid flat. A turn of the cable is then the long side of a triangle
 * that has the pitch and the way once round the pipe as its other two sides. To scale as far as it can be seen.
 */
export const unrolledDrawing: BenchDrawing = ({ situation, manner, width }): Drawing => {
  const { bench } = situation;
  const size = (value: number) => showQuantity(value, 'size', manner);
  const pipe = pipeOf(bench).outsideDiameter;
  const around = circumference(pipe, bench.cable.diameter);
  const winding = wind({
    pipeDiameter: pipe,
    cableDiameter: bench.cable.diameter,
    pipeLength: loopLength(bench),
    cableLength: bench.cable.length,
  });
  const helix = winding.outcome === 'wound' || winding.outcome === 'touching' ? winding : null;
  const roundWords = ['once round', size(around)];
  const turnWords = ['cable in', 'one turn', helix ? size(helix.turnLength) : ''];
  const leftColumn = widest(roundWords, letters.body) + 9;
  const rightColumn = widest(turnWords, letters.body) + 9;
  const room = width - 2 * margin - leftColumn - rightColumn;

  // Without a helix there is no triangle: any shape serves to say what is missing.
  const pitch = helix?.pitch ?? around;
  const perMetre = Math.min(highest / around, room / pitch);
  const high = Math.max(lowest, around * perMetre);
  const wide = Math.max(narrowest, pitch * perMetre);
  const toScale = high === around * perMetre && wide === pitch * perMetre;
  const cells = Math.max(1, Math.min(mostTurns, Math.floor(room / wide)));
  const left = margin + leftColumn + (room - cells * wide) / 2;
  const right = left + cells * wide;
  const top = margin + 2;
  const bottom = top + high;
  const thick = Math.max(0.8, Math.min(bench.cable.diameter * perMetre, wide * 0.4));

  const marks: Mark[] = [
    rectangle({ left, top, right, bottom }, { stroke: 'soft', width: pen.edge, dash: [1.6, 1] }),
  ];
  // The triangle of the last turn, nearest to the words that explain it.
  const start = right - wide;
  if (helix)
    marks.push(
      polygon(
        [
          [start, bottom],
          [right, bottom],
          [right, top],
        ],
        { fill: 'water' },
      ),
      line(
        [
          [start, bottom],
          [right, bottom],
          [right, top],
        ],
        { width: pen.outline },
      ),
    );
  if (helix)
    for (let cell = 0; cell < cells; cell++)
      marks.push(
        line(
          [
            [left + cell * wide, bottom],
            [left + (cell + 1) * wide, top],
          ],
          { stroke: 'heat', width: thick },
        ),
      );
  const dimensionAt = left - 5;
  const middle = (top + bottom) / 2;
  const half = 0.36 * leading * letters.body;
  marks.push(
    ...upright({ from: top, to: bottom, at: dimensionAt, edges: [left, left] }),
    ...labels([dimensionAt - 2, middle - half], roundWords, { align: 'end' }),
  );
  if (helix) {
    const words = { left: right + 7, top: middle - 2.4 * half };
    marks.push(
      ...across({
        from: start,
        to: right,
        at: bottom + dimensionDrop,
        edges: [bottom, bottom],
        text: `pitch ${size(helix.pitch)}`,
        within: [margin, width - margin],
      }),
      ...labels([words.left, words.top], turnWords),
      ...leader([
        [words.left - 1, words.top - 1.2],
        [right - 0.4 * wide, top + 0.4 * high],
      ]),
    );
  }
  const said = helix
    ? [
        'The skin of the pipe, cut open along its length and laid flat, measured through the middle of the cable.',
        ...(toScale ? [] : ['Not to scale: the sides of this triangle differ too much to be drawn true.']),
      ]
    : ['There is no turn to unroll: the cable is no longer than the pipe.'];
  const below = bottom + (helix ? dimensionDrop + roomUnder + 1 : 2);
  const small = notes(said, { left: margin, top: below, width: width - 2 * margin });
  marks.push(...small.marks);
  const triangle = helix
    ? ` One turn takes ${size(helix.turnLength)} of cable: the long side of a right triangle whose other sides are the pitch, ${size(helix.pitch)}, and the way once round, ${size(around)}.`
    : '';
  return {
    width,
    height: below + small.height + 1,
    title: 'One turn, unrolled',
    description: `${said.join(' ')}${triangle}`,
    marks,
  };
};
