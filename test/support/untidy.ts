import { margin, points, type Box, type Item, type Sheet } from '../../site/worksheet/layout.ts';

/** The words of an item; empty for what is not text. */
export const words = (item: Item): string =>
  item.kind === 'text'
    ? item.lines.map(({ pieces }) => pieces.map(({ text }) => text).join('')).join('')
    : '';

/** What is wrong with a laid-out sheet: nothing but rules may share its place, leave the page or leave its own box. */
export function untidy({ pages }: Sheet): string[] {
  const slack = 0.01;
  return pages.flatMap(({ width, height, items }, page) => {
    const wrong: string[] = [];
    for (const item of items) {
      const { box } = item;
      const name = `page ${page + 1}: ${item.kind} "${words(item).slice(0, 50)}"`;
      // Head and foot stand in the margins, and keep 5 mm from the edge.
      const inMargin = item.kind === 'text' && (box.y < margin || box.y + box.height > height - margin + 1);
      const down = inMargin ? points(5) : margin;
      if (box.x < margin - slack || box.x + box.width > width - margin + slack)
        wrong.push(`${name} is too wide`);
      if (box.y < down - slack || box.y + box.height > height - down + slack)
        wrong.push(`${name} is too tall`);
      if (item.kind !== 'text') continue;
      for (const line of item.lines)
        if (line.x < -slack || line.x + line.width > box.width + slack || line.baseline > box.height)
          wrong.push(`${name} leaves its box`);
    }
    const solid = items.filter(({ kind }) => kind !== 'rule');
    solid.forEach((one, index) => {
      for (const other of solid.slice(index + 1))
        if (overlapping(one.box, other.box, slack))
          wrong.push(
            `page ${page + 1}: ${one.kind} "${words(one).slice(0, 50)}" lies on ${other.kind} "${words(other).slice(0, 50)}"`,
          );
    });
    return wrong;
  });
}

const overlapping = (a: Box, b: Box, slack: number): boolean =>
  a.x < b.x + b.width - slack &&
  b.x < a.x + a.width - slack &&
  a.y < b.y + b.height - slack &&
  b.y < a.y + a.height - slack;
