import { expect } from 'vitest';
import type { Answer, Figure } from '../../calculators/calculator.ts';

/** The value of a figure that must be there. */
export function valueOf(figure: Figure | null, what = 'the figure'): number {
  expect(figure, what).not.toBeNull();
  return (figure as Figure).value;
}

/** The codes of an answer's warnings, as "stop turns-touch". */
export const codesOf = ({ warnings }: Answer): string[] =>
  warnings.map(({ level, code }) => `${level} ${code}`);
