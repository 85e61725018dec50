import type { Answer, Calculator, Situation } from '../../calculators/calculator.ts';

/** The part of a calculator that works figures out, without the words about them. */
type Working = Pick<Calculator, 'id' | 'compute'> & { readonly figures: Readonly<Record<string, unknown>> };

/** Every calculator, each in a file of its own, so that a page loads only those that it shows. */
const files = import.meta.glob<Working>('../../calculators/questions/*.ts', {
  import: 'default',
  query: '?figures',
});

async function load(id: string): Promise<Working> {
  const file = files[`../../calculators/questions/${id}.ts`];
  if (!file) throw new Error(`no calculator ${id}`);
  return file();
}

/** What is said where a calculator gives up: a law refuses to work outside the range that it was published for. */
const outside = ({ figures }: Working): Answer => ({
  figures: Object.fromEntries(Object.keys(figures).map((name) => [name, null])),
  warnings: [
    {
      code: 'outside-range',
      level: 'stop',
      text: ['This bench lies outside the range that the published laws hold for, so there are no figures.'],
    },
  ],
});

/** The answers of these calculators for one bench, by id. */
export async function answersFor(
  ids: readonly string[],
  situation: Situation,
): Promise<Readonly<Record<string, Answer>>> {
  const calculators = await Promise.all(ids.map(load));
  return Object.fromEntries(
    calculators.map((calculator) => {
      try {
        return [calculator.id, calculator.compute(situation)];
      } catch (problem) {
        if (!(problem instanceof RangeError)) throw problem;
        return [calculator.id, outside(calculator)];
      }
    }),
  );
}
