import type { Region } from '../calculators/region.ts';
import { idOf, type FileText } from './regions.ts';
import { problem, type Problem } from './problem.ts';
import { readRegionTree } from './region-like.ts';
import { fileAt, lineAt, readTree, textAt, type Tree } from './yaml-tree.ts';

/**
 * What is not wrong with a region by its form, and yet is likely to be: what a colleague would say who reads it over.
 */

/** Voltages and frequencies that houses of the world have (IEC 60038 and the lists of travellers' plugs, from memory). */
const usualMains = [
  { frequency: 50, from: 220, to: 240 },
  { frequency: 60, from: 110, to: 127 },
  { frequency: 60, from: 208, to: 240 },
  { frequency: 50, from: 100, to: 127 },
  { frequency: 60, from: 100, to: 100 },
] as const;

/** What households pay for a kilowatt-hour in currencies of about this worth (assumption: a wide guess). */
const usualPrice = { currencies: ['EUR', 'USD', 'GBP', 'CHF', 'CAD', 'AUD'], from: 0.04, to: 1 } as const;

/** Fewer winters than this hold too few hard ones for a mean (WMO's normals are of thirty years; from memory). */
const fewWinters = 10;

/** Joules in a kilowatt-hour. */
const kilowattHour = 3.6e6;

/** Ends of names that lead nowhere (RFC 2606). */
const nowhere = /\.(example|invalid|test|localhost)$/u;

/** Every text of a file with its place; names and short words, that any two files share, are left out. */
function textsOf(tree: Tree, path: readonly string[] = []): { path: readonly string[]; text: string }[] {
  switch (tree.kind) {
    case 'value':
      return [{ path, text: (tree.text ?? '').trim().replaceAll(/\s+/gu, ' ') }];
    case 'list':
      return tree.items.flatMap((item, index) => textsOf(item, [...path, String(index)]));
    case 'group':
      return [...tree.entries].flatMap(([name, entry]) => textsOf(entry.tree, [...path, name]));
  }
}

/** Words that say something; a unit, an id or a language may well be the same in two regions. */
const saysSomething = (text: string): boolean => text.split(' ').length >= 3;

/**
 * What someone should look at again in the file of a region that has been read.
 *
 * @param region what was read
 * @param own its file
 * @param others the files of the other regions, whose words may have been left standing in a copy
 */
export function regionNotes(region: Region, own: FileText, others: readonly FileText[]): readonly Problem[] {
  // What it takes over is looked over with the region that it is taken from, unless it does not fit with its own.
  const read = readTree(own.text, own.file);
  const whole = readRegionTree(own, others);
  if (!read.ok) return read.problems;
  if (!whole.ok) return whole.problems;
  const { tree } = whole;
  const notes: Problem[] = [];
  const note = (path: readonly PropertyKey[], words: string, allowed = ''): void => {
    const field = path
      .map((step) => (/^\d+$/u.test(String(step)) ? Number(step) + 1 : String(step)))
      .join('.');
    const at = {
      file: fileAt(tree, path) ?? own.file,
      line: lineAt(tree, path),
      field,
      found: textAt(tree, path),
      allowed,
    };
    notes.push(problem(at, words));
  };

  const { voltage, frequency, rules } = region.mains;
  if (!usualMains.some((one) => one.frequency === frequency && voltage >= one.from && voltage <= one.to))
    note(['mains', 'voltage'], `Hardly any country has ${voltage} V at ${frequency} Hz; look at a meter`);
  if (rules === 'us' && frequency !== 60)
    note(['mains', 'rules'], 'The US rules go with 60 Hz; which rules does your electrician work by?', 'iec');
  const price = region.tariff.price * kilowattHour;
  const { currency } = region.tariff;
  if (
    usualPrice.currencies.some((one) => one === currency) &&
    (price < usualPrice.from || price > usualPrice.to)
  )
    note(
      ['tariff', 'price'],
      `A kilowatt-hour seldom costs less than ${usualPrice.from} ${currency} or more than ${usualPrice.to} ${currency}`,
      `${usualPrice.from} to ${usualPrice.to}`,
    );
  if (nowhere.test(new URL(region.guide).hostname))
    note(['guide'], 'This address leads nowhere, and the codes on worksheets lead to it', 'your own address');
  for (const [index, { winters }] of region.stations.entries())
    if (winters < fewWinters)
      note(
        ['stations', index, 'record'],
        `This record holds ${winters} ${winters === 1 ? 'winter' : 'winters'}; the mean of fewer than ${fewWinters} may leave out every hard one`,
      );
  for (const list of ['cautions', 'codeReferences', 'plants'] as const)
    if (region[list].length === 0)
      note([list], `The list ${list} is empty; its page will say nothing of your own`);

  for (const name of ['name', 'guide'] as const)
    if (!read.tree.entries.has(name) && tree.entries.has(name))
      note(
        [name],
        `Two regions have this ${name}, as ${idOf(own.file)}.yaml takes it over; give it one of its own`,
      );

  for (const { path, text } of textsOf(read.tree)) {
    if (!saysSomething(text)) continue;
    const from = others.find((other) => {
      const theirs = readTree(other.text, other.file);
      return theirs.ok && textsOf(theirs.tree).some((one) => one.text === text);
    });
    if (from) note(path, `The same words stand in ${idOf(from.file)}.yaml; are they true here?`);
    else if (/\binvented\b/iu.test(text)) note(path, 'This says that it is invented; is it?');
  }
  return notes.sort((one, other) => one.line - other.line);
}
