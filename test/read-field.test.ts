import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allFields } from '../calculators/bench/all-fields.ts';
import { nearestName } from '../calculators/bench/nearest.ts';
import type { Field } from '../calculators/bench/field.ts';
import { fields } from '../calculators/bench/fields.ts';
import { problemIn, readField, sayProblem, type ReadField } from '../calculators/bench/read-field.ts';
import { startBench } from '../calculators/bench/start.ts';
import { valueAt } from '../calculators/bench/all-fields.ts';
import type { Manner } from '../calculators/quantities/show.ts';
import { expectNear } from './support/near.ts';

const metric: Manner = { system: 'metric', locale: 'en' };
const us: Manner = { system: 'us', locale: 'en-US' };
const { length } = fields.frame.fields;
const { ownLowest } = fields.place.fields;

function valueOf(read: ReadField): unknown {
  expect(read).toMatchObject({ ok: true });
  return read.ok ? read.value : undefined;
}

/** The words of a refusal; blanks of any width are blanks. */
function wordsOf(
  field: Field,
  raw: unknown,
  manner: Manner,
  unit?: string,
  references?: readonly string[],
): string {
  const read = readField(field, raw, unit, references);
  expect(read.ok, `${String(raw)} is refused`).toBe(false);
  return read.ok ? '' : sayProblem(field, read.problem, manner).replaceAll('\u202f', ' ');
}

describe('readField reads what people write', () => {
  it.each([
    ['6 m', 6],
    [' 6m ', 6],
    ['6,5 m', 6.5],
    ['600 cm', 6],
    ['20 ft', 6.096],
    ['19 ft 6 in', 5.9436],
    ['6 1/2 ft', 1.9812],
  ])('a length of %s is %f m', (text, metres) =>
    expectNear(Number(valueOf(readField(length, text))), metres, 1e-12),
  );

  it.each([
    ['-10 °C', -10],
    ['−10 °C', -10],
    ['−2,5 °C', -2.5],
    ['14 °F', -10],
    ['-40 °F', -40],
  ])('a temperature of %s is %f °C', (text, degrees) =>
    expectNear(Number(valueOf(readField(ownLowest, text))), degrees, 1e-12),
  );

  it('takes the unit of the form for a bare number, and a typed unit before that', () => {
    expect(valueOf(readField(length, '6,5', 'm'))).toBe(6.5);
    expectNear(Number(valueOf(readField(length, '20 ft', 'm'))), 6.096, 1e-12);
  });

  it('makes per cents exact', () => {
    const { potShare } = fields.frame.fields;
    for (let percent = 5; percent <= 100; percent++)
      expect(valueOf(readField(potShare, `${percent} %`))).toBe(percent / 100);
  });

  it('takes a limit that was read, in either system', () => {
    for (const { field, path } of allFields) {
      if (field.shape !== 'number' || field.quantity === 'energyPrice') continue;
      for (const manner of [metric, us]) {
        const read = readField(field, 'nothing that is a number');
        const words = read.ok ? '' : sayProblem(field, { ...read.problem, code: 'out-of-range' }, manner);
        const [, lowest, highest] = / must be between (.+) and (.+)$/u.exec(words) ?? [];
        expect([path, readField(field, lowest).ok, readField(field, highest).ok]).toEqual([path, true, true]);
      }
    }
  });
});

describe('readField refuses, in the reader’s units', () => {
  it.each([
    [length, '-6 m', 'Length of the bench must be between 0.6 m and 60 m'],
    [length, '6', 'Length of the bench must have a unit, such as 6 m'],
    [length, '6 kg', 'Length of the bench must be in m, cm, mm, ft or in, not in kg'],
    [length, '1,200 mm', 'Length of the bench must be written without a comma: 1.200 or 1200'],
    [length, 'six', 'Length of the bench must be a number, such as 6 m'],
    [length, '', 'Enter the length of the bench, such as 6 m'],
    [length, null, 'Enter the length of the bench, such as 6 m'],
    [length, ['6 m'], 'Length of the bench must be one value, not a list'],
    [length, { m: 6 }, 'Length of the bench must be one value, not a group'],
    [fields.pots.fields.count, '4.5', 'Number of pots must be a whole number, such as 450'],
    [fields.pots.fields.count, '20001', 'Number of pots must be between 1 and 20000'],
    [fields.mix.fields.share, '61 %', 'Share of antifreeze by volume must be between 0 % and 60 %'],
    [fields.frame.fields.top, 'slat', 'Bench top must be mesh, slats, film or board; did you mean slats?'],
    [fields.frame.fields.top, '__proto__', 'Bench top must be mesh, slats, film or board'],
    [fields.frame.fields.top, '', 'Select the bench top: mesh, slats, film or board'],
    [fields.identity.fields.name, '  ', 'Enter the name of the bench'],
    [fields.identity.fields.name, 'x'.repeat(81), 'Name of the bench must be 80 characters or fewer'],
    [fields.identity.fields.name, 'a\u0007b', 'Name of the bench must have no control characters in it'],
    [fields.identity.fields.name, 'half \ud83c', 'Name of the bench must have no control characters in it'],
  ] satisfies [Field, unknown, string][])('%#: %o', (field, raw, words) =>
    expect(wordsOf(field, raw, metric)).toBe(words),
  );

  it('tells US readers in US units', () => {
    expect(wordsOf(ownLowest, '-60 °F', us)).toBe(
      'My own lowest outside temperature must be between −49 °F and 50 °F',
    );
    expect(wordsOf(length, '6 stone', us)).toBe(
      'Length of the bench must be in ft, m, cm, mm or in, not in stone',
    );
  });

  it('names what a reference may be', () => {
    const { region } = fields.place.fields;
    expect(wordsOf(region, 'estermrak', metric, undefined, ['estermark', 'tallow'])).toBe(
      'Region must be estermark or tallow; did you mean estermark?',
    );
    expect(valueOf(readField(region, 'tallow', undefined, ['estermark', 'tallow']))).toBe('tallow');
    expect(wordsOf(region, 'x', metric, undefined, [])).toBe('Region must be nothing: there is none');
  });
});

describe('readField takes nothing where, and only where, nothing means something', () => {
  it.each(allFields.map((placed) => [placed.path, placed.field] as const))('%s', (_, field) => {
    const read = readField(field, '');
    const mayBeEmpty =
      field.shape === 'number' ? field.empty !== undefined : field.shape === 'text' && !field.required;
    expect(read.ok).toBe(mayBeEmpty);
    if (read.ok) expect(read.value).toBe(field.shape === 'number' ? null : '');
  });
});

describe('start values', () => {
  it('are values of their fields', () => {
    const bench = startBench('here', 'there');
    for (const placed of allFields) {
      if (placed.path === 'identity.name') continue;
      expect([placed.path, problemIn(placed.field, valueAt(bench, placed), ['here', 'there'])]).toEqual([
        placed.path,
        null,
      ]);
    }
  });
});

describe('readField never throws and never lets a value out of its range', { timeout: 60_000 }, () => {
  it('whatever is written', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...allFields),
        fc.oneof(fc.string({ unit: 'binary' }), fc.string(), fc.anything()),
        fc.constantFrom(undefined, 'm', '°C', '%'),
        ({ field }, raw, unit) => {
          const printable =
            typeof raw === 'symbol' || (typeof raw === 'object' && raw !== null) ? [raw] : raw;
          const read = readField(field, printable, unit, ['here']);
          if (read.ok) expect(problemIn(field, read.value, ['here'])).toBeNull();
          else
            for (const manner of [metric, us]) expect(sayProblem(field, read.problem, manner)).not.toBe('');
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe('nearestName', () => {
  const names = ['length', 'width', 'height', 'potShare', 'top', 'floor'];
  it.each([
    ['lenght', 'length'],
    ['Length', 'length'],
    ['pot_share', 'potShare'],
    ['heigth', 'height'],
    ['tops', 'top'],
    ['colour', undefined],
    ['', undefined],
    ['much longer than any name of a field '.repeat(1000), undefined],
  ])('%.40s → %s', (written, name) => expect(nearestName(written, names)).toBe(name));
});
