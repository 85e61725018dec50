import { at, type Cubic } from '../../site/drawing/curve.ts';
import type { Drawing, Mark, Point } from '../../site/drawing/drawing.ts';
import { boxOf, overlap, textBox, type Box, type TextMark } from '../../site/drawing/measure.ts';

/** What no drawing may have: texts on texts, lines through texts, letters too small, marks that leave the sheet. */

const pointsOf = (mark: Exclude<Mark, { kind: 'text' }>): readonly Point[] => {
  if (mark.kind !== 'circle') return mark.points;
  const [[x, y], radius] = [mark.at, mark.radius];
  return [
    [x - radius, y - radius],
    [x + radius, y + radius],
  ];
};

export const isText = (mark: Mark): mark is TextMark => mark.kind === 'text';

/** Straight pieces of what a mark strokes; curves in eight pieces each. */
function strokes(mark: Exclude<Mark, { kind: 'text' }>): [Point, Point][] {
  if (!mark.stroke) return [];
  let points: Point[] = [];
  if (mark.kind === 'circle')
    points = Array.from({ length: 33 }, (_, index): Point => {
      const angle = (index / 32) * 2 * Math.PI;
      return [mark.at[0] + mark.radius * Math.cos(angle), mark.at[1] + mark.radius * Math.sin(angle)];
    });
  else if (mark.kind === 'curve')
    for (let index = 0; index + 3 < mark.points.length; index += 3) {
      const piece = mark.points.slice(index, index + 4) as unknown as Cubic;
      points.push(...Array.from({ length: 9 }, (_, step) => at(piece, step / 8)));
    }
  else points = [...mark.points, ...(mark.closed && mark.points[0] ? [mark.points[0]] : [])];
  return points.slice(1).map((to, index) => [points[index] ?? to, to]);
}

/** Whether a line passes through a box: cut to the box side by side (Liang and Barsky). */
function passes([[x, y], [toX, toY]]: [Point, Point], { left, right, top, bottom }: Box): boolean {
  let [enter, leave] = [0, 1];
  for (const [way, room] of [
    [x - toX, x - left],
    [toX - x, right - x],
    [y - toY, y - top],
    [toY - y, bottom - y],
  ] as const) {
    if (way === 0 && room < 0) return false;
    if (way < 0) enter = Math.max(enter, room / way);
    if (way > 0) leave = Math.min(leave, room / way);
  }
  return enter < leave;
}

const shrunk = ({ left, right, top, bottom }: Box, by: number): Box => ({
  left: left + by,
  right: right - by,
  top: top + by,
  bottom: bottom - by,
});

/** Whatever a reader would stumble over in a drawing. */
export function faults(drawing: Drawing): string[] {
  const found: string[] = [];
  const sheet: Box = { left: 0, top: 0, right: drawing.width, bottom: drawing.height };
  const outside = (box: Box, slack: number) =>
    box.left < -slack ||
    box.top < -slack ||
    box.right > sheet.right + slack ||
    box.bottom > sheet.bottom + slack;
  if (!(drawing.height > 10 && drawing.height < 400)) found.push(`height ${drawing.height}`);
  drawing.marks.forEach((mark, index) => {
    if (isText(mark)) {
      if (![...mark.at, mark.size].every(Number.isFinite)) found.push(`text "${mark.text}" is nowhere`);
      if (mark.size < 3.2) found.push(`text "${mark.text}" is ${mark.size} mm high`);
      if (/NaN|undefined|Infinity|null/u.test(mark.text)) found.push(`text "${mark.text}"`);
      if (outside(textBox(mark), 0.1)) found.push(`text "${mark.text}" leaves the sheet`);
      return;
    }
    const points = pointsOf(mark);
    if (points.length === 0 || !points.flat().every(Number.isFinite)) found.push(`mark ${index} is nowhere`);
    else if (mark.fill !== 'paper' && outside(boxOf(points), 0.6))
      found.push(`mark ${index} leaves the sheet`);
    if (mark.stroke && (mark.width ?? 0.35) < 0.2) found.push(`mark ${index} is ${mark.width} mm wide`);
  });
  const texts = drawing.marks.map((mark, index) => ({ mark, index })).filter(({ mark }) => isText(mark));
  texts.forEach(({ mark, index }, number) => {
    const text = mark as TextMark;
    const box = textBox(text);
    for (const { mark: other } of texts.slice(number + 1))
      if (overlap(box, textBox(other as TextMark)))
        found.push(`"${text.text}" lies on "${(other as TextMark).text}"`);
    // Paper painted under the letters hides whatever was drawn before it.
    const covered = drawing.marks.slice(0, index).findLastIndex((under) => {
      if (isText(under) || under.fill !== 'paper') return false;
      const paper = boxOf(pointsOf(under));
      return (
        paper.left <= box.left &&
        paper.right >= box.right &&
        paper.top <= box.top &&
        paper.bottom >= box.bottom
      );
    });
    const near = drawing.marks.filter((other, place) => place > covered && !isText(other));
    for (const other of near as Exclude<Mark, TextMark>[])
      if (strokes(other).some((stroke) => passes(stroke, shrunk(box, 0.35))))
        found.push(`a line passes through "${text.text}"`);
  });
  return [...new Set(found)];
}
