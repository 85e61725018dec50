import type { FieldPath } from '../../calculators/bench/fields.ts';
import type { Situation } from '../../calculators/calculator.ts';
import type { Answers } from '../../calculators/index.ts';
import { showDate, type Manner } from '../../calculators/quantities/show.ts';
import { messages, say } from '../../calculators/say.ts';
import { buildSide, type Names } from './build-side.ts';
import { codeOf } from './code.ts';
import { cautionsLeft } from './cautions-left.ts';
import { compose, type NamedSide } from './compose.ts';
import type { PaperName, Sheet } from './layout.ts';
import { openTypeface, writePdf, type FontFiles } from './pdf.ts';
import { runSide, type Office } from './run-side.ts';
import { reasonsAgainst } from './facts.ts';
import type { LeftOut } from './left-out.ts';
import { logSide } from './log-side.ts';
import { notesSide } from './notes-side.ts';
import type { Measure } from './text.ts';
import { writable } from './writable.ts';

/** Everything that a worksheet is made from. */
export interface WorksheetInput {
  readonly situation: Situation;
  readonly answers: Answers;
  readonly manner: Manner;
  readonly paper: PaperName;
  /** TrueType files cut to the letters of `letters.ts`. */
  readonly fonts: FontFiles;
  /** Opens this bench in the guide; printed as a QR code. */
  readonly link: string;
  /** Edition of the figures; its date (2026-11-25) stands for the moment of making, so that bytes do not depend on it. */
  readonly version: { readonly number: string; readonly date: string };
  /** Fields that the file left out, whose start values were taken. */
  readonly assumed: readonly FieldPath[];
  /** What the reader does not want on paper; all is printed unless told. */
  readonly leaveOut?: readonly LeftOut[];
}

/** The words of others, fit for paper. */
function namesOf({ bench, region, station }: Situation): { names: Names; office: Office } {
  let incomplete = false;
  const fit = (text: string): string => {
    const written = writable(text);
    incomplete ||= written.unknown.length > 0;
    return written.text;
  };
  const names = {
    bench: fit(bench.identity.name),
    house: fit(bench.identity.house),
    notes: fit(bench.identity.notes),
    region: fit(region.name),
    station: fit(station.name),
  };
  const office = {
    name: fit(region.office.name),
    contacts: region.office.contacts.map(({ who, how }) => ({ who: fit(who), how: fit(how) })),
    cautions: region.cautions.map(fit),
    codeReferences: region.codeReferences.map(fit),
  };
  return { names: { ...names, incomplete }, office };
}

const ordinals = messages(['one', 'two', 'three', 'four']);

const sideNames: Readonly<Record<string, string>> = messages({
  build: 'build',
  run: 'run',
  log: 'log',
  notes: 'notes',
});

/** The worksheet as data: what stands where on its sides. Pure. */
export function layOut(input: Omit<WorksheetInput, 'fonts'>, measure: Measure): Sheet {
  const { situation, answers, manner, paper, link, version, assumed, leaveOut = [] } = input;
  const facts = { situation, answers, manner };
  const { names, office } = namesOf(situation);
  const stopped = reasonsAgainst(facts).length > 0;
  // A bench that is not run has nothing to log.
  const logged = !leaveOut.includes('log') && !stopped;
  const place = leaveOut.includes('notes')
    ? null
    : say(manner, 'side {ordinal}', { ordinal: say(manner, ordinals[logged ? 3 : 2]) });
  const alt = say(manner, 'QR code: opens this bench in the guide');
  const code = { kind: 'code', modules: codeOf(link), link, alt } as const;
  const sides: NamedSide[] = [
    { name: 'build', ...buildSide(facts, names, code, place, leaveOut) },
    {
      name: 'run',
      bands: [
        ...runSide(facts, office, names.region, leaveOut).bands,
        // Notes may be left out; what can hurt someone stays.
        ...(place
          ? []
          : [{ movable: true, columns: [{ share: 1, blocks: [cautionsLeft(logged, manner)] }] }]),
      ],
    },
    ...(logged ? [{ name: 'log', ...logSide(facts) }] : []),
    { name: 'notes', ...(place ? notesSide(facts, office, assumed, logged) : { bands: [] }) },
  ];
  const order = sides.map(({ name }) => name);
  return compose(
    sides,
    {
      head: (_, side, again) =>
        [
          names.bench,
          say(manner, again ? 'side {ordinal}: {name}, continued' : 'side {ordinal}: {name}', {
            ordinal: say(manner, ordinals[order.indexOf(side)] ?? ''),
            name: say(manner, sideNames[side] ?? side),
          }),
          ...(stopped ? [say(manner, 'not to be built')] : []),
        ].join(' · '),
      footLeft: say(manner, 'Winter bench guide · figures {number} of {date}', {
        number: version.number,
        date: showDate(version.date, manner),
      }),
      footRight: (page, pages, continuedOn) =>
        continuedOn === undefined
          ? say(manner, 'Page {page} of {pages}', { page: String(page), pages: String(pages) })
          : say(manner, 'Page {page} of {pages}; goes on on page {next}', {
              page: String(page),
              pages: String(pages),
              next: String(continuedOn),
            }),
    },
    paper,
    measure,
  );
}

/**
 * Draws the two-sided worksheet of one bench as a tagged PDF with form fields; the same in Node and in a browser. The same
 * input gives the same bytes.
 */
export async function drawWorksheet(input: WorksheetInput): Promise<Uint8Array> {
  const typeface = openTypeface(input.fonts);
  const sheet = layOut(input, typeface.measure);
  const { text: name } = writable(input.situation.bench.identity.name);
  return writePdf(
    sheet,
    {
      title: say(input.manner, 'Worksheet: {name}', { name }),
      subject: say(input.manner, 'How to build and run one heated winter bench'),
      // Without a catalogue the guide's own words are English, whatever the region speaks.
      language: input.manner.words || input.manner.locale.startsWith('en') ? input.manner.locale : 'en',
      date: new Date(`${input.version.date}T00:00:00Z`),
    },
    typeface,
  );
}
