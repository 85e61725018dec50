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
  /**
   * Set for the worksheet, which is measured with a ruler and short of room: the drawing keeps a round scale, is no
   * higher than this [mm] where its least sizes allow, and names things by short words instead of a numbered key. It
   * is printed enlarged by a factor, so that its letters are as tall as those beside it; widths and heights are those
   * before that, and the scale is that of the print.
   */
  readonly sheet?: { readonly height: number; readonly enlarged: number };
}

export type BenchDrawing = (input: DrawingInput) => Drawing;
