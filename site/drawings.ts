import type { CalculatorId } from '../calculators/index.ts';
import type { BenchDrawing } from './drawing/input.ts';

interface DrawingKind {
  /** Width on the page, in the millimetres of the drawing. */
  readonly width: number;
  /** Whose figures it shows. */
  readonly needs: readonly CalculatorId[];
  readonly load: () => Promise<BenchDrawing>;
}

/** The drawings that a page can show, each in a file of its own that is loaded where it is shown. */
export const drawings = {
  winding: {
    width: 170,
    needs: ['winding'],
    load: async () => (await import('./drawing/winding.ts')).windingDrawing,
  },
  unrolled: {
    width: 170,
    needs: ['winding'],
    load: async () => (await import('./drawing/unrolled.ts')).unrolledDrawing,
  },
  plan: {
    width: 170,
    needs: ['winding'],
    load: async () => (await import('./drawing/plan.ts')).planDrawing,
  },
  section: {
    width: 120,
    needs: ['winding'],
    load: async () => (await import('./drawing/section.ts')).sectionDrawing,
  },
} as const satisfies Record<string, DrawingKind>;
