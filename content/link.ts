import { allFields, benchOf, valueAt, type PlacedField } from '../calculators/bench/all-fields.ts';
import type { NumberField } from '../calculators/bench/field.ts';
import type { Bench, FieldPath } from '../calculators/bench/fields.ts';
import { problemIn, type FieldValue } from '../calculators/bench/read-field.ts';
import { startBench } from '../calculators/bench/start.ts';
import { fromBase, shownUnit, toBase } from '../calculators/quantities/quantity.ts';

/**
 * A whole bench in the part of a link behind the #, which a browser does not send anywhere: for a QR code on a
 * worksheet, a message, a bookmark.
 *
 * The format number, then a record for every field that differs from its start value, then one that says which fields
 * were set where that is not just those, then a checksum; all as base64url
 * (RFC 4648, section 5). Fields and choices are told by 16 bits of their name, so that adding some, or sorting them
 * anew, changes no link that was printed. Numbers are stored as people write them (6.1 ft is 61 tenths of a foot), which
 * is both short and exact.
 */

const format = 1;

/**
 * Start values that were others when links of a format were made, by format. A printed link means what it meant: whoever
 * changes a start value raises the format above and adds the old value here.
 */
const formerStarts: Readonly<Record<number, Readonly<Partial<Record<FieldPath, FieldValue>>>>> = {};

/** No bench makes a longer link; a longer text is not one. */
const longestLink = 8192;

export type LinkProblem =
  /** Nothing stands there. */
  | 'empty'
  /** Letters that no link has, or far too many of them. */
  | 'not-a-link'
  /** The checksum does not fit: something was lost or changed on the way. */
  | 'damaged'
  /** Made by a newer guide than this one, in a format or with fields or choices that this one does not know. */
  | 'newer'
  /** A value that the field does not allow. */
  | 'impossible-value';

export type DecodedBench =
  | {
      readonly ok: true;
      readonly bench: Bench;
      /** The fields that someone has set; the others are assumed. */
      readonly set: readonly FieldPath[];
    }
  | { readonly ok: false; readonly problem: LinkProblem; readonly text: string };

/** What to tell a reader. */
const words: Readonly<Record<LinkProblem, string>> = {
  empty: 'There is no bench in this link.',
  'not-a-link':
    'This link holds no bench that can be read. Copy the whole link again, or scan the code on the worksheet again.',
  damaged:
    'The bench in this link is damaged: a part of the link was lost or changed on the way. Copy the whole link again, or scan the code on the worksheet again.',
  newer:
    'The bench in this link was made by a newer guide than this one. Load this page anew while you are online.',
  'impossible-value': 'The bench in this link has a value that no bench can have.',
};

/** CRC-32 as in ISO 3309 and PNG (ISO/IEC 15948, annex D), bit by bit: short links do not need a table. */
export function checksum(bytes: Iterable<number>): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ 0xffffffff) >>> 0;
}

const utf8 = new TextEncoder();

/** What stands for a name in a link: 16 bits of its checksum. A test shows that no two names share them. */
export const codeOf = (name: string): number => checksum(utf8.encode(name)) & 0xffff;

/** How a number is stored: nothing; eight bytes; or decimals in the shown unit of one of the two systems. */
const noNumber = 0;
const wholeDouble = 1;
const firstDecimal = 2;
const systems = ['metric', 'us'] as const;
const mostDecimals = 6;

function writeVarint(bytes: number[], value: number): void {
  let rest = value;
  for (; rest > 0x7f; rest = Math.floor(rest / 0x80)) bytes.push((rest % 0x80) | 0x80);
  bytes.push(rest);
}

function writeNumber(bytes: number[], value: number, { quantity }: NumberField): void {
  for (let decimals = 0; decimals <= mostDecimals; decimals++)
    for (const [index, system] of systems.entries()) {
      const unit = shownUnit(quantity, system);
      const digits = Math.round(fromBase(quantity, value, unit) * 10 ** decimals);
      if (!Number.isSafeInteger(digits * 2) || toBase(quantity, digits / 10 ** decimals, unit) !== value)
        continue;
      bytes.push(firstDecimal + 2 * decimals + index);
      writeVarint(bytes, digits < 0 ? -2 * digits - 1 : 2 * digits);
      return;
    }
  const double = new DataView(new ArrayBuffer(8));
  double.setFloat64(0, value);
  bytes.push(wholeDouble, ...new Uint8Array(double.buffer));
}

function writeValue(bytes: number[], value: FieldValue, { field }: PlacedField): void {
  if (field.shape === 'number') {
    if (typeof value === 'number') writeNumber(bytes, value, field);
    else bytes.push(noNumber);
  } else if (field.shape === 'choice') {
    const code = codeOf(String(value));
    bytes.push(code >> 8, code & 0xff);
  } else {
    const text = utf8.encode(String(value));
    writeVarint(bytes, text.length);
    bytes.push(...text);
  }
}

const startsOf = (from: number): ((placed: PlacedField) => FieldValue) => {
  const start = startBench();
  return (placed) => {
    const former = formerStarts[from]?.[placed.path];
    return former === undefined ? valueAt(start, placed) : former;
  };
};

/** Stands where the code of a field may: what follows says which fields were set. No field has this code. */
export const marksCode = 1;

/**
 * Which fields were set, as one of these and the fields that are exceptions to it; the one with the fewest is written.
 * A link without it, as the first ones were, has set what differs from its start value.
 */
const markings: readonly ((differs: boolean) => boolean)[] = [(differs) => differs, () => true, () => false];

function writeMarks(bytes: number[], bench: Bench, set: readonly FieldPath[]): void {
  const startOf = startsOf(format);
  const exceptionsTo = (isSet: (differs: boolean) => boolean) =>
    allFields.filter((placed) => {
      const differs = valueAt(bench, placed) !== startOf(placed);
      return set.includes(placed.path) !== isSet(differs);
    });
  const all = markings.map((isSet, kind) => ({ kind, exceptions: exceptionsTo(isSet) }));
  const { kind, exceptions } = all.reduce((best, one) =>
    one.exceptions.length < best.exceptions.length ? one : best,
  );
  if (kind === 0 && exceptions.length === 0) return;
  bytes.push(marksCode >> 8, marksCode & 0xff, kind);
  writeVarint(bytes, exceptions.length);
  for (const { path } of exceptions) bytes.push(codeOf(path) >> 8, codeOf(path) & 0xff);
}

/**
 * The bench as letters, digits, - and _ for the end of a link.
 * @param set the fields that someone has set; where left out, those that differ from their start values
 */
export function encodeBench(bench: Bench, set?: readonly FieldPath[]): string {
  const bytes: number[] = [format];
  const startOf = startsOf(format);
  for (const placed of allFields) {
    const value = valueAt(bench, placed);
    if (value === startOf(placed)) continue;
    const code = codeOf(placed.path);
    bytes.push(code >> 8, code & 0xff);
    writeValue(bytes, value, placed);
  }
  if (set) writeMarks(bytes, bench, set);
  const sum = checksum(bytes);
  bytes.push(sum >>> 24, (sum >>> 16) & 0xff, (sum >>> 8) & 0xff, sum & 0xff);
  return btoa(String.fromCharCode(...bytes))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replaceAll('=', '');
}

/** The address at which a guide opens this bench; `site` is where the guide is, with or without its last slash. */
export const benchAddress = (site: string, bench: Bench, set?: readonly FieldPath[]): string =>
  `${site.replace(/\/$/u, '')}/bench/#b=${encodeBench(bench, set)}`;

class Refused extends Error {
  readonly problem: LinkProblem;
  constructor(problem: LinkProblem) {
    super(problem);
    this.problem = problem;
  }
}

/** Walks along the bytes; running off their end means that something was lost. */
class Reader {
  readonly bytes: Uint8Array;
  at = 0;
  constructor(bytes: Uint8Array) {
    this.bytes = bytes;
  }
  get done(): boolean {
    return this.at >= this.bytes.length;
  }
  take(count: number): Uint8Array {
    const taken = this.bytes.subarray(this.at, this.at + count);
    if (taken.length < count) throw new Refused('damaged');
    this.at += count;
    return taken;
  }
  byte(): number {
    return this.take(1)[0] ?? 0;
  }
  code(): number {
    return (this.byte() << 8) | this.byte();
  }
  varint(): number {
    let value = 0;
    for (let size = 1; ; size *= 0x80) {
      const byte = this.byte();
      value += (byte & 0x7f) * size;
      if (!Number.isSafeInteger(value)) throw new Refused('damaged');
      if (byte < 0x80) return value;
    }
  }
}

function readNumber(reader: Reader, { quantity }: NumberField): number | null {
  const head = reader.byte();
  if (head === noNumber) return null;
  if (head === wholeDouble) {
    const bytes = reader.take(8);
    return new DataView(bytes.buffer, bytes.byteOffset, 8).getFloat64(0);
  }
  const decimals = (head - firstDecimal) >> 1;
  const system = systems[(head - firstDecimal) & 1] ?? 'metric';
  if (decimals > mostDecimals) throw new Refused('newer');
  const folded = reader.varint();
  const digits = folded % 2 === 1 ? -(folded + 1) / 2 : folded / 2;
  return toBase(quantity, digits / 10 ** decimals, shownUnit(quantity, system));
}

function readValue(reader: Reader, { field }: PlacedField): FieldValue {
  if (field.shape === 'number') return readNumber(reader, field);
  if (field.shape === 'choice') {
    const code = reader.code();
    const option = Object.keys(field.options).find((name) => codeOf(name) === code);
    if (option === undefined) throw new Refused('newer');
    return option;
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(reader.take(reader.varint()));
  } catch {
    throw new Refused('damaged');
  }
}

function bytesOf(text: string): Uint8Array {
  // Mail programs break long links; what stands before the # may come along when one is pasted.
  const code = text.replace(/^.*#b=/su, '').replace(/\s+/gu, '');
  if (code === '') throw new Refused('empty');
  if (code.length > longestLink || !/^[\w-]+$/u.test(code)) throw new Refused('not-a-link');
  let binary: string;
  try {
    binary = atob(code.replaceAll('-', '+').replaceAll('_', '/'));
  } catch {
    throw new Refused('damaged');
  }
  // Letters whose last bits count for nothing would be a second way of writing the same.
  if (btoa(binary).replace(/=+$/u, '') !== code.replaceAll('-', '+').replaceAll('_', '/'))
    throw new Refused('damaged');
  return Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
}

/** Whether a field was set, by whether its value differs from the start value. */
type IsSet = (placed: PlacedField, differs: boolean) => boolean;

function readMarks(reader: Reader): IsSet {
  const isSet = markings[reader.byte()];
  if (!isSet) throw new Refused('newer');
  const count = reader.varint();
  if (count > allFields.length) throw new Refused('newer');
  const exceptions = new Set(Array.from({ length: count }, () => reader.code()));
  return ({ path }, differs) => isSet(differs) !== exceptions.has(codeOf(path));
}

function decode(text: string): { readonly bench: Bench; readonly set: readonly FieldPath[] } {
  const all = bytesOf(text);
  if (all.length < 5) throw new Refused('damaged');
  const end = all.length - 4;
  const sum = new DataView(all.buffer, end, 4).getUint32(0);
  if (sum !== checksum(all.subarray(0, end))) throw new Refused('damaged');
  const reader = new Reader(all.subarray(0, end));
  const from = reader.byte();
  if (from > format) throw new Refused('newer');
  if (from < 1) throw new Refused('damaged');

  const given = new Map<FieldPath, FieldValue>();
  let isSet: IsSet = (_, differs) => differs;
  while (!reader.done) {
    const code = reader.code();
    if (code === marksCode) {
      isSet = readMarks(reader);
      continue;
    }
    const placed = allFields.find(({ path }) => codeOf(path) === code);
    if (!placed) throw new Refused('newer');
    const value = readValue(reader, placed);
    // Whether its region and station exist is for those to say who know the regions.
    const references = typeof value === 'string' && /^[a-z\d-]*$/u.test(value) ? [value] : [];
    if (problemIn(placed.field, value, references)) throw new Refused('impossible-value');
    given.set(placed.path, value);
  }
  const startOf = startsOf(from);
  const bench = benchOf((placed) => {
    const value = given.get(placed.path);
    return value === undefined ? startOf(placed) : value;
  });
  const set = allFields.filter((placed) => isSet(placed, valueAt(bench, placed) !== startOf(placed)));
  return { bench, set: set.map(({ path }) => path) };
}

/**
 * The bench of a link: all of the link, or what stands behind its "#b=". A link that is not whole is refused, with the
 * reason by name and in words; it never gives another bench. Whether the region is known here is not looked at.
 */
export function decodeBench(text: string): DecodedBench {
  try {
    return { ok: true, ...decode(text) };
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    return { ok: false, problem: error.problem, text: words[error.problem] };
  }
}
