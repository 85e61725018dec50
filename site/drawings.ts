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
  'root-layers': {
    needs: ['roots'],
    load: async () => (await import('./drawing/root-layers.ts')).rootLayersDrawing,
  },
  'heat-paths': {
    needs: ['heat'],
    load: async () => (await import('./drawing/heat-paths.ts')).heatPathsDrawing,
  },
  closing: {
    needs: ['watts', 'first'],
    load: async () => (await import('./drawing/closing.ts')).closingDrawing,
  },
  first: {
    needs: ['first'],
    load: async () => (await import('./drawing/first.ts')).firstDrawing,
  },
  ways: {
    needs: ['watts', 'ways'],
    load: async () => (await import('./drawing/ways.ts')).waysDrawing,
  },
  course: {
    needs: ['night'],
    load: async () => (await import('./drawing/course.ts')).courseDrawing,
  },
  'hold-over': {
    needs: ['outage'],
    load: async () => (await import('./drawing/hold-over.ts')).holdOverDrawing,
  },
  months: {
    needs: ['season'],
    load: async () => (await import('./drawing/months.ts')).monthsDrawing,
  },
  savings: {
    needs: ['season'],
    load: async () => (await import('./drawing/savings.ts')).savingsDrawing,
  },
  'temperature-ladder': {
    needs: ['night'],
    load: async () => (await import('./drawing/temperature-ladder.ts')).temperatureLadderDrawing,
  },
  plan: {
    needs: ['winding'],
    load: async () => (await import('./drawing/plan.ts')).planDrawing,
  },
  section: {
    needs: ['winding'],
    load: async () => (await import('./drawing/section.ts')).sectionDrawing,
  },
  thermometers: {
    needs: ['winding'],
    load: async () => (await import('./drawing/thermometers.ts')).thermometersDrawing,
  },
  'before-after': {
    needs: ['readings'],
    load: async () => (await import('./drawing/before-after.ts')).beforeAfterDrawing,
  },
  residuals: {
    needs: ['readings'],
    load: async () => (await import('./drawing/residuals.ts')).residualsDrawing,
  },
  'stand-pipe': {
    needs: ['loop'],
    load: async () => (await import('./drawing/stand-pipe.ts')).standPipeDrawing,
  },
  mix: {
    needs: ['loop', 'mix'],
    load: async () => (await import('./drawing/mix.ts')).mixDrawing,
  },
  feed: {
    needs: ['circuit'],
    load: async () => (await import('./drawing/feed.ts')).feedDrawing,
  },
  'sensor-places': {
    needs: ['settings'],
    load: async () => (await import('./drawing/sensor-places.ts')).sensorPlacesDrawing,
  },
} as const satisfies Record<string, DrawingKind>;
