import type { Situation } from '../../calculators/calculator.ts';
import type { Answers } from '../../calculators/index.ts';
import type { Manner } from '../../calculators/quantities/show.ts';
import type { Drawing } from './drawing.ts';

/** What every drawing of a bench is made from. */
export interface DrawingInput {
  readonly situation: Situation;
  readonly answers: Answers;
  readonly manner: Manner;
  /** Width of the drawing on paper [mm]; 80 and more. */
  readonly width: number;
}

export type BenchDrawing = (input: DrawingInput) => Drawing;
