import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import type { Situation } from '../calculators/calculator.ts';
import { answer } from '../calculators/index.ts';
import { cautions } from '../calculators/cautions.ts';
import { showQuantity } from '../calculators/quantities/show.ts';
import { ensureFonts } from '../scripts/fonts.ts';
import { saidBeside } from '../site/worksheet/build-side.ts';
import { reasonsAgainst } from '../site/worksheet/facts.ts';
import { margin, type Sheet } from '../site/worksheet/layout.ts';
import type { LeftOut } from '../site/worksheet/left-out.ts';
import { openTypeface } from '../site/worksheet/pdf.ts';
import { byWeight } from '../site/worksheet/weight.ts';
import { drawWorksheet, layOut, type WorksheetInput } from '../site/worksheet/worksheet.ts';
import { changed, startBench, type BenchChanges } from './support/benches.ts';
import { PDFDocument, faults, plain } from './support/pdf.ts';
import { inventedStation, metricRegion } from './support/situations.ts';
import { words } from './support/untidy.ts';

const fonts = await ensureFonts();
const { measure } = openTypeface(fonts);
const manner = { system: 'metric', locale: 'en' } as const;

const situationOf = (changes: BenchChanges = {}): Situation => ({
  bench: changed(startBench, { cover: { kind: 'film' }, ...changes }),
  region: metricRegion,
  station: inventedStation,
});

function inputOf(situation: Situation, leaveOut: readonly LeftOut[] = []): WorksheetInput {
  return {
    situation,
    answers: answer(situation),
    manner,
    paper: 'a4',
    fonts,
    link: 'https://guide.example/bench/#b=AAAA',
    version: { number: '1.0.0', date: '2026-11-25' },
    assumed: [],
    leaveOut,
  };
}

const textOf = ({ pages }: Sheet): string[] => pages.map(({ items }) => plain(items.map(words).join(' ')));

const input = inputOf(situationOf());
const sheet = layOut(input, measure);

describe('what is read at arm’s length', () => {
  it('is set in 12 pt and more, but for head and foot', () => {
    for (const { items, height } of sheet.pages)
      for (const item of items) {
        if (item.kind !== 'text') continue;
        const inMargin = item.box.y < margin || item.box.y + item.box.height > height - margin + 1;
        // A unit beside a large number is smaller than the number.
        const sizes = item.lines.flatMap(({ pieces }) => pieces.map(({ size }) => size));
        expect(Math.min(...sizes), words(item)).toBeGreaterThanOrEqual(inMargin ? 10 : 12);
      }
  });

  it('and 20 pt and more where it matters: outside temperatures, hours, settings, turns', () => {
    const large = sheet.pages
      .slice(0, 2)
      .flatMap(({ items }) => items)
      .filter((item) => item.kind === 'text' && (item.lines[0]?.pieces[0]?.size ?? 0) >= 20)
      .map((item) => plain(words(item)));
    const { winding, night, outage } = input.answers;
    const { control } = input.situation.bench;
    const show = (value: number | undefined, quantity: 'size' | 'temperature' | 'duration') =>
      plain(showQuantity(value ?? NaN, quantity, manner));
    for (const wanted of [
      show(winding.figures.pitch?.value, 'size'),
      show(winding.figures.gap?.value, 'size'),
      show(control.setPoint, 'temperature'),
      show(control.alarmLow, 'temperature'),
      show(control.alarmHigh, 'temperature'),
      // The colder of the night that is built for and of an ordinary winter.
      show(
        Math.min(
          night.figures.lowestRootTemperature?.value ?? NaN,
          night.figures.coldestOfWinter?.value ?? NaN,
        ),
        'temperature',
      ),
      show(night.figures.outside?.value, 'temperature'),
      show(outage.figures.hoursToRootLimit?.value, 'duration'),
    ])
      expect(large).toContain(wanted);
  });
});

it('gives each step of outside temperature its roots, its share of heat and its hours, as they are worked out', () => {
  const [, run = ''] = textOf(sheet);
  const { night, outage, watts } = input.answers;
  const built = night.figures.outside?.value ?? NaN;
  const rows = (night.tables?.['ladder']?.rows ?? []).filter(
    ({ outside }) => typeof outside === 'number' && Math.abs(outside - built) >= 2 && outside > built - 5,
  );
  expect(rows.length).toBeGreaterThan(1);
  for (const { outside, roots, on } of rows) {
    const holds = (outage.tables?.['ladder']?.rows ?? []).find((row) => row['outside'] === outside)?.[
      'roots'
    ];
    for (const [value, quantity] of [
      [outside, 'temperature'],
      [roots, 'temperature'],
      [on, 'share'],
      [holds, 'duration'],
    ] as const)
      if (typeof value === 'number') expect(run).toContain(plain(showQuantity(value, quantity, manner)));
  }
  expect(watts.figures.installed).not.toBeNull();
});

describe('blanks', () => {
  it('are filled by another library, which finds each by its name', async () => {
    const bytes = await drawWorksheet(input);
    const loading = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
    const file = await loading.promise;
    const filled: string[] = [];
    for (let number = 1; number <= file.numPages; number++) {
      const notes = (await (await file.getPage(number)).getAnnotations()) as {
        readonly id: string;
        readonly fieldName?: string;
        readonly alternativeText?: string;
      }[];
      for (const { id, fieldName, alternativeText } of notes) {
        if (fieldName === undefined) continue;
        expect(alternativeText, fieldName).not.toBe('');
        file.annotationStorage.setValue(id, { value: `of ${fieldName}` });
        filled.push(fieldName);
      }
    }
    const saved = await file.saveDocument();
    await loading.destroy();
    expect(faults(saved)).toBe('');
    const form = (await PDFDocument.load(saved)).getForm();
    expect(filled).toContain('price_sum');
    expect(filled).toContain('helper_number');
    expect(filled.filter((name) => name.startsWith('log_')).length).toBeGreaterThanOrEqual(22 * 8);
    for (const name of filled) expect(form.getTextField(name).getText()).toBe(`of ${name}`);
  }, 60_000);
});

describe('what is left out', () => {
  it.each([
    ['log', /Weekly log/u],
    ['buying', /What to buy/u],
    ['drawings', /Plan, 1:/u],
    ['notes', /Read before you build|What would save most/u],
  ] as const)('%s is not on the sheet, and everything else is', (part, sign) => {
    expect(textOf(sheet).join(' ')).toMatch(sign);
    const less = textOf(layOut(inputOf(input.situation, [part]), measure)).join(' ');
    expect(less).not.toMatch(sign);
    for (const kept of [
      'turn to turn',
      'low alarm, in pot',
      'The power fails',
      'Who to call',
      'Unplug before you touch',
    ])
      expect(less).toContain(kept);
  });
});

describe('a bench that must not be built', () => {
  const unsafe = {
    'turns that touch': { cable: { length: 300, leastGap: 0.2 } },
    'no protection against faults to ground': { supply: { protection: 'none' } },
    'a breaker that is too small': { supply: { breaker: 1 } },
    'a mix that freezes': { mix: { antifreeze: 'none' }, place: { designNight: 'own', ownLowest: -30 } },
    'roots that fall below their limit': { cover: { kind: 'none' } },
  } as const satisfies Record<string, BenchChanges>;

  it.each(Object.entries(unsafe))('%s: says so on both sides, reasons first, gravest first', (_, changes) => {
    const own = inputOf(situationOf(changes));
    const reasons = reasonsAgainst(own);
    expect(reasons.length).toBeGreaterThan(0);
    const pages = textOf(layOut(own, measure));
    for (const [side, title] of ['Not to be built as it stands', 'Not to be run as it stands'].entries()) {
      const page = pages[side] ?? '';
      let from = page.indexOf(title);
      expect(from).toBeGreaterThanOrEqual(0);
      for (const reason of reasons) {
        const at = page.indexOf(plain(reason));
        expect(at, reason).toBeGreaterThan(from);
        from = at;
      }
    }
    const all = pages.join(' ');
    for (const none of [
      'What to buy',
      'Fill and mix',
      'Weekly log',
      'low alarm, in pot',
      'When it gets cold',
    ])
      expect(all).not.toContain(none);
  });

  it('puts what kills people before what kills plants', () => {
    const warnings = [
      'roots-below-limit-in-snap',
      'mix-freezes',
      'turns-touch',
      'no-ground-fault-protection',
    ].map((code) => ({ code, level: 'stop', text: [code] }) as const);
    expect(byWeight(warnings).map(({ code }) => code)).toEqual(warnings.map(({ code }) => code).toReversed());
  });
});

describe('what is left out of a sheet', () => {
  // Those beside drawing and recipe are said there in words of their own.
  const beside: readonly string[] = saidBeside;
  const titles = Object.entries(cautions).flatMap(([id, { title }]) => (beside.includes(id) ? [] : [title]));

  it.each([[[]], [['log']], [['notes']], [['log', 'notes']], [['log', 'notes', 'drawings']]] as const)(
    'is never a caution: without %j',
    (leaveOut) => {
      const text = textOf(layOut(inputOf(situationOf(), leaveOut), measure)).join(' ');
      for (const title of titles) expect(text).toContain(title);
    },
  );
});
