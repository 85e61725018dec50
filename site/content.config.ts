import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
import { z } from 'astro/zod';

/** The chapters of the guide; their words lie in content/chapters. */
const chapters = defineCollection({
  loader: glob({ pattern: '*.mdx', base: './content/chapters' }),
  schema: z.strictObject({
    /** The reader's question, as the heading. */
    title: z.string(),
    /** What the chapter gives, in a sentence or two. */
    summary: z.string(),
  }),
});

export const collections = { chapters };
