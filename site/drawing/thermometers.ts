import { loopPath, pipeOf } from '../../calculators/bench/geometry.ts';
import type { Mark, Point } from './drawing.ts';
import { ground } from './hatch.ts';
import type { BenchDrawing } from './input.ts';
import { balloon, balloonRadius, key, notes, pointer } from './key.ts';
import { circle, line, pen, rectangle } from './pen.ts';
import { benchAcross, pipeLevel, plantHeight, potRow, type Scale } from './section-parts.ts';
import { sensorSign } from './signs.ts';
import { spread } from './spread.ts';

/** All on paper [mm]. */
const margin = 2;
/** The highest point of the bench; over it the sun has room. */
const roof = margin + 16;
/** Highest that the section itself may be. */
const tallest = 64;
/** Least height between the highest point and the floor. */
const leastHigh = 24;
/** Left of the bench the door and the sun, right of it the house thermometer. */
const sideRoom = { wide: 34, narrow: 17 } as const;
const narrowBelow = 120;
const column = 2 * balloonRadius + 6;

/** A thermometer that hangs wrong: a triangle as of any sensor, struck out. */
const struckOut = ([x, y]: Point): Mark[] => [
  sensorSign([x, y]),
  ...([1, -1] as const).map((side) =>
    line(
      [
        [x - 2.6, y - 1.4 - side * 2.6],
        [x + 2.6, y - 1.4 + side * 2.6],
      ],
      { width: pen.outline },
    ),
  ),
];

/** A sun: a ring with rays. */
function sun([x, y]: Point): Mark[] {
  const [radius, from, to] = [2.2, 3, 4.6];
  const rays = Array.from({ length: 8 }, (_, index) => {
    const [across, down] = [Math.cos((index * Math.PI) / 4), Math.sin((index * Math.PI) / 4)];
    return line(
      [
        [x + from * across, y + from * down],
        [x + to * across, y + to * down],
      ],
      { width: pen.edge },
    );
  });
  return [circle([x, y], radius, { fill: 'paper', stroke: 'ink', width: pen.edge }), ...rays];
}

/** A door that stands ajar. */
const door = (left: number, right: number, top: number, floor: number): Mark[] => [
  rectangle({ left, right, top, bottom: floor }, { stroke: 'ink', width: pen.edge }),
  line(
    [
      [right, top],
      [right + (right - left) * 0.5, top + 3],
      [right + (right - left) * 0.5, floor + 0.1],
    ],
    { width: pen.thin },
  ),
];

interface Place {
  readonly at: Point;
  readonly text: string;
  readonly good: boolean;
  /** Beside the bench: its number stands by it, so that no line runs through the bench. */
  readonly number?: Point;
}

/**
 * Where the three thermometers of a mild night hang, on the bench cut across, and three places where they read wrong.
 * The bench is to scale; what stands beside it is not.
 */
export const thermometersDrawing: BenchDrawing = ({ situation, width }) => {
  const { bench } = situation;
  const { frame, cover, pots } = bench;
  const side = sideRoom[width < narrowBelow ? 'narrow' : 'wide'];
  const over = cover.kind === 'none' ? 0 : cover.height;
  const high = frame.height + Math.max(pots.height + plantHeight(bench), over);
  const pipe = pipeOf(bench);
  const middles = [...new Set(loopPath(bench).map(([, across]) => across))];
  // Pots and pipes may stand out over the edge of a narrow bench.
  const beyond = Math.max(
    0,
    pots.diameter / 2 - frame.width / 2,
    pipe.outsideDiameter / 2 - Math.min(...middles),
  );
  const room = width - 2 * margin - 2 * side - column;
  const perMetre = Math.min(room / (frame.width + 2 * beyond), tallest / high);
  const left = margin + side + (room - perMetre * frame.width) / 2;
  // A low bench still stands on a floor that the door has room over.
  const floor = roof + Math.max(leastHigh, high * perMetre);
  const scale: Scale = { perMetre, x: (m) => left + m * perMetre, y: (m) => floor - m * perMetre };
  const { x, y } = scale;
  const groundEnd = width - margin - column;

  const farPipe = Math.max(...middles);
  const doorTop = Math.min(y(frame.height) - 6, floor - 30);
  const houseAt: Point = [groundEnd - side / 2 + 2, Math.min(y(frame.height), floor - 8)];
  const sunAt: Point = [margin + side * 0.75 + 2, margin + 5];
  const inSun: Point = [sunAt[0] + 7, sunAt[1] + 6];
  const doorWide = Math.min(12, side * 0.5);
  const atDoor: Point = [margin + doorWide / 2, doorTop + 10];
  const cornerPot = potRow(bench).at(0) ?? frame.width / 2;
  const places: readonly Place[] = [
    {
      at: [x(cornerPot), y(frame.height + pots.height / 2)],
      text: 'In the coldest pot, halfway down between stem and wall: mostly a corner, or the end at the door',
      good: true,
    },
    {
      at: [x(frame.width / 2), y(frame.height * 0.5)],
      text: 'Under the bench, in the air halfway up, where it does not see the pipe',
      good: true,
    },
    {
      at: houseAt,
      text: 'In the house, at bench height and some steps away from the bench',
      good: true,
      number: [houseAt[0], houseAt[1] - 2.8 - balloonRadius - 1],
    },
    {
      at: inSun,
      text: 'Not in the sun: it reads the sun, even through film',
      good: false,
      number: [inSun[0] + balloonRadius + 4.5, inSun[1] - 1.4],
    },
    {
      at: atDoor,
      text: 'Not at the door: it reads who comes and goes',
      good: false,
      number: [atDoor[0], atDoor[1] + balloonRadius + 3],
    },
    {
      at: [x(farPipe), y(pipeLevel(bench)) - (pipe.outsideDiameter / 2) * perMetre - 0.8],
      text: 'Not on the loop or over it: it reads the pipe, not the air',
      good: false,
    },
  ];

  const balloons = width - margin - balloonRadius;
  const pointed = places.filter(({ number }) => !number);
  const rows = spread(
    pointed.map(({ at }) => at[1]),
    2 * balloonRadius + 0.8,
    margin + balloonRadius,
    Math.max(floor, margin + balloonRadius + pointed.length * 6.2),
  );
  const under = Math.max(floor + 4, ...rows.map((row) => row + balloonRadius + 1));
  const list = key(
    places.map(({ text }) => text),
    { left: margin, top: under + 3, width: width - 2 * margin },
  );
  const noteTop = under + 3 + list.height + 1;
  const said = 'The bench is to scale; what stands beside it is not. Struck out: it reads wrong there.';
  const small = notes([said], { left: margin, top: noteTop, width: width - 2 * margin });
  const words = (good: boolean) =>
    places
      .filter((place) => place.good === good)
      .map(({ text }) => `${text}.`)
      .join(' ');
  return {
    width,
    height: noteTop + small.height + 1,
    title: 'Where the three thermometers hang',
    description: `The bench cut across with three thermometers. ${words(true)} Three places are struck out. ${words(false)}`,
    marks: [
      ...ground(margin, groundEnd, floor),
      ...door(margin, margin + doorWide, doorTop, floor),
      ...sun(sunAt),
      line(
        [
          [houseAt[0], houseAt[1]],
          [houseAt[0], floor],
        ],
        { width: pen.thin, stroke: 'soft' },
      ),
      ...benchAcross({ situation, scale, middles }),
      ...places.flatMap(({ at, good }) => (good ? [sensorSign(at)] : struckOut(at))),
      ...places.flatMap(({ at, number }, index) =>
        number
          ? balloon(number, index + 1)
          : pointer([balloons, rows[pointed.findIndex((one) => one.at === at)] ?? roof], at, index + 1),
      ),
      ...list.marks,
      ...small.marks,
    ],
  };
};
