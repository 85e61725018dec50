import { describe, expect, it } from 'vitest';
import { disagreements } from '../calculators/checks/disagreements.ts';
import { topics } from '../calculators/checks/index.ts';
import { readBuilt } from './support/site.ts';

const html = readBuilt('checks/index.html').toString('utf8');
const regions = html.split('<section ').slice(1);

describe('the page of checks', () => {
  it('shows every check of every topic in a table that can be scrolled to by keyboard', () => {
    expect(regions).toHaveLength(topics.length + 1);
    const [overview, ...tables] = regions;
    expect(overview?.match(/<th scope="row"/gu)).toHaveLength(topics.length);
    topics.forEach(({ label, checks }, index) => {
      const table = tables[index] ?? '';
      expect(table).toMatch(/^class="scroll"[^>]*tabindex="0"/u);
      expect(table).toContain(`aria-label="Checks: ${label}"`);
      expect(table.match(/<th scope="row"/gu), label).toHaveLength(checks.length);
    });
  });

  it('says how many there are and that all are met', () => {
    const count = topics.reduce((sum, { checks }) => sum + checks.length, 0);
    expect(html).toContain(`There are ${count} checks:`);
    expect(html).toContain('All of them lie within the allowance stated beside them.');
    expect(html).not.toContain('not met');
  });

  it('gives the reason for everything that may be further off than half a digit', () => {
    const reasons = new Set(
      topics.flatMap(({ checks }) => checks.flatMap(({ tolerance }) => tolerance?.because ?? [])),
    );
    for (const { id, checks } of topics) {
      const led = new Set(
        [...html.matchAll(new RegExp(`href="#${id}-([a-z])"`, 'gu'))].map(([, letter]) => letter),
      );
      const own = new Set(checks.flatMap(({ tolerance }) => tolerance?.because ?? []));
      expect(led.size, id).toBe(own.size);
      for (const letter of led) expect(html).toContain(`id="${id}-${letter}"`);
    }
    expect(reasons.size).toBeGreaterThan(10);
  });

  it('lists every disagreement before the tables', () => {
    const list = html.slice(html.indexOf('id="disagreements"'), html.indexOf(`id="${topics[0]?.id ?? ''}"`));
    expect(list.match(/<dt>/gu)).toHaveLength(disagreements.length);
  });

  it('is linked from the sources and from the reference', () => {
    for (const page of ['sources', 'reference']) {
      expect(readBuilt(`${page}/index.html`).toString('utf8')).toMatch(/href="[^"]*\/checks\/"/u);
    }
  });

  it('weighs no more than a photograph', () => {
    expect(html.length).toBeLessThan(400_000);
  });
});
