import type { Manner } from '../../calculators/quantities/show.ts';
import { say } from '../../calculators/say.ts';
import type { Drawing } from './drawing.ts';
import { wrap } from './measure.ts';
import { labels, leading, letters } from './pen.ts';

const margin = 2;

/** What stands in the place of a drawing whose figures a law refused to give. */
export function nothingDrawn(title: string, width: number, manner: Manner): Drawing {
  const words = say(
    manner,
    'Nothing is drawn here, as there are no figures for this bench. The warnings say why.',
  );
  const lines = wrap(words, width - 2 * margin, letters.body);
  return {
    width,
    height: 2 * margin + lines.length * leading * letters.body,
    title: say(manner, title),
    description: words,
    marks: labels([margin, margin + letters.body], lines),
  };
}
