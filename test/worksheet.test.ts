import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { allFields } from '../calculators/bench/all-fields.ts';
import type { Bench } from '../calculators/bench/fields.ts';
import { amountsOf, type Calculator, type Situation } from '../calculators/calculator.ts';
import { cautions } from '../calculators/cautions.ts';
import { answer, calculators, type CalculatorId } from '../calculators/index.ts';
import { quantities } from '../calculators/quantities/quantity.ts';
import { showQuantity, type Manner } from '../calculators/quantities/show.ts';
import { readBenchFile } from '../content/bench-file.ts';
import { benchAddress } from '../content/link.ts';
import { ensureFonts, makeFonts } from '../scripts/fonts.ts';
import { filesOf } from '../scripts/content-files.ts';
import { figureText, sentenceText } from '../site/widgets/text.ts';
import { given, sheetCalculators } from '../site/worksheet/facts.ts';
import { points, type Item, type PaperName, type Sheet } from '../site/worksheet/layout.ts';
import { letters } from '../site/worksheet/letters.ts';
import { openTypeface } from '../site/worksheet/pdf.ts';
import { wrap } from '../site/worksheet/text.ts';
import { drawWorksheet, layOut, type WorksheetInput } from '../site/worksheet/worksheet.ts';
import { assertWritable, writable } from '../site/worksheet/writable.ts';
import { anyBench, changed, startBench, type BenchChanges } from './support/benches.ts';
import { root } from './support/imports.ts';
import { expectNear } from './support/near.ts';
import {
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFName,
  faults,
  fontList,
  information,
  nodesOf,
  operatorsOf,
  pictureOf,
  pictures,
  plain,
  readPdf,
  type Picture,
} from './support/pdf.ts';
import { regions } from './support/regions.ts';
import { inventedStation, metricRegion } from './support/situations.ts';
import { untidy, words } from './support/untidy.ts';

const fonts = await ensureFonts();
const typeface = openTypeface(fonts);
const edition = { number: '9.8.7', date: '2026-11-25' };
const metric: Manner = { system: 'metric', locale: 'en' };
const us: Manner = { system: 'us', locale: 'en-US' };

/** What a worksheet of this situation is made from. */
const inputOf = (situation: Situation, paper: PaperName, manner: Manner): WorksheetInput => ({
  situation,
  answers: answer(situation),
  manner,
  paper,
  fonts,
  link: benchAddress(situation.region.guide, situation.bench),
  version: edition,
  assumed: [],
});

/** The example benches of the guide, each where it stands. */
const examples = filesOf('benches').map(({ file, text }) => {
  const read = readBenchFile(text, file, regions);
  if (!read.ok) throw new Error(read.problems.map((one) => one.text).join('\n'));
  const region = regions.find(({ id }) => id === read.bench.place.region);
  const station = region?.stations.find(({ id }) => id === read.bench.place.station);
  if (!region || !station) throw new Error(`${file} stands nowhere`);
  return { name: file, situation: { bench: read.bench, region, station }, assumed: read.assumed };
});

/** Warnings whose last figure is the setting that is advised. */
const saidByAdvice: Readonly<Record<string, number>> = {
  'limit-thermostat': -1,
  'loop-sensor-rests': -1,
  'high-alarm-at-work': -1,
  'high-alarm-behind-limit': -1,
  // What the loop comes to, what cuts, and where to pause instead; then what else would do.
  'limit-cuts-in-thaw': 2,
};

const papers: readonly PaperName[] = ['a4', 'letter'];

/** Every example bench on both papers, in the units of its region. */
const sheets = await Promise.all(
  examples.flatMap(({ name, situation, assumed }) =>
    papers.map(async (paper) => {
      const input = { ...inputOf(situation, paper, situation.region.units === 'us' ? us : metric), assumed };
      const layout = layOut(input, typeface.measure);
      return { name: `${name} on ${paper}`, paper, input, layout, bytes: await drawWorksheet(input) };
    }),
  ),
);

/** A bench that can be built, with some fields changed, at the invented station. */
const buildable = (changes: BenchChanges = {}): Situation => ({
  // Without a cover the roots of the start bench fall below their limit at this station.
  bench: changed(startBench, {
    ...changes,
    cover: { kind: 'film', ...changes.cover },
    identity: { house: '', notes: '', ...changes.identity },
  }),
  region: metricRegion,
  station: inventedStation,
});

/** Everything that a sheet says in words, page by page. */
const textOf = ({ pages }: Sheet): string[] => pages.map(({ items }) => plain(items.map(words).join(' ')));

it('has benches to look at', () => {
  expect(examples.length).toBeGreaterThanOrEqual(2);
});

describe.each(sheets)('the worksheet of $name', ({ paper, input, layout, bytes }) => {
  const { situation, manner } = input;

  it('has four sides on the paper of its region, two leaves: two for the wall, one for the log, one to read once', async () => {
    const file = await PDFDocument.load(bytes);
    // ISO 216: A4 is 210 by 297 mm; ANSI Letter is 8.5 by 11 in.
    const [width, height] = paper === 'a4' ? [210 / 25.4, 297 / 25.4] : [8.5, 11];
    // On the other paper, which is shorter or narrower, what has no room goes on, on one more leaf at most.
    const own = paper === input.situation.region.paper;
    expect(file.getPageCount()).toBeGreaterThanOrEqual(4);
    expect(file.getPageCount()).toBeLessThanOrEqual(own ? 4 : 6);
    const heads = layout.pages.map(({ items }) => items.map(words).find((text) => text !== ''));
    for (const [index, side] of ['one: build', 'two: run', 'three: log', 'four: notes'].entries())
      expect(heads[index]).toContain(`side ${side}`);
    // Nothing that is needed at the bench stands behind the first leaf.
    if (own) expect(heads.join()).not.toMatch(/(build|run), continued/u);
    for (const page of file.getPages()) {
      expectNear(page.getWidth() / 72, width, 0.001, 'width [in]');
      expectNear(page.getHeight() / 72, height, 0.001, 'height [in]');
    }
  });

  it('is sound, small, and has every face in it', () => {
    expect(faults(bytes)).toBe('');
    expect(bytes.length).toBeLessThan(200_000);
    const faces = fontList(bytes).split('\n').slice(2).filter(Boolean);
    expect(faces).toHaveLength(2);
    // Columns from the right: object, generation, to Unicode, subset, embedded.
    for (const face of faces) expect(face).toMatch(/yes\s+no\s+yes\s+\d+\s+\d+$/u);
  });

  it('gives back every word that it shows, in the order of reading', async () => {
    const { pages } = await readPdf(bytes);
    layout.pages.forEach(({ items }, index) => {
      const read = plain(pages[index]?.text ?? '');
      let from = 0;
      for (const item of items) {
        const text = plain(words(item));
        if (text === '') continue;
        const at = read.indexOf(text, from);
        expect(at, `"${text}" after "${read.slice(Math.max(0, from - 40), from)}"`).toBeGreaterThanOrEqual(0);
        from = at + text.length;
      }
    });
  });

  it('gives back every figure that the sheet is for, signs and units included', async () => {
    const { pages } = await readPdf(bytes);
    const read = plain(pages.map(({ text }) => text).join(' '));
    const { watts, winding, mix, loop, circuit, night, outage } = input.answers;
    const shown = [
      [night.figures.lowestRootTemperature, 'temperature'],
      [watts.figures.required, 'power'],
      [watts.figures.installed, 'power'],
      [winding.figures.turns, 'count'],
      [outage.figures.hoursToRootLimit, 'duration'],
      [circuit.figures.longestFeeder, 'length'],
      [winding.figures.pitch, 'size'],
      [winding.figures.gap, 'size'],
      [mix.figures.concentrateVolume, 'volume'],
      [mix.figures.waterVolume, 'volume'],
      [mix.figures.freezingPoint, 'temperature'],
      [mix.figures.liquidTo, 'temperature'],
      [loop.figures.fillLevel, 'size'],
      [loop.figures.likelyRise, 'size'],
      [loop.figures.standpipeLength, 'size'],
      [circuit.figures.current, 'current'],
      [circuit.figures.voltageDrop, 'share'],
      [circuit.figures.smallestBreaker, 'breakerSize'],
    ] as const;
    for (const [figure, quantity] of shown) {
      expect(figure, quantity).not.toBeNull();
      expect(read).toContain(plain(figureText(figure, quantity, manner)));
    }
    const { lowestRootTemperature } = situation.bench.plants;
    expect(read).toContain(plain(showQuantity(lowestRootTemperature, 'temperature', manner)));
  });

  it('names who to call, what comes first, what was assumed, and of which edition it is', () => {
    const [, run = ''] = textOf(layout);
    for (const { who, how } of situation.region.office.contacts) {
      expect(run).toContain(plain(who));
      expect(run).toContain(plain(how));
    }
    expect(run).toContain('Cable’s sheet, local code, licensed electrician come first');
    const all = textOf(layout).join(' ');
    const { hoursToRootLimit } = input.answers.outage.figures;
    expect(hoursToRootLimit).not.toBeNull();
    expect(run).toContain(plain(figureText(hoursToRootLimit, 'duration', manner)));
    for (const caution of situation.region.cautions) expect(all).toContain(plain(caution));
    expect(all).toContain('Start values taken for');
    expect(all).toMatch(/Figures rest on \d+ published sources/u);
    expect(run).toContain('9.8.7 of 2026-11-25');
  });

  it('says each warning, in its own words or by all of its figures', () => {
    const all = textOf(layout).join(' ');
    const warnings = sheetCalculators.flatMap((id) => input.answers[id as CalculatorId].warnings);
    expect(warnings.length).toBeGreaterThan(0);
    const untold = warnings.filter(({ code, level, text }) => {
      const spoken = text.map((part) => (typeof part === 'string' ? part : sentenceText([part], manner)));
      const words = plain(spoken.join(''));
      if (all.includes(words)) return false;
      expect(level, `${code} is said word by word`).not.toBe('stop');
      const figures = amountsOf(text).map((one) => plain(sentenceText([one], manner)));
      // Of settings the sheet says what is set and what to set, and not what happens without it.
      const advice = saidByAdvice[code];
      const needed = advice === undefined ? figures : [figures.at(advice) ?? ''];
      // Limits that were typed are said without zeros behind their point.
      return needed.length === 0 || !needed.every((one) => all.includes(one) || all.includes(given(one)));
    });
    expect(untold.map(({ code }) => code)).toEqual([]);
  });

  it.each(calculators.filter(({ id }) => !sheetCalculators.includes(id)))(
    '$id, whose warnings it leaves out, never says that a bench must not be built',
    ({ id }: Calculator) => {
      const source = readFileSync(join(root, 'calculators', 'questions', `${id}.ts`), 'utf8');
      expect(source).toContain("id: '");
      expect(source).not.toMatch(/\bstop\(/u);
    },
  );

  it('says each caution that its calculators name, on one side or the other', () => {
    const all = textOf(layout).join(' ');
    const named = new Set(calculators.flatMap((one: Calculator) => one.cautions));
    for (const id of named)
      // Two titles are said as what to do instead.
      if (id !== 'heat-and-plastic') expect(all).toContain(cautions[id].title.replace(/\.$/u, ''));
    expect(all).toContain('Never heat the pipe empty');
  });

  it('puts ink where every word, drawing and code belongs, and none at the edge', () => {
    const dpi = 120;
    pictures(bytes, dpi).forEach((picture, index) => {
      const items = layout.pages[index]?.items ?? [];
      // Head and foot, and what went on.
      expect(items.length).toBeGreaterThan(3);
      for (const item of items) inked(item, picture);
      const { width, height } = layout.pages[index] ?? { width: 0, height: 0 };
      // Printers leave about 5 mm blank (from memory).
      const blank = points(5);
      for (const edge of [
        { x: 0, y: 0, width, height: blank },
        { x: 0, y: height - blank, width, height: blank },
        { x: 0, y: 0, width: blank, height },
        { x: width - blank, y: 0, width: blank, height },
      ])
        expect(picture.ink(edge), 'ink at the edge').toBe(0);
    });
  });

  it('is tagged: headings, lists, tables, drawings with words, fields, all in the order of reading', async () => {
    const { pages, info, metadata, marks } = await readPdf(bytes);
    expect(information(bytes)).toMatch(/Tagged:\s+yes/u);
    expect(marks.get('Marked')).toBe(true);
    expect(info['Language']).toBe(manner.locale);
    expect(metadata).toContain('<pdfuaid:part>1</pdfuaid:part>');
    expect(metadata).toContain(`Worksheet: ${situation.bench.identity.name}`);
    const roles = pages.map(({ structure }) => nodesOf(structure).map(({ role }) => role));
    expect(roles[0]?.filter((role) => role === 'H1')).toHaveLength(1);
    for (const role of ['H1', 'H2', 'P', 'L', 'LI', 'Lbl', 'LBody', 'Table', 'TR', 'TH', 'TD', 'Figure'])
      expect(roles[0]).toContain(role);
    expect(roles[0]).toContain('Link');
    for (const role of ['H2', 'P', 'L', 'Table', 'Form', 'Figure']) expect(roles[1]).toContain(role);
    const drawings = layout.pages[0]?.items.flatMap((item) => (item.kind === 'figure' ? [item] : [])) ?? [];
    const figures = nodesOf(pages[0]?.structure ?? {}).filter(({ role }) => role === 'Figure');
    expect(drawings).toHaveLength(3);
    const [code, ...drawn] = figures.map(({ alt }) => alt);
    expect(code).toContain('QR code');
    expect(drawn).toEqual(drawings.map(({ drawing }) => drawing.description));
  });

  it('has blanks that can be filled in, each with words for those who cannot see it', async () => {
    const file = await PDFDocument.load(bytes);
    const fields = file.getForm().getFields();
    const names = fields.map((field) => field.getName());
    expect(new Set(names).size).toBe(names.length);
    expect(names).toContain('helper');
    expect(names).toContain('price_1');
    for (const column of ['date', 'outside', 'house', 'under', 'roots', 'loop', 'meter', 'who'])
      for (let row = 1; row <= 22; row++) expect(names).toContain(`log_${row}_${column}`);
    for (const field of fields) {
      // A point in a name would nest the fields.
      expect(field.getName()).toMatch(/^\w+$/u);
      const { dict } = field.acroField;
      expect(dict.has(PDFName.of('TU'))).toBe(true);
      expect(dict.has(PDFName.of('StructParent'))).toBe(true);
      file.getForm().getTextField(field.getName()).setText(`x ${field.getName()}`);
    }
    const filled = await readPdf(await file.save());
    for (const name of names) expect(filled.fields.get(name)?.[0]?.value).toBe(`x ${name}`);
  });

  it('opens this bench in the guide when its code is scanned', () => {
    const item = layout.pages[0]?.items.find(({ kind }) => kind === 'code');
    if (!item) throw new Error('no code on side one');
    // ISO/IEC 18004: four modules of quiet zone on each side. Read at arm's length: 25 mm and more.
    expect(item.box.width).toBeGreaterThanOrEqual(points(25));
    expect(scanned(pictureOf(bytes, 300, 1, item.box))).toBe(input.link);
  });

  it('draws its plan, section and winding to the scales that it states', async () => {
    const [operators = ''] = await operatorsOf(bytes);
    const [build = ''] = textOf(layout);
    const scaleOf = (title: string) => {
      const found = new RegExp(`${title}, 1:(\\d+)`, 'u').exec(build);
      expect(found, `a scale of the ${title}`).not.toBeNull();
      return Number(found?.[1]);
    };
    const [, plan = '', section = '', winding = ''] = figuresIn(operators);
    const [whole = 0, half = 0] =
      layout.pages[0]?.items.flatMap((item) => (item.kind === 'figure' ? [item.enlarged] : [])) ?? [];
    const within = 0.5;
    const onPaper = (metres: number, title: string) => (metres * 1000) / scaleOf(title);
    const { bench } = situation;
    // The bench from above is the widest closed outline; 0.5 mm is the pen of outlines.
    const outline = widest(paths(plan).filter(({ closed, pen }) => closed && near(pen, 0.5 * whole)));
    expectNear(
      outline.width,
      onPaper(bench.frame.length, 'Plan'),
      within,
      'length of the bench on the plan [mm]',
    );
    expectNear(
      outline.height,
      onPaper(bench.frame.width, 'Plan'),
      within,
      'width of the bench on the plan [mm]',
    );
    // The bench top is the widest line of the pen that nothing else has, 0.8 mm.
    const top = widest(paths(section).filter(({ pen }) => near(pen, 0.8 * half)));
    expectNear(top.width, onPaper(bench.frame.width, 'Section'), within, 'width of the bench top [mm]');
    // The pipe from the side is its two edges, the widest lines of the outline's pen.
    const edges = paths(winding)
      .filter(({ pen, height }) => near(pen, 0.5 * half) && height === 0)
      .sort((a, b) => b.width - a.width)
      .slice(0, 2);
    const [one, two] = edges.map(({ y }) => y);
    const { outsideDiameter } = pipeTable(bench);
    expectNear(
      Math.abs((one ?? 0) - (two ?? 0)),
      onPaper(outsideDiameter, 'Winding the cable'),
      within,
      'pipe across [mm]',
    );
  });

  it('marks all that it paints as part of the text or as ornament', async () => {
    for (const operators of await operatorsOf(bytes)) {
      let depth = 0;
      for (const line of operators.split('\n')) {
        if (/ (BDC|BMC)$/u.test(line)) depth++;
        else if (line === 'EMC') depth--;
        else expect(depth, `outside of all marks: ${line.slice(0, 60)}`).toBe(1);
      }
      expect(depth).toBe(0);
    }
  });

  it('ties every mark and every field to its part, and back', async () => {
    const file = await PDFDocument.load(bytes);
    const tree = file.catalog.lookup(PDFName.of('StructTreeRoot'), PDFDict);
    const numbers = tree.lookup(PDFName.of('ParentTree'), PDFDict).lookup(PDFName.of('Nums'), PDFArray);
    const parents = new Map<number, unknown>();
    for (let index = 0; index < numbers.size(); index += 2)
      parents.set(Number(String(numbers.get(index))), numbers.lookup(index + 1));
    const operators = await operatorsOf(bytes);
    file.getPages().forEach(({ node }, index) => {
      const marks = [...(operators[index] ?? '').matchAll(/\/MCID (\d+)>> BDC/gu)].map(([, id]) =>
        Number(id),
      );
      const key = Number(String(node.get(PDFName.of('StructParents'))));
      const parts = parents.get(key);
      if (!(parts instanceof PDFArray)) throw new Error('no parts of a page');
      expect(marks).toEqual(Array.from({ length: parts.size() }, (_, number) => number));
      for (const mark of marks) {
        const kids = parts.lookup(mark, PDFDict).lookup(PDFName.of('K'), PDFArray);
        expect(String(kids)).toContain(`/MCID ${mark}`);
      }
      const annotations = node.lookup(PDFName.of('Annots'));
      if (annotations instanceof PDFArray)
        for (let number = 0; number < annotations.size(); number++) {
          const at = annotations.lookup(number, PDFDict).get(PDFName.of('StructParent'));
          const part = parents.get(Number(String(at)));
          expect(part instanceof PDFDict && String(part.get(PDFName.of('K')))).toContain('OBJR');
        }
      expect(String(node.get(PDFName.of('Tabs')))).toBe('/S');
    });
  });

  it('gives the same bytes again', async () => {
    expect(hash(await drawWorksheet(input))).toBe(hash(bytes));
  });
});

const hash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

it('gives the same bytes in another process, time zone and language', () => {
  const sheet = sheets[0];
  if (!sheet) throw new Error('no sheet');
  const script = `
    import { createHash } from 'node:crypto';
    import { readFileSync } from 'node:fs';
    import { answer } from './calculators/index.ts';
    import { ensureFonts } from './scripts/fonts.ts';
    import { drawWorksheet } from './site/worksheet/worksheet.ts';
    const input = JSON.parse(readFileSync(0, 'utf8'));
    const bytes = await drawWorksheet({ ...input, answers: answer(input.situation), fonts: await ensureFonts() });
    console.log(createHash('sha256').update(bytes).digest('hex'));`;
  const { answers: _answers, fonts: _fonts, ...rest } = sheet.input;
  const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', script], {
    cwd: root,
    input: JSON.stringify(rest),
    encoding: 'utf8',
    env: { ...process.env, TZ: 'Asia/Tokyo', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' },
  });
  expect(stdout.trim(), stderr).toBe(hash(sheet.bytes));
}, 60_000);

describe('the fonts', () => {
  it('are the same whenever they are made, and keep every letter of their list', async () => {
    const [one, two] = [await makeFonts(), await makeFonts()];
    expect(hash(one.regular)).toBe(hash(two.regular));
    expect(hash(one.bold)).toBe(hash(two.bold));
    expect(hash(one.regular)).toBe(hash(fonts.regular));
    for (const letter of letters) expect(typeface.measure(letter, 10, true), letter).toBeGreaterThan(0);
  });

  it('have their licence beside them', () => {
    const licence = readFileSync(join(root, '.cache/fonts/inter-OFL.txt'), 'utf8');
    expect(licence).toContain('SIL Open Font License, Version 1.1');
  });

  it('have every letter that the guide itself can put on a sheet', () => {
    const own = [
      ...allFields.flatMap(({ field }) => [
        field.label,
        ...(field.shape === 'choice' ? Object.values(field.options).map(({ label }) => label) : []),
        ...(field.shape === 'number' ? [field.empty ?? ''] : []),
      ]),
      ...calculators.flatMap((one: Calculator) => Object.values(one.figures).map(({ label }) => label)),
      ...Object.values(cautions).flatMap(({ title, short }) => [title, short]),
      ...Object.values(quantities).flatMap(({ shown }) => Object.values(shown)),
    ];
    expect(own.length).toBeGreaterThan(200);
    for (const text of own) expect(() => assertWritable(text)).not.toThrow();
  });

  it('stop the sheet at a letter of our own that they lack, and say which', () => {
    expect(() => typeface.measure('snow ❄', 12, false)).toThrow(/U\+2744.*snow/u);
  });
});

it('reads "−2.0 °C" back with its minus', async () => {
  const situation = buildable({ plants: { lowestRootTemperature: -2 } });
  const { pages } = await readPdf(await drawWorksheet(inputOf(situation, 'a4', metric)));
  expect(plain(pages[1]?.text ?? '')).toContain('Your limit −2.0 °C');
});

describe('words of growers', () => {
  const names = [
    'Žluťoučký kůň',
    'Ærø',
    'Ñandú',
    'Ελλάδα',
    'Țepeș',
    'Київ',
    'Nguyễn',
    'Đà Nẵng',
    'Ŵyn',
    'Łódź',
  ];

  it('are drawn and read back in the alphabets of Europe and in Vietnamese', async () => {
    const situation = buildable({
      identity: {
        name: names.slice(0, 4).join(' '),
        house: names.slice(4, 7).join(' '),
        notes: names.join(' '),
      },
    });
    const input = inputOf(situation, 'a4', metric);
    const bytes = await drawWorksheet(input);
    const { pages, info } = await readPdf(bytes);
    for (const name of names) expect(plain(pages[0]?.text ?? '')).toContain(name);
    expect(info['Title']).toContain('Žluťoučký kůň');
    const [picture] = pictures(bytes, 120);
    for (const item of layOut(input, typeface.measure).pages[0]?.items ?? [])
      if (picture) inked(item, picture);
    expect(plain(pages[0]?.text ?? '')).not.toContain('□');
  });

  it('take composed letters, drop what has no ink, and show a box for what cannot be printed', () => {
    expect(writable('Z\u030cla\u0301').text).toBe('Žlá');
    expect(writable('a\u200bb\u00adc\u200fd')).toEqual({ text: 'abcd', unknown: [] });
    expect(writable('one\n\ttwo  three').text).toBe('one two three');
    expect(writable('frost 🌨️ at 5')).toEqual({ text: 'frost □ at 5', unknown: ['🌨️'] });
    expect(writable('👩‍🌾')).toEqual({ text: '□', unknown: ['👩‍🌾'] });
    expect(writable('苗床').text).toBe('□□');
    expect(writable('x\u0331').text).toBe('□');
  });

  it('do not stop the sheet in any script, and the sheet says what a box stands for', async () => {
    const situation = buildable({
      identity: { name: '苗床 1 🌱', house: 'بيت زجاجي', notes: 'שלום नमस्ते 👨‍👩‍👧 fine' },
    });
    const bytes = await drawWorksheet(inputOf(situation, 'letter', us));
    const { pages } = await readPdf(bytes);
    const read = plain(pages[0]?.text ?? '');
    expect(read).toContain('□□ 1 □');
    expect(read).toContain('□ stands for a letter that this sheet cannot print');
    expect(faults(bytes)).toBe('');
  });

  it.each([
    ['long words', 'Wintergreen seedbench of the northern nursery by the old canal, third row, W end'],
    ['one long word', 'W'.repeat(80)],
    ['wide words', 'WWWWWWWWW '.repeat(8).trim()],
  ])('of full length are neither cut nor set over one another: %s', (_, name) => {
    expect([...name].length).toBeLessThanOrEqual(80);
    for (const paper of papers) {
      const situation = buildable({ identity: { name, house: name, notes: 'Wet mine '.repeat(33).trim() } });
      const layout = layOut(inputOf(situation, paper, metric), typeface.measure);
      expect(untidy(layout)).toEqual([]);
      expect(textOf(layout)[0]?.replaceAll(' ', '')).toContain(name.replaceAll(' ', ''));
    }
  });
});

describe('a bench that must not be built', () => {
  const situation = buildable({ cable: { length: 300, leastGap: 0.2 } });
  const input = inputOf(situation, 'a4', metric);
  const layout = layOut(input, typeface.measure);

  it('says so first, in a frame, with every reason', () => {
    const stops = Object.values(input.answers).flatMap(({ warnings }) =>
      warnings.filter(({ level }) => level === 'stop'),
    );
    expect(stops.length).toBeGreaterThan(0);
    const [first = ''] = textOf(layout);
    expect(first).toContain('Not to be built as it stands');
    expect(first.indexOf('Not to be built')).toBeLessThan(first.indexOf('Plan'));
    for (const { text } of stops) expect(first).toContain(plain(sentenceText(text, metric)));
  });

  it('says so on its other side too', () => {
    expect(textOf(layout)[1]).toContain('not to be built');
    expect(textOf(layout)[1]).toContain('Not to be run as it stands');
  });

  it('has no list of what to buy and no filling', () => {
    const good = textOf(layOut(inputOf(buildable(), 'a4', metric), typeface.measure)).join(' ');
    for (const title of ['What to buy', 'Fill and mix']) {
      expect(textOf(layout).join(' ')).not.toContain(title);
      expect(good).toContain(title);
    }
  });

  it('says on its first page when a side goes on behind the two', () => {
    const long = Array.from(
      { length: 12 },
      (_, index) => `Local caution ${index}: ${'wet snow '.repeat(18)}`,
    );
    const where = { ...situation, region: { ...metricRegion, cautions: long } };
    const sheet = layOut(inputOf(where, 'letter', metric), typeface.measure);
    expect(sheet.pages.length).toBeGreaterThan(2);
    expect(untidy(sheet)).toEqual([]);
    expect(textOf(sheet)[0]).toContain(`of ${sheet.pages.length}`);
    expect(textOf(sheet).slice(0, 4).join(' ')).toMatch(/goes on on page \d/u);
    for (const caution of long) expect(textOf(sheet).join(' ')).toContain(plain(caution));
  });
});

describe('any bench at all', () => {
  it('becomes a sound PDF', async () => {
    for (const bench of fc.sample(anyBench, { seed: 7, numRuns: 4 })) {
      const situation = { bench, region: metricRegion, station: inventedStation };
      expect(faults(await drawWorksheet(inputOf(situation, 'a4', metric)))).toBe('');
    }
  }, 60_000);
});

describe('lines', () => {
  const measure = (text: string, size: number) => [...text].length * size * 0.5;
  const lines = (text: string, width: number) =>
    wrap([{ text }], 10, width, measure).map(({ pieces }) => pieces.map((one) => one.text).join(''));

  it('break at blanks, but not at the narrow blank between a number and its unit', () => {
    expect(lines('one two three', 35)).toEqual(['one two ', 'three']);
    expect(lines('take 12\u202fm of it', 40)).toEqual(['take ', '12\u202fm of ', 'it']);
  });

  it('break a word that is wider than the line, so that none of it is lost', () => {
    expect(lines('abcdefgh ij', 20)).toEqual(['abcd ', 'efgh ', 'ij']);
    expect(lines('', 20)).toEqual([]);
  });
});

/** The code of a link of any length is read back, up to what notes and names of full length come to. */
it.each([20, 268, 700, 1500])('a link of %i letters is scanned right', (length) => {
  const link = `https://guide.example/bench/#b=${'aZ09-_'.repeat(300)}`.slice(0, length);
  const input = { ...inputOf(buildable(), 'a4', metric), link };
  const layout = layOut(input, typeface.measure);
  expect(untidy(layout)).toEqual([]);
  return drawWorksheet(input).then((bytes) => {
    const page = layout.pages.findIndex(({ items }) => items.some(({ kind }) => kind === 'code'));
    const item = layout.pages[page]?.items.find(({ kind }) => kind === 'code');
    if (!item) throw new Error('no code on the sheet');
    expect(scanned(pictureOf(bytes, 300, page + 1, item.box))).toBe(link);
  });
});

/** What a phone would read. */
const scanned = ({ png }: Picture): string | undefined =>
  jsQR(new Uint8ClampedArray(png.data), png.width, png.height)?.data;

/** Ink where an item is: along every line of words, in every drawing and code; rules are black through and through. */
function inked(item: Item, picture: Picture): void {
  const { box } = item;
  switch (item.kind) {
    case 'text':
      for (const line of item.lines) {
        const text = line.pieces.map((piece) => piece.text).join('');
        const size = line.pieces[0]?.size ?? 0;
        const at = {
          x: box.x + line.x,
          y: box.y + line.baseline - size * 0.8,
          width: line.width,
          height: size,
        };
        // Letters fill about three quarters of their line; a face that draws only some of them, far less.
        const blanks = [...text.trim()].filter((letter) => /\s/u.test(letter)).length / [...text].length;
        expect(picture.inkedColumns(at), `ink of "${text}"`).toBeGreaterThan(0.6 * (1 - blanks));
      }
      return;
    case 'figure':
    case 'code':
      expect(picture.ink(box), item.kind).toBeGreaterThan(200);
      return;
    case 'rule':
      expect(picture.ink({ ...box, height: Math.max(box.height, 1) }), JSON.stringify(box)).toBeGreaterThan(
        0,
      );
      return;
    case 'field':
      // Blank: only the rules of its table may touch it.
      expect(picture.ink({ x: box.x + 2, y: box.y + 2, width: box.width - 4, height: box.height - 4 })).toBe(
        0,
      );
  }
}

/** What a page paints between the marks of each of its drawings. */
const figuresIn = (operators: string): string[] =>
  [...operators.matchAll(/\/Figure <<\/MCID \d+>> BDC\n([\s\S]*?)\nEMC/gu)].map(([, inside = '']) => inside);

interface Path {
  /** Widths, heights and places on paper [mm]. */
  readonly width: number;
  readonly height: number;
  readonly y: number;
  readonly pen: number;
  readonly closed: boolean;
}

const millimetres = (length: number): number => (length * 25.4) / 72;
const near = (a: number, b: number): boolean => Math.abs(a - b) < 0.01;

/** The stroked straight paths of a drawing, out of its operators. */
function paths(operators: string): Path[] {
  return operators.split('\n').flatMap((line) => {
    const stroke = /^([\d.]+) G ([\d.]+) w \[[^\]]*\] 0 d (.*) S$/u.exec(line);
    if (!stroke || / c( |$)/u.test(stroke[3] ?? '')) return [];
    const at = [...(stroke[3] ?? '').matchAll(/(-?[\d.]+) (-?[\d.]+) [ml]/gu)].map(([, x, y]) => [
      millimetres(Number(x)),
      millimetres(Number(y)),
    ]);
    const [xs, ys] = [at.map(([x = 0]) => x), at.map(([, y = 0]) => y)];
    return [
      {
        width: Math.max(...xs) - Math.min(...xs),
        height: Math.round((Math.max(...ys) - Math.min(...ys)) * 1000) / 1000,
        y: ys[0] ?? 0,
        pen: millimetres(Number(stroke[2])),
        closed: (stroke[3] ?? '').endsWith(' h'),
      },
    ];
  });
}

function widest(all: readonly Path[]): Path {
  const [first] = all.toSorted((a, b) => b.width - a.width);
  if (!first) throw new Error('no such path in the drawing');
  return first;
}

/** Outside diameters by the standards that the pipes name [m]: EN 1401 for 110 mm, ASTM D2729 for 4.215 in. */
function pipeTable({ loop }: Bench): { readonly outsideDiameter: number } {
  const printed: Readonly<Record<string, number>> = { 'drain-110': 0.11, 'thin-wall-4in': 4.215 * 0.0254 };
  const outsideDiameter = printed[loop.pipe];
  if (outsideDiameter === undefined) throw new Error(`no printed diameter of ${loop.pipe}`);
  return { outsideDiameter };
}
