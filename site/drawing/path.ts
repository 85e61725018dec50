import type { Mark, Point } from './drawing.ts';

type Outlined = Exclude<Mark, { kind: 'text' }>;

/** Hundredths of a millimetre, finer than any printer. */
const hundredths = (millimetres: number): number => Math.round(millimetres * 100);

/** Hundredths as millimetres, without the zero before the point. */
const written = (value: number): string => String(value / 100 + 0).replace(/^(-?)0\./u, '$1.');

/** Numbers with a blank between them where no sign parts them. */
const listed = (values: readonly number[]): string =>
  values
    .map(written)
    .reduce((text, next) => (text === '' || next.startsWith('-') ? text + next : `${text} ${next}`), '');

/**
 * Outlines as one SVG path, told in steps from point to point (SVG 2, 9.3: the small letters). Equal strokes, as of a
 * hatching, are then equal words, and the path is packed to a fraction of what places on the sheet would take. Steps are
 * taken between points rounded to a hundredth of a millimetre, so that rounding never adds up.
 */
export function pathOf(outlines: readonly Outlined[]): string {
  let [atX, atY] = [0, 0];
  const step = ([x, y]: Point): readonly number[] => {
    const [toX, toY] = [hundredths(x), hundredths(y)];
    const moved = [toX - atX, toY - atY];
    [atX, atY] = [toX, toY];
    return moved;
  };
  /** As the points of one curve are all told from its start. */
  const bend = (points: readonly Point[]): readonly number[] => {
    const steps: number[] = [];
    for (let index = 0; index + 2 < points.length; index += 3) {
      const from = [atX, atY] as const;
      for (const point of points.slice(index, index + 3)) {
        [atX, atY] = from;
        steps.push(...step(point));
      }
    }
    return steps;
  };
  const one = (mark: Outlined): string => {
    if (mark.kind === 'circle') {
      const [x, y] = mark.at;
      const radius = hundredths(mark.radius);
      const start = step([x - mark.radius, y]);
      const arc = listed([radius, radius]);
      return `m${listed(start)}a${arc} 0 1 1 ${listed([2 * radius, 0])}a${arc} 0 1 1 ${listed([-2 * radius, 0])}z`;
    }
    const [start, ...rest] = mark.points;
    if (!start) return '';
    const from = step(start);
    const [startX, startY] = [atX, atY];
    const head = `m${listed(from)}`;
    if (mark.kind === 'curve') return `${head}c${listed(bend(rest))}`;
    const lines = rest.length > 0 ? `l${listed(rest.flatMap(step))}` : '';
    if (!mark.closed) return head + lines;
    // Closed, the pen is back where it began.
    [atX, atY] = [startX, startY];
    return `${head}${lines}z`;
  };
  return outlines.map(one).join('');
}
