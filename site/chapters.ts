import { getCollection, type CollectionEntry } from 'astro:content';
import { calculators } from '../calculators/index.ts';
import type { CautionId } from '../calculators/calculator.ts';
import { outline, parts, type Step } from '../content/outline.ts';

/** The chapters of the outline beside what is written of them. */

/** A chapter of the guide in its place. */
export interface Chapter {
  readonly step: Step;
  /** Its number, from 1. */
  readonly number: number;
  /** The heading of the written chapter, or else the question that the outline has for it. */
  readonly title: string;
  /** Absent while it is not written. */
  readonly entry?: CollectionEntry<'chapters'>;
}

const written = await getCollection('chapters');
for (const { id } of written)
  if (!outline.some((step) => step.id === id))
    throw new Error(
      `content/outline.ts has no place for content/chapters/${id}.mdx. Its chapters are: ${outline.map((step) => step.id).join(', ')}.`,
    );

/** All chapters, in order. */
export const chapters: readonly Chapter[] = outline.map((step, index) => {
  const entry = written.find(({ id }) => id === step.id);
  return {
    step,
    number: index + 1,
    title: entry?.data.title ?? step.question,
    ...(entry ? { entry } : {}),
  };
});

/** The parts of the guide with their chapters. */
export const chaptersByPart = parts.map(({ title, steps }) => ({
  title,
  chapters: chapters.filter(({ step }) => steps.includes(step)),
}));

/** How many chapters are written. */
export const writtenCount = chapters.filter(({ entry }) => entry).length;

/** The chapter with that id. */
export function chapterOf(id: string): Chapter {
  const found = chapters.find(({ step }) => step.id === id);
  if (!found) throw new Error(`content/outline.ts has no chapter "${id}".`);
  return found;
}

/** The written chapters before and after one, with what is not written yet in between. */
export function neighbours({ number }: Chapter): {
  readonly before: Chapter | undefined;
  readonly after: Chapter | undefined;
  readonly skipped: readonly Chapter[];
} {
  const before = chapters.findLast((one) => one.number < number && one.entry);
  const after = chapters.find((one) => one.number > number && one.entry);
  const skipped = chapters.filter((one) => one.number > number && one.number < (after?.number ?? Infinity));
  return { before, after, skipped };
}

/** The calculators of a chapter that the guide has. */
export const calculatorsOf = ({ step }: Chapter) =>
  calculators.filter(({ id }) => step.calculators.includes(id));

/** The chapters that show a caution: by themselves, or beside the figures of one of their calculators. */
export const chaptersOfCaution = (id: CautionId): readonly Chapter[] =>
  chapters.filter(
    (chapter) =>
      (chapter.entry?.body ?? '').includes(`<Caution id="${id}"`) ||
      calculatorsOf(chapter).some(({ cautions }) => cautions.includes(id)),
  );
