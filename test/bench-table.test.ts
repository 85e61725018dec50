import { describe, expect, it } from 'vitest';
import { readBenchTree } from '../content/bench-file.ts';
import { readBenchTable, tableColumns, type BenchRow } from '../content/bench-table.ts';
import { loadRegions } from '../scripts/content-files.ts';
import { fileName } from '../scripts/worksheets.ts';
import { expectNear } from './support/near.ts';

const regions = loadRegions();
const rowsOf = (text: string): readonly BenchRow[] => {
  const read = readBenchTable(text, 'benches.csv');
  if (!read.ok) throw new Error(read.problems.map((one) => one.text).join('\n'));
  return read.rows;
};
const problemsOf = (text: string): string[] => {
  const read = readBenchTable(text, 'benches.csv');
  return (read.ok ? read.wrong : read.problems).map((one) => one.text);
};
const head = 'identity.name,place.region,place.station,frame.length,skirt.closed';

describe('a table of benches', () => {
  it('gives the bench that a file with the same values gives', () => {
    const [row] = rowsOf(`${head}\nBy the pond,estermark,lowfield,7.5 m,60 %\n`);
    const read = readBenchTree(row?.tree ?? expect.fail('no row'), 'benches.csv', regions);
    if (!read.ok) throw new Error(read.problems.map((one) => one.text).join('\n'));
    expect(read.bench.identity.name).toBe('By the pond');
    expect(read.bench.frame.length).toBe(7.5);
    expectNear(read.bench.skirt.closed, 0.6, 1e-12);
    expect(read.assumed).not.toContain('frame.length');
    expect(read.assumed).toContain('frame.width');
  });

  it.each([
    ['semicolons', head.replaceAll(',', ';'), 'One;estermark;lowfield;6 m;80 %'],
    ['tabs', head.replaceAll(',', '\t'), 'One\testermark\tlowfield\t6 m\t80 %'],
    [
      'a mark of byte order and ends of lines of two letters',
      `\uFEFF${head}`,
      'One,estermark,lowfield,6 m,80 %\r',
    ],
    ['quotes', `"${head.replaceAll(',', '","')}"`, '"One","estermark","lowfield","6 m","80 %"'],
  ])('may have %s', (_, first, line) => {
    const rows = rowsOf(`${first}\n\n${line}\n`);
    expect(rows).toHaveLength(1);
    const read = readBenchTree(rows[0]?.tree ?? expect.fail('no row'), 'benches.csv', regions);
    expect(read.ok && read.bench.frame.length).toBe(6);
  });

  it('takes an empty cell for a value that is left out, and tells a mistake with its line', () => {
    const rows = rowsOf(`${head}\nOne,estermark,lowfield,,\nTwo,estermark,lowfield,6 kg,70 %`);
    const reads = rows.map(({ tree }) => readBenchTree(tree, 'benches.csv', regions));
    expect(reads[0]?.ok && reads[0].assumed).toContain('frame.length');
    expect(reads[1]).toMatchObject({
      ok: false,
      problems: [{ line: 3, field: 'frame.length', found: '6 kg' }],
    });
  });

  it.each([
    ['', /line 1: The file is empty/u],
    [head, /There is no bench below/u],
    ['identity.name,frame.lenght\nOne,6 m', /frame\.lenght.*did you mean frame\.length\?/u],
    ['identity.name,frame.length,frame.length\nOne,6 m,7 m', /frame\.length: Two columns have this name/u],
    ['identity.name,,frame.length\nOne,x,7 m', /Column 2 has no name/u],
    ['frame.length,frame.width\n6 m,1 m', /There must be a column identity\.name/u],
    [`${head}\nOne,estermark,lowfield,6 m,80 %,more`, /line 2: There are more cells than columns.*6 cells/u],
    ['identity.name\0', /plain text/u],
  ])('%j is told as it is', (text, words) => {
    expect(problemsOf(text).join('\n')).toMatch(words);
  });

  it('reads the other lines where one is too long', () => {
    const read = readBenchTable(`${head}\nOne,a,b,c,d,e\nTwo,estermark,lowfield,6 m,80 %`, 'benches.csv');
    expect(read).toMatchObject({ ok: true, rows: [{ line: 3 }], wrong: [{ line: 2 }] });
  });

  it('keeps the names of objects out of the way', () => {
    expect(problemsOf('identity.name,__proto__.polluted\nOne,yes').join()).toMatch(/There is no column/u);
    expect(tableColumns).toContain('cable.powerPerLength');
  });
});

describe('names of files', () => {
  it.each([
    ['First row', 'first-row'],
    ['../../etc/passwd', 'etc-passwd'],
    ['Grünes Haus, Bank 2', 'grünes-haus-bank-2'],
    ['🌱🌱', ''],
    ['x'.repeat(300), 'x'.repeat(60)],
    ['con.pdf\u0000', 'con-pdf'],
  ])('%j become %j', (name, file) => {
    expect(fileName(name)).toBe(file);
  });
});
