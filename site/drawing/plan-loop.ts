import { say } from '../../calculators/say.ts';
import type { Bench } from '../../calculators/bench/fields.ts';
import { loopLength, loopPath, pipeOf } from '../../calculators/bench/geometry.ts';
import { wind } from '../../calculators/electric/winding.ts';
import { showNumber, showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { breakStrip } from './break-line.ts';
import type { Mark, Point } from './drawing.ts';
import { line, pen, rectangle } from './pen.ts';
import { isBroken, on, shows, strip, type Sheet } from './plan-sheet.ts';

/** A pipe is drawn no narrower than this [mm]. */
const leastPipe = 1.4;
/** Turns are drawn no closer than this [mm]; closer ones are drawn every so many. */
const leastTurn = 1.3;

/** A place on the loop: how far along its middle line [m], where on the bench, and which way the pipe runs there. */
interface Place {
  readonly at: Point;
  readonly way: Point;
}

/** The places at these distances along a path, none where the path has ended. */
function placesOn(path: readonly Point[], distances: readonly number[]): Place[] {
  const places: Place[] = [];
  let walked = 0;
  let next = 0;
  path.slice(1).forEach((to, index) => {
    const from = path[index] ?? to;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (length === 0) return;
    const way: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    for (; next < distances.length && (distances[next] ?? Infinity) <= walked + length + 1e-9; next++) {
      const on = (distances[next] ?? 0) - walked;
      places.push({ at: [from[0] + way[0] * on, from[1] + way[1] * on], way });
    }
    walked += length;
  });
  return places;
}

const pathLength = (path: readonly Point[]): number =>
  path.slice(1).reduce((sum, [x, y], index) => {
    const [fromX, fromY] = path[index] ?? [x, y];
    return sum + Math.hypot(x - fromX, y - fromY);
  }, 0);

/** How the turns are shown: the distance between those drawn, and what the reader is told. */
export interface TurnMarks {
  readonly distances: readonly number[];
  /** Slant of a drawn turn along the pipe: half a pitch [m]. */
  readonly lean: number;
  readonly words: string;
}

/** Which turns are drawn on a bench at this scale [mm/m]. */
export function turnsOf(bench: Bench, perMetre: number, manner: Manner): TurnMarks {
  const length = loopLength(bench);
  const drawn = pathLength(loopPath(bench));
  const winding = wind({
    pipeDiameter: pipeOf(bench).outsideDiameter,
    cableDiameter: bench.cable.diameter,
    pipeLength: length,
    cableLength: bench.cable.length,
  });
  const count = (value: number) => showNumber(value, 'count', manner);
  const size = (value: number) => showQuantity(value, 'size', manner);
  const none = (words: string): TurnMarks => ({ distances: [], lean: 0, words });
  switch (winding.outcome) {
    case 'too-short':
      return none(
        say(manner, 'Not to be built: the cable is {missing} shorter than the pipe', {
          missing: showQuantity(winding.missing, 'length', manner),
        }),
      );
    case 'straight':
      return none(say(manner, 'Heating cable: straight along the pipe'));
    case 'touching':
      return none(say(manner, 'Not to be built: the turns of the cable would touch'));
    case 'wound': {
      // A measured pipe may be longer or shorter than the drawn run; the turns are spread over what is drawn.
      const pitch = winding.pitch * (drawn / length);
      const every = Math.max(1, Math.ceil(leastTurn / (pitch * perMetre)));
      const number = Math.floor(winding.turns / every + 1e-9);
      const shown =
        every === 1
          ? say(manner, 'each one is drawn')
          : say(manner, 'one in {count} is drawn', { count: count(every) });
      return {
        distances: Array.from({ length: number }, (_, index) => (index + 0.5) * every * pitch),
        lean: Math.min(pitch / 2, 0.6 * pipeOf(bench).outsideDiameter),
        words: say(manner, 'Heating cable: {turns} turns, pitch {pitch}; {shown}', {
          turns: count(winding.turns),
          pitch: size(winding.pitch),
          shown,
        }),
      };
    }
  }
}

/** How wide the pipe is drawn [mm]. */
export const drawnPipe = (bench: Bench, perMetre: number): number =>
  Math.max(leastPipe, pipeOf(bench).outsideDiameter * perMetre);

/** A ring has no ends: the corner where its line begins and ends is closed. */
function ringCorner([x, y]: Point, broad: number): Mark[] {
  const half = broad / 2;
  const inner = half - pen.edge;
  return [
    rectangle({ left: x - half, right: x + half, top: y - half, bottom: y + half }, { fill: 'ink' }),
    rectangle({ left: x - inner, right: x + half, top: y - half, bottom: y + inner }, { fill: 'water' }),
    rectangle({ left: x + inner, right: x + half, top: y - half, bottom: y - inner }, { fill: 'ink' }),
  ];
}

/** One turn seen from above: a stroke across the pipe, leaning along it. */
function turnMark([x, y]: Point, way: Point, reach: number, lean: number): Mark {
  // Paper runs downward where the bench runs away from the reader.
  const [alongX, alongY] = [way[0], -way[1]];
  return line(
    [
      [x - alongX * lean + alongY * reach, y - alongY * lean - alongX * reach],
      [x + alongX * lean - alongY * reach, y + alongY * lean + alongX * reach],
    ],
    { stroke: 'heat', width: pen.outline },
  );
}

/** The closed end of a pipe at a place, coming from another. */
function endCap([x, y]: Point, [fromX, fromY]: Point, broad: number): Mark {
  const length = Math.hypot(x - fromX, y - fromY) || 1;
  const [acrossX, acrossY] = [((fromY - y) / length) * (broad / 2), ((x - fromX) / length) * (broad / 2)];
  return line([
    [x - acrossX, y - acrossY],
    [x + acrossX, y + acrossY],
  ]);
}

/** The pipe with the turns of the cable, and the strip where a piece of the bench is left out. */
export function loopMarks(bench: Bench, sheet: Sheet, turns: TurnMarks): Mark[] {
  const { perMetre, top, bottom, cut } = sheet;
  const path = loopPath(bench);
  const broad = drawnPipe(bench, perMetre);
  const run = path.map((place) => on(sheet, place));
  const [first = [0, 0], second = [0, 0]] = run;
  const [beforeLast = [0, 0], last = [0, 0]] = run.slice(-2);
  const ends =
    bench.loop.run === 'ring'
      ? ringCorner(first, broad)
      : [endCap(first, second, broad), endCap(last, beforeLast, broad)];
  const lean = Math.min(turns.lean * perMetre, broad * 0.6) / 2;
  const [before, behind] = cut.map((along) => on(sheet, [along, 0])[0]) as [number, number];
  return [
    // A broad line of ink with a narrower one of water on it, which leaves the pipe's two edges.
    line(run, { width: broad, stroke: 'ink' }),
    line(run, { width: broad - 2 * pen.edge, stroke: 'water' }),
    ...ends,
    ...placesOn(path, turns.distances)
      .filter(({ at }) => shows(sheet, at[0]))
      .map(({ at, way }) => turnMark(on(sheet, at), way, broad / 2 + 0.3, lean)),
    ...(isBroken(sheet) ? breakStrip((before + behind) / 2, strip, top - 2, bottom + 2) : []),
  ];
}
