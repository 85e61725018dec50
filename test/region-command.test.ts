import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { regionNotes } from '../content/region-notes.ts';
import { readRegions, type FileText } from '../content/regions.ts';
import { filesOf } from '../scripts/content-files.ts';
import { newRegion, region as command } from '../scripts/region.ts';
import { runHere } from './support/command.ts';
import { root } from './support/imports.ts';

const run = (...args: string[]) => runHere(command, root, args);

function made(...[id, given]: Parameters<typeof newRegion>): { own: FileText; bench: FileText } {
  const [own, bench] = newRegion(id, given);
  if (!own || !bench) throw new Error('two files were expected');
  return { own, bench };
}

const notesOf = (own: FileText): readonly string[] => {
  const read = readRegions([own], filesOf('stations'));
  if (!read.ok) throw new Error(read.problems.map(({ text }) => text).join('\n'));
  const [region] = read.regions;
  if (!region) throw new Error('no region');
  return regionNotes(region, own, filesOf('regions')).map(({ text }) => text);
};

describe('npm run region -- new', () => {
  it('writes a region that can be read, with what was given, and a bench that stands there', () => {
    const { own, bench } = made('north-vale', {
      name: 'North Vale',
      currency: 'GBP',
      price: '0.31 /kWh',
      station: 'Upper Vale',
      guide: 'https://vale.example/winter/',
      language: 'en-GB',
    });
    const read = readRegions([own], filesOf('stations'));
    expect(read).toMatchObject({
      ok: true,
      regions: [
        {
          id: 'north-vale',
          name: 'North Vale',
          languages: ['en-GB'],
          guide: 'https://vale.example/winter/',
          tariff: { currency: 'GBP' },
          stations: [{ id: 'upper-vale', name: 'Upper Vale' }],
        },
      ],
    });
    expect(bench.file).toBe('content/benches/north-vale-example.yaml');
    expect(bench.text).toMatch(/region: north-vale\n {2}station: upper-vale\n/u);
    // What the copied file says of itself is not true of the copy; what it says of a value is.
    expect(own.text).not.toMatch(/An invented region in metric units/u);
    expect(own.text).toMatch(/# Which rules for circuits hold here/u);
  });

  it('begins with the US example where the units are those', () => {
    expect(made('far-county', { name: 'Far County', units: 'us' }).own.text).toMatch(/paper: letter/u);
  });

  it.each([
    [{ voltage: '23 kV' }, /north-vale\.yaml, line \d+, mains\.voltage: .*must be in V, not in kV/u],
    [{ currency: 'pounds' }, /tariff\.currency: .*three letters/u],
    [{ record: 'seatle' }, /stations\.1\.record: .*seattle-2012-2015/u],
    [{ like: 'atlantis' }, /--like must be estermark, tallow or valdehielo/u],
  ])('refuses %j', (wrong, words) => {
    expect(() => newRegion('north-vale', { name: 'North Vale', ...wrong })).toThrow(words);
  });

  it('leaves a region alone that is there already', async () => {
    const before = readFileSync(join(root, 'content/regions/estermark.yaml'), 'utf8');
    const ran = await run('new', 'estermark', '--name', 'Mine');
    expect(ran).toMatchObject({ status: 2, stdout: '' });
    expect(ran.stderr).toMatch(/estermark\.yaml is there already/u);
    expect(readFileSync(join(root, 'content/regions/estermark.yaml'), 'utf8')).toBe(before);
  });

  it.each([
    [['new', 'North Vale', '--name', 'x'], /small letters.*Found: North Vale/u],
    [['new', 'north-vale'], /Give --name/u],
    [['begin', 'north-vale'], /"new ID", "check ID" or "station FILE".*Found: begin north-vale/u],
    [['check', 'atlantis'], /There is no content\/regions\/atlantis\.yaml/u],
    [['new', 'north-vale', '--nmae', 'x'], /--nmae/u],
  ])('%j ends with 2 and a message', async (args, words) => {
    const ran = await run(...args);
    expect(ran.status).toBe(2);
    expect(ran.stderr).toMatch(words);
    expect(ran.stderr).not.toMatch(/\n\s+at /u);
  });
});

describe('npm run region -- check', () => {
  it('says of an example what makes it one', async () => {
    const { status, stdout } = await run('check', 'tallow');
    expect(status).toBe(0);
    expect(stdout).toMatch(/tallow\.yaml can be built: Tallow County, 1 station/u);
    expect(stdout).toMatch(/guide: This address leads nowhere/u);
    expect(stdout).toMatch(/stations\.1\.record: This record holds \d winters/u);
  });

  it('lists the words of a copy that nobody has looked at', () => {
    const notes = notesOf(made('north-vale', { name: 'North Vale' }).own);
    for (const field of ['about', 'mains.source', 'cautions.1', 'office.name', 'office.contacts.1.how'])
      expect(
        notes.filter((note) => note.includes(`${field}: The same words stand in estermark`)),
      ).toHaveLength(1);
  });

  it.each([
    [{ voltage: '400 V' }, /mains\.voltage: Hardly any country has 400 V at 50 Hz/u],
    [{ rules: 'us' }, /mains\.rules: The US rules go with 60 Hz/u],
    [{ price: '2.8 /kWh' }, /tariff\.price: A kilowatt-hour seldom costs.*Found: 2.8 \/kWh/u],
  ])('wonders about %j', (given, words) => {
    expect(notesOf(made('north-vale', { name: 'North Vale', ...given }).own).join('\n')).toMatch(words);
  });
});
