import { describe, expect, it } from 'vitest';
import { regionNotes } from '../content/region-notes.ts';
import { readRegions, type FileText } from '../content/regions.ts';
import { filesOf } from '../scripts/content-files.ts';

/** The file of a region, damaged in many ways, each of which a person could do to it: what it is told. */

const stations = filesOf('stations');
const others = filesOf('regions');
const whole = others.find(({ file }) => file.endsWith('estermark.yaml'))?.text ?? '';
const lineOf = (text: string, words: string): number => text.slice(0, text.indexOf(words)).split('\n').length;

/** What is wrong, or else what is odd, with a region that was changed in one place. */
function told(right: string, wrong: string): { readonly text: string; readonly changed: string } {
  expect(whole).toContain(right);
  const changed = whole.replace(right, wrong);
  const own: FileText = { file: 'content/regions/mine.yaml', text: changed };
  const read = readRegions([own], stations, [...others, own]);
  if (!read.ok) return { text: read.problems.map((one) => one.text).join('\n'), changed };
  const [region] = read.regions;
  // Of an example every word is left over from it; only what the change brought is of interest.
  const notes = region ? regionNotes(region, own, []) : [];
  const before = readRegions([{ ...own, text: whole }], stations);
  const usual =
    before.ok && before.regions[0]
      ? regionNotes(before.regions[0], { ...own, text: whole }, []).map((one) => one.text)
      : [];
  return {
    text: notes
      .map((one) => one.text)
      .filter((text) => !usual.includes(text))
      .join('\n'),
    changed,
  };
}

/** What stands in the file, what is put in its place, the line on which it is told, and words of the message. */
const damages: readonly [right: string, wrong: string, at: string | number, words: RegExp][] = [
  // Values.
  ['voltage: 230 V', 'voltage: 230', 'voltage: 230', /mains\.voltage: .*must have a unit/u],
  ['voltage: 230 V', 'voltage: 23 kV', 'voltage: 23 kV', /mains\.voltage: .*must be in V, not in kV/u],
  ['voltage: 230 V', 'voltage: 2300 V', 'voltage: 2300 V', /mains\.voltage: .*between 12.V and 480.V/u],
  ['voltage: 230 V', 'voltage: about 230 V', 'voltage: about', /mains\.voltage: .*Found: about 230 V/u],
  [
    'voltage: 230 V',
    'voltage: 320 V',
    'voltage: 320',
    /mains\.voltage: Hardly any country has 320 V at 50 Hz/u,
  ],
  [
    'voltage: 230 V',
    'voltage:',
    'voltage:',
    /mains\.voltage: Enter the voltage of the mains, such as 230.V/u,
  ],
  ['frequency: 50 Hz', 'frequency: 5 Hz', 'frequency: 5', /mains\.frequency: .*between 16.Hz and 400.Hz/u],
  ['frequency: 50 Hz', 'frequency: 50 V', 'frequency: 50 V', /mains\.frequency: .*must be in Hz/u],
  ['rules: iec', 'rules: nec', 'rules: nec', /mains\.rules: .*must be us or iec/u],
  ['rules: iec', 'rules: us', 'rules: us', /mains\.rules: The US rules go with 60 Hz/u],
  ['price: 0.28 /kWh', 'price: -0.28 /kWh', 'price: -0.28', /tariff\.price: .*must be between/u],
  ['price: 0.28 /kWh', 'price: 28 /kWh', 'price: 28', /tariff\.price: A kilowatt-hour seldom costs/u],
  ['price: 0.28 /kWh', 'price: 0.28 EUR', 'price: 0.28 EUR', /tariff\.price: .*must be in .*kWh/u],
  ['price: 0.28 /kWh', 'price: 20000 /kWh', 'price: 20000', /tariff\.price: .*must be between/u],
  ['currency: EUR', 'currency: Euro', 'currency: Euro', /tariff\.currency: .*three letters of a currency/u],
  ['currency: EUR', 'currency: XQX', 'currency: XQX', /tariff\.currency: .*a currency that there is/u],
  ['units: metric', 'units: imperial', 'units: imperial', /units: .*must be metric or us/u],
  ['units: metric', 'units: Metric', 'units: Metric', /units: .*did you mean metric/u],
  ['paper: a4', 'paper: A5', 'paper: A5', /paper: .*must be a4 or letter/u],
  ['languages: [en]', 'languages: [english]', 'languages: [english]', /languages\.1: .*language tag/u],
  ['languages: [en]', 'languages: [en_GB]', 'languages: [en_GB]', /languages\.1: .*language tag/u],
  ['languages: [en]', 'languages: en', 'languages: en', /languages: .*a list of 1 to 20 languages/u],
  ['languages: [en]', 'languages: []', 'languages: []', /languages: .*a list of 1 to 20 languages/u],
  [
    'guide: https://winter-bench.estermark.example/',
    'guide: winter-bench.estermark.example',
    'guide: winter',
    /guide: .*starts with https:\/\/ and ends with/u,
  ],
  [
    'guide: https://winter-bench.estermark.example/',
    'guide: https://winter-bench.estermark.example/guide',
    'guide: https',
    /guide: .*ends with \//u,
  ],
  ['name: Estermark\n', 'name:\n', 'name:', /name: Enter the name of the region/u],
  ['name: Estermark\n', `name: ${'Estermark '.repeat(12)}\n`, 'name: Est', /name: .*80/u],
  // Stations, plants, people.
  [
    'record: seattle-2012-2015',
    'record: seattle',
    'record: seattle',
    /stations\.1\.record: .*must be new-york-2012-2015 or seattle-2012-2015/u,
  ],
  ['id: lowfield', 'id: Low Field', 'id: Low', /stations\.1\.id: .*small letters, digits and hyphens/u],
  [
    'plants: [unknown, buxus',
    'plants: [unknown, boxus',
    'plants: [unknown, boxus',
    /plants\.2: .*did you mean buxus/u,
  ],
  [
    '  contacts:\n',
    '  contacts: []\n  people:\n',
    '  contacts:',
    /office\.contacts: .*a list of 1 to 10 contacts/u,
  ],
  [
    '      how: 000 555 0142\n',
    '',
    '    - who: Advice',
    /office\.contacts\.1\.how: Enter the way to reach them/u,
  ],
  // Names and shape.
  ['office:\n', 'offices:\n', 'offices:', /There is no "offices" here.*did you mean office/u],
  ['  rules: iec\n', '  rules: iec\n  phases: 3\n', 'phases: 3', /There is no "phases" in mains/u],
  ['units: metric\n', '', 'name:', /units: Select the system of units: metric or us/u],
  [
    '  frequency: 50 Hz\n',
    '',
    'mains:',
    /mains\.frequency: Enter the frequency of the mains, such as 50.Hz/u,
  ],
  [
    'units: metric\n',
    'units: metric\nunits: us\n',
    'units: us',
    /units: This name stands on line \d+ already/u,
  ],
  ['  voltage: 230 V', '\tvoltage: 230 V', '\tvoltage', /Indent with blanks, not with tabs/u],
  ['  voltage: 230 V', ' voltage: 230 V', '  rules: iec', /must start below each other/u],
  ['  voltage: 230 V', '  voltage 230 V', 'voltage 230', /A name must be followed by a colon and a blank/u],
  ['languages: [en]', 'languages: [en', 'units: metric', /every bracket must be closed/u],
  ['cautions:\n', 'cautions: none\nlater:\n', 'cautions: none', /cautions: .*a list of 0 to 20 cautions/u],
  [
    '  price: 0.28 /kWh\n  currency: EUR\n',
    '  price: {amount: 0.28 /kWh}\n  currency: EUR\n',
    'price: {amount',
    /tariff\.price: /u,
  ],
  [
    'name: Estermark\n',
    'name: Estermark\nlike: talow\n',
    'like: talow',
    /like: This must name another region.*did you mean tallow/u,
  ],
];

describe('a region that was damaged', () => {
  it('was damaged in forty ways and more', () => expect(damages.length).toBeGreaterThanOrEqual(40));

  it.each(damages)('%j as %j is told', (right, wrong, at, words) => {
    const { text, changed } = told(right, wrong);
    const line = typeof at === 'number' ? at : lineOf(changed, at);
    const message = text.split('\n').find((one) => words.test(one));
    expect(message, text).toMatch(new RegExp(`^content/regions/mine\\.yaml, line ${line}[,:]`, 'u'));
    // It says what is the matter in a sentence, and nothing of the program.
    expect(message).toMatch(/[.?](?: Found: .+)?$/u);
    expect(message).not.toMatch(/undefined|null|NaN|\[object|Invalid input|zod|expected string/u);
  });
});

describe('a region that is like another', () => {
  const own = (text: string): FileText => ({ file: 'content/regions/mine.yaml', text });
  const read = (text: string, more: readonly FileText[] = []) =>
    readRegions([own(text)], stations, [...others, own(text), ...more]);
  const small = `name: Mine
like: tallow
guide: https://mine.example/
mains:
  voltage: 240 V
cautions:
  - Only ours.
`;

  it('has what it says itself, and all else of the other', () => {
    expect(read(small)).toMatchObject({
      ok: true,
      regions: [
        {
          id: 'mine',
          name: 'Mine',
          units: 'us',
          mains: { voltage: 240, frequency: 60, rules: 'us' },
          cautions: ['Only ours.'],
          stations: [{ id: 'millpond' }],
        },
      ],
    });
  });

  it('is told by both files and lines where what it takes over is wrong', () => {
    const base = {
      file: 'content/regions/base.yaml',
      text: whole.replace('frequency: 50 Hz', 'frequency: 50 V'),
    };
    const text = small.replace('tallow', 'base');
    const result = readRegions([own(text)], stations, [base, own(text)]);
    const [first] = result.ok ? [] : result.problems;
    expect(first?.text).toMatch(
      /^content\/regions\/base\.yaml, line 14, mains\.frequency: .*must be in Hz.*\(content\/regions\/mine\.yaml, line 2, takes it over\.\)$/u,
    );
  });

  it('is told its own file where its own is wrong', () => {
    const result = read(small.replace('240 V', '240'));
    expect(result.ok ? '' : result.problems[0]?.text).toMatch(
      /^content\/regions\/mine\.yaml, line 5, mains\.voltage: /u,
    );
  });

  it('may be like one that is like a third, but not in a circle', () => {
    const middle = { file: 'content/regions/middle.yaml', text: 'like: estermark\npaper: letter\n' };
    expect(read(small.replace('tallow', 'middle'), [middle])).toMatchObject({
      ok: true,
      regions: [{ paper: 'letter', units: 'metric' }],
    });
    const circle = { ...middle, text: 'like: mine\n' };
    const result = read(small.replace('tallow', 'middle'), [circle]);
    expect(result.ok ? '' : result.problems[0]?.text).toMatch(
      /middle\.yaml, line 1, like: Regions may not be like each other in a circle/u,
    );
  });

  it('is asked for a name and an address of its own', () => {
    const text = 'like: tallow\n';
    const result = read(text);
    if (!result.ok || !result.regions[0]) throw new Error('not read');
    const notes = regionNotes(result.regions[0], own(text), others).map((one) => one.text);
    expect(notes.filter((note) => /Two regions have this (?:name|guide)/u.test(note))).toHaveLength(2);
    expect(notes.filter((note) => /same words/u.test(note))).toEqual([]);
  });
});
