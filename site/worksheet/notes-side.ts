import type { FieldPath } from '../../calculators/bench/fields.ts';
import type { Calculator } from '../../calculators/calculator.ts';
import { calculators } from '../../calculators/index.ts';
import { sources, type Citation } from '../../calculators/sources.ts';
import type { Manner } from '../../calculators/quantities/show.ts';
import { fieldAt } from '../report.ts';
import { figureText } from '../widgets/text.ts';
import type { Block } from './blocks.ts';
import { cautionsLeft } from './cautions-left.ts';
import type { Side } from './compose.ts';
import { field, figureOf, hintsToRead, reasonsAgainst, type Facts } from './facts.ts';
import type { Office } from './run-side.ts';
import { say } from '../../calculators/say.ts';
import { run } from './text.ts';

const heading = (text: string): Block => ({ kind: 'heading', text });

/** Fewer watts saved than this are not worth a line [W]. */
const leastSaving = 10;
/** Changes that are named, largest first. */
const mostSavings = 3;

/** What saves most of the power needed, largest first. */
function changes(facts: Facts): string[] {
  const heat = calculators.find(({ id }) => id === 'heat') as Calculator | undefined;
  return (
    Object.keys(heat?.figures ?? {})
      .filter((name) => name.startsWith('save'))
      .flatMap((name) => {
        const found = figureOf(facts, `heat.${name}`);
        return found && found.figure.value >= leastSaving ? [found] : [];
      })
      .toSorted((a, b) => b.figure.value - a.figure.value)
      .slice(0, mostSavings)
      // The title has said that it would save.
      .map(
        ({ label, figure }) =>
          `${say(facts.manner, label).replace(/ would save$/u, '')}: ${figureText(figure, 'power', facts.manner)}.`,
      )
  );
}

/** Whether a field that was left out has a value that somebody might have measured or chosen otherwise. */
function isAssumption(path: FieldPath): boolean {
  const field = fieldAt(path);
  if (field.shape === 'choice') return true;
  return field.shape === 'number' && (field.start !== null || (field.empty ?? '').startsWith('not measured'));
}

const lowerFirst = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;

/** Room for the list of start values that were taken [letters]; what is beyond it is counted. */
const assumedRoom = 90;

function assumedWords(facts: Facts, left: readonly FieldPath[]): string {
  const assumed = left.filter(isAssumption);
  const { manner } = facts;
  if (assumed.length === 0) return say(manner, 'No value was assumed.');
  const named: string[] = [];
  for (const path of assumed) {
    const words = `${lowerFirst(say(manner, fieldAt(path).label))} ${lowerFirst(field(facts, path))}`;
    if (named.length > 0 && [...named, words].join('; ').length > assumedRoom) break;
    named.push(words);
  }
  const more = assumed.length - named.length;
  const values = named.join('; ');
  return more > 0
    ? say(manner, 'Start values taken for {values}; {count} more in the guide.', {
        values,
        count: String(more),
      })
    : say(manner, 'Start values taken for {values}.', { values });
}

/** On what the figures rest, counted from the citations of every calculator. */
function standing(all: readonly Calculator[], manner: Manner): string {
  const cited: Citation[] = all.flatMap(({ cites, formulas }) => [
    ...cites,
    ...formulas.flatMap((formula) => formula.cites),
  ]);
  const ids = [...new Set(cited.map(({ source }) => source))];
  const count = (kind: (typeof sources)[keyof typeof sources]['standing']) =>
    ids.filter((id) => sources[id].standing === kind).length;
  const memory = count('memory');
  const parts = [
    memory > 0
      ? say(manner, '{count} published sources ({memory} from memory)', {
          count: String(count('seen') + memory),
          memory: String(memory),
        })
      : say(manner, '{count} published sources', { count: String(count('seen')) }),
    ...(count('practice') > 0 ? [say(manner, 'common practice')] : []),
    ...(count('assumption') > 0 ? [say(manner, 'assumptions')] : []),
  ];
  return say(manner, 'Figures rest on {parts}: the guide names each.', { parts: parts.join(', ') });
}

const section = (title: string, blocks: readonly Block[]): readonly Block[] =>
  blocks.length > 0 ? [heading(title), ...blocks] : [];

/** A list whose entries may be parted by the end of a page. */
const entries = (texts: readonly string[], numbered: boolean): Block[] =>
  texts.length > 0 ? [{ kind: 'list', numbered, entries: texts.map((text) => [run(text)]) }] : [];

/**
 * What is read once and kept: every hint for this bench, gravest first, cautions that no other side says in full, on what
 * the figures rest. `logged` where the side with the log is printed.
 */
export function notesSide(
  facts: Facts,
  office: Office,
  assumed: readonly FieldPath[],
  logged: boolean,
): Side {
  const all = hintsToRead(facts);
  const stopped = reasonsAgainst(facts).length > 0;
  const { manner } = facts;
  const title = say(manner, stopped ? 'What else to know of this bench' : 'Read before you build');
  return {
    bands: [
      {
        heads: [[], []],
        groups: [
          section(title, entries(all, true)),
          section(say(manner, 'What would save most'), entries(changes(facts), true)),
          section(say(manner, 'Cautions'), [cautionsLeft(logged, manner)]),
          section(say(manner, 'Code'), entries(office.codeReferences, false)),
          section(say(manner, 'On what it rests'), [
            {
              kind: 'paragraph',
              runs: [run(`${assumedWords(facts, assumed)} ${standing(calculators, manner)}`)],
            },
          ]),
        ].filter((group) => group.length > 0),
      },
    ],
  };
}
