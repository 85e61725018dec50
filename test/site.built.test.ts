import { FileSystemConfigLoader, HtmlValidate } from 'html-validate';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Figure } from '../calculators/calculator.ts';
import { calculators, answer } from '../calculators/index.ts';
import type { QuantityName } from '../calculators/quantities/quantity.ts';
import { readBenchFile } from '../content/bench-file.ts';
import { loadRegions } from '../scripts/content-files.ts';
import { policy } from '../site/policy.ts';
import { figureText } from '../site/widgets/text.ts';
import { root } from './support/imports.ts';
import { builtFiles, builtPages, fileOfPage, readBuilt } from './support/site.ts';

const files = builtFiles();
const pages = builtPages();
const htmlOf = (page: string): string => readBuilt(fileOfPage(page)).toString('utf8');

/** Where the guide lies on its host, as the pages were built for it. */
const base = /href="([^"]*)icon\.svg"/u.exec(htmlOf(''))?.[1] ?? '/';

describe('every page', () => {
  it('is there', () => {
    for (const page of [
      '',
      'bench/',
      'worksheet/',
      'reference/',
      'sources/',
      'checks/',
      '404.html',
      'chapters/winding/',
    ])
      expect(pages).toContain(page);
    expect(pages.filter((page) => page.startsWith('reference/')).length).toBeGreaterThanOrEqual(7);
  });

  it.each(pages)('/%s holds nothing inline and carries the policy', (page) => {
    const html = htmlOf(page);
    expect(html).not.toMatch(/\sstyle=/u);
    expect(html).not.toMatch(/<style/u);
    expect(html).not.toMatch(/\son[a-z]+=/u);
    expect(html).not.toMatch(/javascript:/u);
    const scripts = [...html.matchAll(/<script\b([^>]*)>([\s\S]*?)<\/script>/gu)];
    expect(scripts.length).toBeGreaterThan(0);
    for (const [, attributes, inside] of scripts) {
      expect(attributes).toMatch(/\bsrc="/u);
      expect(inside?.trim()).toBe('');
    }
    const meta = /<meta http-equiv="Content-Security-Policy" content="([^"]*)"/u.exec(html)?.[1];
    expect(meta?.replaceAll('&#39;', "'")).toBe(policy);
  });

  it.each(pages)('/%s has no blank before a full stop or a comma', (page) => {
    // Templates are broken into lines, and a line break inside a link or before a comma would be seen as a blank.
    const inline = /<\/?(?:a|span|strong|em|code|cite|output|sub|sup)\b[^>]*>/gu;
    const text = htmlOf(page)
      .replace(/<(svg|math|head)\b[\s\S]*?<\/\1>/gu, 'x')
      .replace(inline, '')
      .replace(/\s+/gu, ' ')
      .replace(/<[^>]*>/gu, '\n');
    expect(text.length).toBeGreaterThan(200);
    expect(text.match(/.{0,40}[\p{L}\d)”] [.,;:!?)].{0,20}/gu) ?? []).toEqual([]);
  });

  const validator = new HtmlValidate(new FileSystemConfigLoader());

  it.each(pages)('/%s is valid HTML', async (page) => {
    const { results } = await validator.validateString(htmlOf(page), `${root}/dist/${fileOfPage(page)}`);
    const wrong = results.flatMap(({ messages }) =>
      messages.map(({ line, column, message, ruleId }) => `${line}:${column} ${ruleId}: ${message}`),
    );
    expect(wrong).toEqual([]);
  });
});

describe('links', () => {
  interface Link {
    readonly from: string;
    readonly to: string;
  }
  const links: Link[] = pages.flatMap((page) =>
    [...htmlOf(page).matchAll(/\s(?:href|src)="([^"]*)"/gu)].map(([, to = '']) => ({
      from: page,
      to: to.replaceAll('&amp;', '&'),
    })),
  );
  const inside = links.filter(({ to }) => !/^(?:https?|mailto|tel):/u.test(to));

  it('are many, so that a check of none does not pass for a check', () => {
    expect(inside.length).toBeGreaterThan(300);
  });

  it('lead to files of the guide, and fragments to elements with that id', () => {
    const there = new Set(files);
    const ids = new Map(
      pages.map((page) => [
        page,
        new Set([...htmlOf(page).matchAll(/\sid="([^"]*)"/gu)].map(([, id]) => id)),
      ]),
    );
    const broken = inside.filter(({ from, to }) => {
      const url = new URL(to, `https://guide.example${base}${from}`);
      if (!url.pathname.startsWith(base)) return true;
      const page = url.pathname.slice(base.length);
      if (!there.has(fileOfPage(page))) return true;
      const fragment = decodeURIComponent(url.hash.slice(1));
      return fragment !== '' && !ids.get(page)?.has(fragment);
    });
    expect(broken).toEqual([]);
  });

  it('outward ones use https and give nothing away', () => {
    const outward = links.filter(({ to }) => /^https?:/u.test(to));
    expect(outward.filter(({ to }) => !to.startsWith('https://'))).toEqual([]);
  });
});

describe('figures without script', () => {
  const regions = loadRegions();
  const text = readFileSync(`${root}/content/benches/first-row.yaml`, 'utf8');
  const read = readBenchFile(text, 'first-row.yaml', regions);
  if (!read.ok) throw new Error(read.problems.map((one) => one.text).join('\n'));
  const { bench } = read;
  const region = regions.find(({ id }) => id === bench.place.region);
  const station = region?.stations.find(({ id }) => id === bench.place.station);
  if (!region || !station) throw new Error('the example bench stands nowhere');
  const answers = answer({ bench, region, station });
  const manner = {
    system: region.units,
    locale: region.languages[0] ?? 'en',
    currency: region.tariff.currency,
  };

  it.each(calculators.map(({ id }) => id))('%s: every figure of the example stands on its page', (id) => {
    const html = htmlOf(`reference/${id}/`);
    const calculator = calculators.find((one) => one.id === id);
    const names = Object.entries<{ quantity: QuantityName }>(calculator?.figures ?? {});
    expect(names.length).toBeGreaterThan(0);
    for (const [name, { quantity }] of names) {
      const figures: Readonly<Record<string, Figure | null>> = answers[id].figures;
      const figure = figures[name];
      const shown = new RegExp(
        String.raw`<output data-figure="${id}\.${name}"[^>]*>([^<]*)</output>`,
        'u',
      ).exec(html);
      expect(shown, `${id}.${name} is on the page`).not.toBeNull();
      if (figure) expect(shown?.[1]?.trim()).toBe(figureText(figure, quantity, manner));
    }
  });
});
