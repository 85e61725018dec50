import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** What axe finds wrong with a page, without looking at the same thing a thousand times. */

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly nodes: readonly { readonly html: string }[];
  }[];
  readonly passes: readonly unknown[];
}

/** Puts axe into a page: by the browser's own tools, to which the policy of the page does not apply. */
export const bringAxe = (page: Page): Promise<void> => page.evaluate(axeSource);

/**
 * What axe finds.
 *
 * `all`: by the rules of WCAG 2.2 AA, everywhere. Nine tenths of its time are contrast, worked out anew for every word;
 * so in tables whose rows repeat, the contrast of a row is looked at only where it holds words of a kind that the table
 * has not shown yet, and in the last row of each kind. On a page of thousands of words (the whole guide on one page, the
 * page of checks), which repeats what other pages hold, it is looked at in some words of each kind, from the first to the
 * last.
 *
 * `contrast`: for when nothing but colours has changed. The first and the last words of each kind on the page.
 *
 * Words are of one kind where everything that paints them is the same, from their own element up to the top of the
 * page (of the table): colour, ground, opacity, size and weight, place, visibility, whether a control is disabled.
 *
 * @param long more places with words than this make a page a long one
 */
export async function accessibilityFaults(
  page: Page,
  what: 'all' | 'contrast',
  long = 3000,
): Promise<string[]> {
  const { found, words } = await page.evaluate(
    async ({ asked, thousands }) => {
      const { axe } = globalThis as unknown as {
        axe: { run: (context: object, options: object) => Promise<AxeResult> };
      };
      const known = new Map<string, number>();
      const numberOf = (text: string): number => {
        const number = known.get(text) ?? known.size;
        known.set(text, number);
        return number;
      };
      const paints = new Map<Element, number>();
      const paintOf = (element: Element, top: Element): number => {
        const before = paints.get(element);
        if (before !== undefined) return before;
        const above = element === top || !element.parentElement ? -1 : paintOf(element.parentElement, top);
        const style = getComputedStyle(element);
        const parts = [
          above,
          element.tagName,
          element.matches(':disabled, [aria-disabled="true"]'),
          element instanceof HTMLLabelElement && element.control?.matches(':disabled') === true,
          element.checkVisibility({ opacityProperty: true, visibilityProperty: true }),
          element.getClientRects().length > 0,
          ...[style.color, style.backgroundColor, style.backgroundImage, style.opacity, style.filter],
          ...[style.mixBlendMode, style.fontSize, style.fontWeight, style.textShadow, style.position],
          ...[style.clip, style.clipPath, style.transform, style.float, style.zIndex],
        ];
        const number = numberOf(parts.join('|'));
        paints.set(element, number);
        return number;
      };
      const ownText = (element: Element): string =>
        [...element.childNodes]
          .map((node) => (node.nodeType === Node.TEXT_NODE ? (node.nodeValue ?? '') : ''))
          .join('')
          .trim();
      const isControl = (element: Element) => element.matches('input, select, textarea, button');
      const wordsIn = (top: Element) =>
        [...top.querySelectorAll('*')].filter((element) => ownText(element) !== '' || isControl(element));
      /** Some words of each kind below an element, evenly from the first to the last. */
      const ofEachKind = (top: Element, count = 2): Set<Element> => {
        paints.clear();
        const kinds = new Map<string, Element[]>();
        for (const element of wordsIn(top)) {
          // Of a single sign, and of signs that are no letters, axe says nothing.
          const kind = `${paintOf(element, top)} ${/[\p{L}\p{N}]{2}/u.test(ownText(element))}`;
          const alike = kinds.get(kind) ?? [];
          kinds.set(kind, alike);
          alike.push(element);
        }
        const chosen = [...kinds.values()].flatMap((alike) =>
          Array.from(
            { length: count },
            (_, step) => alike[Math.round((step * (alike.length - 1)) / (count - 1))],
          ),
        );
        return new Set(chosen.filter((element) => element !== undefined));
      };

      const options = { resultTypes: ['violations'] };
      const contrast = { ...options, runOnly: { type: 'rule', values: ['color-contrast'] } };
      const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
      const wcag = { ...options, runOnly: { type: 'tag', values: tags } };
      if (asked === 'contrast') {
        const include = [...ofEachKind(document.documentElement)];
        return { found: [await axe.run({ include }, contrast)], words: include.length };
      }
      const rest = { ...wcag, rules: { 'color-contrast': { enabled: false } } };
      // Fewer rows than this cost less than to tell them apart.
      const many = 20;
      const exclude = [...document.querySelectorAll('tbody')].flatMap((table) => {
        if (table.rows.length < many) return [];
        const telling = ofEachKind(table);
        return [...table.rows].filter((row) => !wordsIn(row).some((element) => telling.has(element)));
      });
      const everything = { include: [document.documentElement] };
      const wordsSeen = wordsIn(document.documentElement).length;
      if (wordsSeen > thousands) {
        const include = [...ofEachKind(document.documentElement, 6)];
        const looked = [await axe.run(everything, rest), await axe.run({ include }, contrast)];
        return { found: looked, words: wordsSeen };
      }
      if (exclude.length === 0) return { found: [await axe.run(everything, wcag)], words: wordsSeen };
      const looked = [await axe.run(everything, rest), await axe.run({ ...everything, exclude }, contrast)];
      return { found: looked, words: wordsSeen };
    },
    { asked: what, thousands: long },
  );
  expect(words).toBeGreaterThan(5);
  const passes = found.reduce((sum, one) => sum + one.passes.length, 0);
  expect(passes).toBeGreaterThan(what === 'contrast' ? 0 : 8);
  return found.flatMap(({ violations }) =>
    violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 160)}`)),
  );
}
