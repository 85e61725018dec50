import type { Bench } from '../../calculators/bench/fields.ts';
import { showNumber, showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { messages, say } from '../../calculators/say.ts';
import type { DrawingInput } from './input.ts';
import type { View, Wound } from './wound.ts';

/** Limits of the cable's own sheet that the winding would break, by the calculator's names for them. */
const brokenLimits: Readonly<
  Record<string, (bench: Bench, size: (metres: number) => string, manner: Manner) => string>
> = {
  'gap-too-small': ({ cable }, size, manner) =>
    say(manner, 'Not to be built: the cable’s sheet asks for a gap of at least {gap}.', {
      gap: size(cable.leastGap),
    }),
  'bend-too-tight': ({ cable }, size, manner) =>
    say(manner, 'Not to be built: the cable’s sheet allows no bend tighter than {bend}.', {
      bend: size(cable.smallestBend),
    }),
};

/** What is said under the drawing: in bold what stops it from being built, and plainly what it shows. */
export const windingWords = (
  wound: Wound,
  { situation, answers, manner }: Pick<DrawingInput, 'situation' | 'answers' | 'manner'>,
): { bold: string[]; plain: string[] } => {
  const { winding, length, cable, pipe } = wound;
  const metres = (value: number) => showQuantity(value, 'length', manner);
  const size = (value: number) => showQuantity(value, 'size', manner);
  const limits = answers.winding.warnings.flatMap(({ code }) => {
    const words = brokenLimits[code];
    return words ? [words(situation.bench, size, manner)] : [];
  });
  switch (winding.outcome) {
    case 'too-short':
      return {
        bold: [
          say(manner, 'Not to be built: the cable is {missing} shorter than the pipe.', {
            missing: metres(winding.missing),
          }),
        ],
        plain: [],
      };
    case 'straight':
      return {
        bold: [say(manner, 'The cable is just as long as the pipe: it lies straight along it.')],
        plain: [],
      };
    case 'touching':
      return {
        bold: [
          say(
            manner,
            'Not to be built: the turns would touch or lie on each other. {length} of cable has no room.',
            { length: metres(winding.tooMuch) },
          ),
          ...limits,
        ],
        plain: [],
      };
    case 'wound':
      return {
        bold: [
          ...(winding.turns < 1
            ? [say(manner, 'The cable is hardly longer than the pipe: not even one turn.')]
            : []),
          ...limits,
        ],
        plain: [
          say(manner, '{turns} turns of {cable} cable on {length} of {pipe} pipe.', {
            turns: showNumber(winding.turns, 'count', manner),
            cable: size(cable),
            length: metres(length),
            pipe: size(pipe),
          }),
        ],
      };
  }
};

export const viewWords = messages({
  whole: 'The whole pipe, to scale.',
  window: 'Part of the pipe, to scale.',
  broken: 'Two parts of the pipe, one turn apart; a piece between them is left out.',
} satisfies Record<View['kind'], string>);
