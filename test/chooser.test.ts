import { HtmlValidate, FileSystemConfigLoader } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { chooserPage } from '../site/chooser.ts';
import { policy } from '../site/policy.ts';
import { regions } from './support/regions.ts';

const [first] = regions;
if (!first) throw new Error('no region');
const odd = { ...first, id: 'odd', name: 'A <b>odd</b> & "quoted" one' };

describe('the page to choose a region on', () => {
  const page = chooserPage([...regions, odd], '/winter/');

  it('leads to each region in the order of their names, without script', () => {
    expect([...page.matchAll(/<a href="([^"]*)"/gu)].map(([, to]) => to)).toEqual([
      '/winter/odd/',
      '/winter/estermark/',
      '/winter/tallow/',
      '/winter/valdehielo/',
    ]);
    expect(page).not.toMatch(/<script|<style|\sstyle=|\son\w+=/u);
    expect(page.replaceAll('&#39;', "'")).toContain(policy);
    expect(page).toContain('A &lt;b&gt;odd&lt;/b&gt; &amp; &quot;quoted&quot; one');
  });

  it('says so where somebody asked for a page that is not there', () => {
    expect(chooserPage(regions, '/', true)).toContain('There is no page at this address');
    expect(page).not.toContain('There is no page');
  });

  it('is valid HTML', async () => {
    const { results } = await new HtmlValidate(new FileSystemConfigLoader()).validateString(
      page,
      'dist/index.html',
    );
    expect(
      results.flatMap(({ messages }) => messages.map(({ ruleId, message }) => `${ruleId}: ${message}`)),
    ).toEqual([]);
  });
});
