import { render } from 'astro:content';
import { allFields } from '../../calculators/bench/all-fields.ts';
import { fields } from '../../calculators/bench/fields.ts';
import type { Calculator } from '../../calculators/calculator.ts';
import { cautions } from '../../calculators/cautions.ts';
import { calculators } from '../../calculators/index.ts';
import { glossary } from '../../content/glossary/terms.ts';
import { fieldId } from '../widgets/form-field.ts';
import { chapters } from '../chapters.ts';
import { indexOf, type Finding } from './index-of.ts';

/**
 * The words of a chapter by section: those before the first heading, then those under each, as many as there are headings
 * of the second and third level. What is markup, an address or a formula is left out.
 */
function sectionsOf(body: string): string[] {
  const plain = body
    .replace(/\$[^$]*\$/gu, ' ')
    .replace(/<[^>]*>|\{[^}]*\}|\]\([^)]*\)/gu, ' ')
    .replace(/[*_`[\]]/gu, '');
  return plain.split(/^#{2,3} .*$/mu);
}

/** All that can be found, in the order of the guide. */
export async function searchIndex() {
  const headings = await Promise.all(
    chapters.flatMap(({ entry, number, step, title }) =>
      entry
        ? [
            render(entry).then(({ headings: those }) => ({
              entry,
              number,
              title,
              asked: step.asked.join(' '),
              headings: those,
            })),
          ]
        : [],
    ),
  );
  const inChapters = headings.flatMap(({ entry, number, title, asked, headings: those }): Finding[] => {
    const to = `chapters/${entry.id}/`;
    const where = `Chapter ${number}`;
    const [before = '', ...sections] = sectionsOf(entry.body ?? '');
    return [
      { title, where, to, words: `${entry.data.summary} ${before}`, asked },
      ...those
        .filter(({ depth }) => depth === 2 || depth === 3)
        .map(({ slug, text }, index) => ({
          title: text,
          where,
          to: `${to}#${slug}`,
          words: `${title} ${sections[index] ?? ''}`,
        })),
    ];
  });
  const ofCalculators = calculators.map(({ id, question, summary, figures }: Calculator): Finding => ({
    title: question,
    where: 'Calculator',
    to: `reference/${id}/`,
    words: `${summary} ${Object.values(figures)
      .map(({ label }) => label)
      .join(' ')}`,
  }));
  const ofWords = glossary.map(({ id, term, meaning }): Finding => ({
    title: term,
    where: 'Glossary',
    to: `glossary/#${id}`,
    words: meaning,
  }));
  const ofFields = allFields.map(({ group, path, field }): Finding => ({
    title: field.label,
    where: `Field of your bench, ${fields[group].label}`,
    to: `bench/#${fieldId('bench', path)}`,
    words: [
      field.explain,
      path,
      ...(field.shape === 'choice' ? Object.values(field.options).map(({ label }) => label) : []),
    ].join(' '),
    form: true,
  }));
  const ofCautions = Object.entries(cautions).map(([id, { title, text }]): Finding => ({
    title,
    where: 'Caution',
    to: `cautions/#${id}`,
    words: text,
  }));
  const ofPages: Finding[] = [
    { title: 'Symbols and units', where: 'Table', to: 'symbols/', words: 'letters of formulas' },
    { title: 'Cautions', where: 'All in one place', to: 'cautions/', words: 'danger hurt' },
  ];
  return indexOf([...inChapters, ...ofCalculators, ...ofCautions, ...ofPages, ...ofWords, ...ofFields]);
}
