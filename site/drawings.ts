import type { CalculatorId } from '../calculators/index.ts';
import type { BenchDrawing } from './drawing/input.ts';

interface DrawingKind {
  /** Whose figures it shows. */
  readonly needs: readonly CalculatorId[];
  readonly load: () => Promise<BenchDrawing>;
}

/** How wide a drawing is made, in its own millimetres, so that its letters can be read at either size. */
export const drawingWidths = { wide: 170, narrow: 92 } as const;

/** The drawings that a page can show, each in a file of its own that is loaded where it is shown. */
export const drawings = {
  winding: {
    needs: ['winding'],
    load: async () => (await import('./drawing/winding.ts')).windingDrawing,
  },
  unrolled: {
    needs: ['winding'],
    load: async () => (await import('./drawing/unrolled.ts')).unrolledDrawing,
  },
  crossing: {
    needs: ['sheath'],
    load: async () => (await import('./drawing/crossing.ts')).crossingDrawing,
  },
  plan: {
    needs: ['winding'],
    load: async () => (await import('./drawing/plan.ts')).planDrawing,
  },
  section: {
    needs: ['winding'],
    load: async () => (await import('./drawing/section.ts')).sectionDrawing,
  },
} as const satisfies Record<string, DrawingKind>;
