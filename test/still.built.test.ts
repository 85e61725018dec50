import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { readers, windows, type Reader } from './support/reader.ts';

/**
 * A page holds still while it comes in: whatever of it has arrived, nothing that stands there moves for what comes
 * after. Held to the built pages as a slow line would show them, cut off before each of their texts in turn.
 */

const reader = readers();

/** Each kind of page that the guide has: what they share, and every way of setting out their first screen. */
const pages = [
  '',
  'chapters/winding/',
  'chapters/season/',
  'bench/',
  'worksheet/',
  'search/',
  'symbols/',
  'checks/',
  'reference/fields/',
  'reference/winding/',
];

/**
 * The texts of the first screen that stand elsewhere while what comes after is missing, each with what moves it. Less
 * than three pixels counts as none (Layout Instability, W3C Community Group Draft). Words that are wrapped anew with the
 * words that follow them in their own paragraph are left out: no page can know those.
 */
const movedByLater = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const least = 3;
    const range = document.createRange();
    const cornerOf = (text: Text): DOMRect | undefined => {
      range.selectNodeContents(text);
      return range.getClientRects()[0];
    };
    const blockOf = (text: Text): Element | null => {
      let element = text.parentElement;
      while (element && getComputedStyle(element).display === 'inline') element = element.parentElement;
      return element;
    };
    const said = (text: Text): string => text.data.trim().slice(0, 40);
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const there: { readonly text: Text; readonly at: DOMRect; readonly block: Element | null }[] = [];
    while (walker.nextNode()) {
      const text = walker.currentNode as Text;
      const at = cornerOf(text);
      const seen = text.parentElement?.checkVisibility({ visibilityProperty: true });
      if (!seen || text.data.trim() === '' || !at || at.top > innerHeight) continue;
      if (text.parentElement?.closest('.visually-hidden, .skip')) continue;
      there.push({ text, at, block: blockOf(text) });
    }
    const moved = new Map<Text, string>();
    const rest = document.createRange();
    for (let end = there.length - 1; end > 0; end--) {
      const first = there[end];
      if (!first || !document.body.lastChild) continue;
      rest.setStartBefore(first.text);
      rest.setEndAfter(document.body.lastChild);
      rest.deleteContents();
      for (const { text, at, block } of there.slice(0, end)) {
        const now = cornerOf(text);
        if (!now || block === first.block) continue;
        const far = Math.max(Math.abs(now.left - at.left), Math.abs(now.top - at.top));
        if (far >= least)
          moved.set(text, `“${said(text)}” by ${far.toFixed(1)} px, by “${said(first.text)}”`);
      }
    }
    return there.length > 5 ? [...moved.values()] : ['there is no page'];
  });

describe('a page that is still coming in', () => {
  let walker: Reader;
  beforeAll(async () => {
    walker = await reader({ javaScriptEnabled: false });
  });

  const looks = pages.flatMap((path) =>
    (Object.keys(windows) as (keyof typeof windows)[]).map((size) => [path, size] as const),
  );

  it.each(looks)('/%s on a %s moves nothing that stands there already', async (path, size) => {
    expect(await movedByLater(await walker.goOn(path, size))).toEqual([]);
  });

  it('is found to move where a list is set from the right', async () => {
    const page = await walker.goOn('search/');
    await page.evaluate(() => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync('.masthead ul { justify-content: flex-end; }');
      document.adoptedStyleSheets.push(sheet);
    });
    expect((await movedByLater(page)).join('\n')).toMatch(/“Contents” by/u);
  });
});
