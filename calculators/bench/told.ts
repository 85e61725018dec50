import type { Cell, Curve, CurveDeclaration, Table } from '../calculator.ts';
import { clockWords } from '../weather/clock.ts';
import { temperatureThrough } from '../weather/series.ts';
import { coldestRoots, type Through, type Weather } from './through.ts';

/** What a bench goes through, told as a curve and as a table. */

const hour = 3600;
const temperature = 'temperature';

/** The lines of a course, for the declaration of a calculator. */
export const courseSeries = {
  outside: { label: 'Outside', quantity: temperature },
  house: { label: 'House', quantity: temperature },
  canopy: { label: 'Under the cover', quantity: temperature },
  loop: { label: 'Loop', quantity: temperature },
  under: { label: 'Under the bench', quantity: temperature },
  'roots-1': { label: 'Roots, bottom', quantity: temperature },
  'roots-2': { label: 'Roots, middle', quantity: temperature },
  'roots-3': { label: 'Roots, top', quantity: temperature },
  power: { label: 'Power', quantity: 'power' },
} as const satisfies CurveDeclaration['series'];

/** The columns of a course in numbers. */
export const courseColumns = {
  clock: { label: 'Day and hour' },
  outside: { label: 'Outside', quantity: temperature },
  house: { label: 'House', quantity: temperature },
  under: { label: 'Under the bench', quantity: temperature },
  loop: { label: 'Loop', quantity: temperature },
  roots: { label: 'Coldest roots', quantity: temperature },
  power: { label: 'Power', quantity: 'power' },
} as const;

/** Every series of `courseSeries` that the bench has. */
export function courseCurve({ body, course }: Through, { outside }: Weather): Curve {
  const times = Array.from(course.times);
  const nodes = Object.keys(courseSeries).flatMap((id) => {
    const values = course.temperatures[body.ids.indexOf(id)];
    return values ? [[id, Array.from(values)] as const] : [];
  });
  return {
    times,
    clock: outside.clock,
    series: {
      outside: times.map(temperatureThrough(outside)),
      house: Array.from(course.house),
      ...Object.fromEntries(nodes),
      power: Array.from(course.power),
    },
  };
}

/** A row every so many hours; its power is the mean since the row before. */
export function courseTable(through: Through, { outside }: Weather, everyHours: number): Table {
  const { body, course } = through;
  const roots = coldestRoots(through);
  const outsideAt = temperatureThrough(outside);
  const step = course.times[1]! - course.times[0]!;
  const every = Math.round((everyHours * hour) / step);
  const rows: Record<string, Cell>[] = [];
  for (let index = 0; index < course.times.length; index += every) {
    const time = course.times[index]!;
    const since = course.power.subarray(index - every + 1, index + 1);
    rows.push({
      clock: clockWords(outside.clock + time),
      outside: outsideAt(time),
      house: course.house[index]!,
      under: course.temperatures[body.under]![index]!,
      loop: course.temperatures[body.loop]![index]!,
      roots: roots[index]!,
      power: index === 0 ? null : since.reduce((sum, one) => sum + one, 0) / every,
    });
  }
  return { rows };
}
