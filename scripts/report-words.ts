import type { Answer, Calculator, Curve, Situation } from '../calculators/calculator.ts';
import { answer, calculators } from '../calculators/index.ts';
import type { Manner } from '../calculators/quantities/show.ts';
import { clockWords } from '../calculators/weather/clock.ts';
import { cellText, figureText, rangeText, sentenceText } from '../site/widgets/text.ts';

const hour = 3600;

/** Lines of a curve are as far apart: enough to see its course, few enough to be read [s]. */
const curveEvery = 3 * hour;

function figureLines({ figures }: Calculator, given: Answer, manner: Manner): string[] {
  return Object.entries(figures).map(([name, { label, quantity }]) => {
    const figure = given.figures[name] ?? null;
    const range = rangeText(figure, quantity, manner);
    return `  ${label}: ${figureText(figure, quantity, manner)}${range === '' ? '' : `, ${range}`}`;
  });
}

function tableLines({ tables = {} }: Calculator, given: Answer, manner: Manner): string[] {
  return Object.entries(tables).flatMap(([name, { label, columns }]) => {
    const rows = given.tables?.[name]?.rows ?? [];
    const keys = Object.entries(columns);
    return [
      '',
      `  ${label}`,
      `    ${keys.map(([, column]) => column.label).join(' | ')}`,
      ...rows.map((row) => {
        const cells = keys.map(([key, { quantity }]) => cellText(row[key] ?? null, quantity, manner));
        return `    ${cells.map((cell) => (cell === '' ? '–' : cell)).join(' | ')}`;
      }),
    ];
  });
}

function curveLines({ curves = {} }: Calculator, given: Answer, manner: Manner): string[] {
  return Object.entries(curves).flatMap(([name, { label, series }]) => {
    const curve: Curve | undefined = given.curves?.[name];
    if (!curve) return [];
    const shown = Object.entries(series).filter(([id]) => curve.series[id]);
    const rows = curve.times.flatMap((time, index) => {
      if (time % curveEvery !== 0) return [];
      const values = shown.map(([id, { quantity }]) =>
        cellText(curve.series[id]?.[index] ?? null, quantity, manner),
      );
      return [`    ${sentenceText(clockWords(curve.clock + time), manner)} | ${values.join(' | ')}`];
    });
    return ['', `  ${label}`, `    Time | ${shown.map(([, one]) => one.label).join(' | ')}`, ...rows];
  });
}

/**
 * All answers for a bench in words and the reader's units, a line for each thing that a person would look at: for tests that
 * show what a change of the calculations does to the example benches.
 */
export function reportLines(situation: Situation, manner: Manner): string[] {
  const answers = answer(situation);
  const { identity, place } = situation.bench;
  return [
    `${identity.name}: region ${place.region}, station ${place.station}`,
    'Written by "npm run reports". Read every line that changes before you keep it.',
    ...calculators.flatMap((one: Calculator) => {
      const given: Answer = answers[one.id as keyof typeof answers];
      return [
        '',
        `== ${one.question}`,
        ...figureLines(one, given, manner),
        ...given.warnings.map(({ level, code, text }) => `  ${level} ${code}: ${sentenceText(text, manner)}`),
        ...tableLines(one, given, manner),
        ...curveLines(one, given, manner),
      ];
    }),
  ].map((line) => line.trimEnd());
}

/** The lines of two texts that differ, as "line 12: was … is …"; what is only in one of them is said so. */
export function changedLines(before: readonly string[], after: readonly string[]): string[] {
  // By the longest run of common lines, so that one line more does not change all that follow.
  const [rows, columns] = [before.length, after.length];
  const common = new Uint16Array((rows + 1) * (columns + 1));
  for (let row = rows - 1; row >= 0; row--)
    for (let column = columns - 1; column >= 0; column--) {
      const at = row * (columns + 1) + column;
      common[at] =
        before[row] === after[column]
          ? (common[at + columns + 2] ?? 0) + 1
          : Math.max(common[at + columns + 1] ?? 0, common[at + 1] ?? 0);
    }
  const changes: string[] = [];
  let [row, column] = [0, 0];
  while (row < rows || column < columns) {
    if (row < rows && column < columns && before[row] === after[column])
      [row, column] = [row + 1, column + 1];
    else if (
      column >= columns ||
      (row < rows &&
        (common[(row + 1) * (columns + 1) + column] ?? 0) >= (common[row * (columns + 1) + column + 1] ?? 0))
    )
      changes.push(`line ${row + 1} was: ${before[row++] ?? ''}`);
    else changes.push(`line ${column + 1} is:  ${after[column++] ?? ''}`);
  }
  return changes;
}
