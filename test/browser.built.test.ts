import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  eventually,
  field,
  figure,
  figureNumber,
  give,
  numberIn,
  readers,
  seen,
  violationsOf,
  type Reader,
} from './support/reader.ts';

/** The built guide in the hands of a reader: typing, keeping, undoing, sending, printing. */

const reader = readers();
/** A reader for the tests that need nothing of their own: one window for all of them. */
let someone: Reader;
beforeAll(async () => {
  someone = await reader();
});

describe('a chapter with the reader’s own numbers', () => {
  it('a typed answer changes figures, text and drawing at once, and the helix still holds', async () => {
    const page = await someone.goOn('chapters/winding/');
    const before = await figureNumber(page, 'winding.pitch');
    const inText = page.locator('.value[data-figure="winding.pitch"]').first();
    const drawing = page.locator('.drawn-sheet.wide[data-drawing="winding"] desc');
    const describedBefore = await drawing.textContent();
    const loop = numberIn(await page.locator('.value[data-figure="loop.length"]').first().innerText());

    await field(page, 'winding', 'cable.length').fill('30');
    await eventually(() => figureNumber(page, 'winding.pitch')).not.toBe(before);
    const pitch = await figureNumber(page, 'winding.pitch');
    const turns = await figureNumber(page, 'winding.turns');
    expect(numberIn(await inText.innerText())).toBe(pitch);
    await eventually(() => drawing.textContent()).not.toBe(describedBefore);

    // The cable is the long side of the unrolled triangle (arc length of a helix), to what rounding leaves of it.
    const once =
      Math.PI * (0.11 + numberIn(await field(page, 'winding', 'cable.diameter').inputValue()) / 1000);
    expect(Math.abs(Math.hypot(loop, turns * once) - 30)).toBeLessThan(0.05);
    expect(Math.abs((turns * pitch) / 1000 - loop)).toBeLessThan(0.06);
    expect(someone.faults).toEqual([]);
    expect(await violationsOf(page)).toEqual([]);
  });

  it('keeps the bench over a reload and on other pages, says whose it is, and goes back with undo', async () => {
    const page = await someone.goOn('chapters/winding/');
    const before = await figure(page, 'winding.pitch').innerText();
    expect(await page.locator('[data-whose]').innerText()).toContain('example bench');
    expect(await page.locator('[data-undo]').first().isDisabled()).toBe(true);
    await give(page, 'winding', 'cable.length', '30 m');
    await eventually(() => figure(page, 'winding.pitch').innerText()).not.toBe(before);
    const after = await figure(page, 'winding.pitch').innerText();
    expect(await page.locator('[data-whose]').innerText()).toContain('your bench');

    await page.reload();
    await eventually(() => figure(page, 'winding.pitch').innerText()).toBe(after);
    expect(await field(page, 'winding', 'cable.length').inputValue()).toBe('30');
    const other = await someone.open('bench/');
    expect(await field(other, 'bench', 'cable.length').inputValue()).toBe('30');
    await eventually(() => other.locator('[data-progress]').innerText()).toContain('You have set 1 of');
    await other.close();

    await page.locator('[data-undo]').first().click();
    await eventually(() => figure(page, 'winding.pitch').innerText()).toBe(before);
    expect(await field(page, 'winding', 'cable.length').inputValue()).toBe('38');
    expect(await page.locator('[data-undo]').first().isDisabled()).toBe(true);
  });

  it('a second tab follows the first', async () => {
    const one = await someone.goOn('chapters/winding/');
    const two = await someone.open('reference/winding/');
    const before = await figure(two, 'winding.pitch').innerText();
    await give(one, 'winding', 'cable.length', '30');
    await eventually(() => figure(two, 'winding.pitch').innerText()).not.toBe(before);
    await eventually(
      async () =>
        (await figure(two, 'winding.pitch').innerText()) === (await figure(one, 'winding.pitch').innerText()),
    ).toBe(true);
    expect(await field(two, 'winding', 'cable.length').inputValue()).toBe('30');
    await two.close();
  });

  it('switches every unit of the page, keeps the bench, and remembers the choice', async () => {
    const page = await someone.goOn('chapters/winding/');
    const millimetres = await figureNumber(page, 'winding.pitch');
    await page.locator('input[name="units"][value="us"]').check();
    await eventually(() => figure(page, 'winding.pitch').innerText()).toMatch(/in$/u);
    // An inch is 25.4 mm exactly; both figures are rounded to what is shown.
    expect(Math.abs((await figureNumber(page, 'winding.pitch')) * 25.4 - millimetres)).toBeLessThan(0.7);
    // A foot is 0.3048 m exactly; a field shows six digits.
    const feet = Number(await field(page, 'winding', 'cable.length').inputValue());
    expect(Math.abs(feet * 0.3048 - 38)).toBeLessThan(1e-4);
    expect(await page.locator('label[for="winding-cable-length"]').textContent()).toMatch(/in\s+ft\s*$/u);
    expect(await page.locator('#winding-cable-length ~ .suffix').innerText()).toBe('ft');
    // Temperatures have an offset, differences have none.
    await eventually(() => figure(page, 'sheath.inService').innerText()).toMatch(/°F$/u);

    await page.reload();
    await eventually(() => figure(page, 'winding.pitch').innerText()).toMatch(/in$/u);
    await page.locator('input[name="units"][value="metric"]').check();
    await eventually(() => figureNumber(page, 'winding.pitch')).toBe(millimetres);
    expect(await field(page, 'winding', 'cable.length').inputValue()).toBe('38');
    expect(someone.faults).toEqual([]);
  });

  it('never clears a wrong answer, says what is wrong in the same words twice, and keeps the last figures', async () => {
    const page = await someone.goOn('chapters/winding/');
    const before = await figure(page, 'winding.pitch').innerText();
    const input = field(page, 'winding', 'cable.length');
    const error = page.locator('#winding-cable-length-error');

    await input.fill('');
    await input.pressSequentially('9999');
    expect(await error.isVisible()).toBe(false);
    await input.blur();
    await eventually(() => seen(error.innerText())).toBe(
      'Heated length of the cable must be between 0.5 m and 300 m',
    );
    expect(await input.getAttribute('aria-invalid')).toBe('true');
    expect(await input.getAttribute('aria-describedby')).toContain('winding-cable-length-error');
    expect(await page.locator('#winding [data-errors] a').innerText()).toBe(await error.innerText());
    expect(await page.locator('[data-status]').textContent()).toBe(await error.innerText());

    // 9 and 99 could be used on the way to 9999; the last one that could is what the figures come to hold for.
    const shown = () => figure(page, 'winding.pitch').innerText();
    await eventually(async () => [before, 'no figure'].includes(await shown())).toBe(false);
    const held = await shown();
    await page.reload();
    await eventually(() => seen(error.innerText())).toContain('must be between');
    expect(await input.inputValue()).toBe('9999');
    await eventually(() => figure(page, 'winding.pitch').innerText()).toBe(held);

    // In other units the answer is still what it was.
    await page.locator('input[name="units"][value="us"]').check();
    await eventually(() => input.inputValue()).toBe('9999 m');
    await eventually(() => seen(error.innerText())).toMatch(/between 1\.7 ft and 984\.2 ft/u);
    await page.locator('input[name="units"][value="metric"]').check();

    await page.locator('#winding [data-errors] a').click();
    expect(await input.evaluate((element) => element === document.activeElement)).toBe(true);
    for (const [text, words] of [
      ['abc', 'must be a number, such as'],
      ['1,200', 'must be written without a comma: 1.200 or 1200'],
      ['5 kg', 'must be in m, '],
      ['', 'Enter the heated length of the cable, such as'],
    ] as const) {
      await give(page, 'winding', 'cable.length', text);
      await eventually(() => seen(error.innerText())).toContain(words);
      expect(await input.inputValue()).toBe(text);
    }
    await give(page, 'winding', 'cable.length', '38');
    await eventually(() => error.isVisible()).toBe(false);
    expect(await input.getAttribute('aria-invalid')).toBeNull();
    await eventually(() => figure(page, 'winding.pitch').innerText()).toBe(before);
    expect(await page.locator('#winding [data-errors]').isVisible()).toBe(false);
    expect(someone.faults).toEqual([]);
  });

  it('warns where a bench must not be built so', async () => {
    const page = await someone.goOn('chapters/winding/');
    await give(page, 'winding', 'cable.length', '5');
    await eventually(() => page.locator('#winding .warning.stop').count()).toBeGreaterThan(0);
    expect(await page.locator('#winding .warning.stop').first().innerText()).toContain('Do not build this.');
    await eventually(() => page.locator('[data-status]').textContent()).toMatch(/warning/u);
    await give(page, 'winding', 'cable.length', '38');
    await eventually(() => page.locator('#winding .warning.stop').count()).toBe(0);
  });

  it('can be walked with the keyboard alone, and the focus is always seen', async () => {
    const page = await someone.goOn('chapters/winding/');
    await page.keyboard.press('Tab');
    const focused = () => page.evaluate(() => document.activeElement?.textContent.trim() ?? '');
    expect(await focused()).toBe('Skip to the page');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('main');
    const before = await figure(page, 'winding.pitch').innerText();
    const reached: string[] = [];
    for (let presses = 0; presses < 60 && reached.at(-1) !== 'winding-loop-pipe'; presses++) {
      await page.keyboard.press('Tab');
      const { id, outline, width } = await page.evaluate(() => {
        const element = document.activeElement ?? document.body;
        const style = getComputedStyle(element);
        return { id: element.id, outline: style.outlineStyle, width: parseFloat(style.outlineWidth) };
      });
      reached.push(id);
      expect(outline, `outline of what follows ${reached.at(-2) ?? 'the skip link'}`).not.toBe('none');
      expect(width).toBeGreaterThanOrEqual(2);
      if (id === 'winding-cable-length') {
        await page.keyboard.press('Control+A');
        await page.keyboard.type('30');
      }
    }
    expect(reached).toContain('winding-cable-length');
    expect(reached.at(-1)).toBe('winding-loop-pipe');
    await eventually(() => figure(page, 'winding.pitch').innerText()).not.toBe(before);
    const withPipe = await figure(page, 'winding.pitch').innerText();
    await page.keyboard.press('ArrowDown');
    await eventually(() => figure(page, 'winding.pitch').innerText()).not.toBe(withPipe);
  });

  it('works where the browser forbids to keep anything, and says so', async () => {
    const someone = await reader({}, () => {
      Object.defineProperty(globalThis, 'localStorage', {
        get() {
          throw new DOMException('forbidden', 'SecurityError');
        },
      });
    });
    const page = await someone.open('bench/');
    await give(page, 'bench', 'cable.length', '30');
    await eventually(() => page.locator('[data-progress]').innerText()).toContain('save it as a file');
    await page.locator('[data-undo]').first().click();
    expect(await field(page, 'bench', 'cable.length').inputValue()).toBe('38');
    expect(someone.faults).toEqual([]);
  });

  it('puts an unreadable bench aside instead of losing it', async () => {
    const someone = await reader({}, () => {
      if (localStorage.getItem('winter-bench.unread') === null)
        localStorage.setItem('winter-bench', '{"format":1,"be');
    });
    const page = await someone.open('chapters/winding/');
    await eventually(() => page.locator('[data-notice="unreadable"]').innerText()).toContain('put aside');
    expect(await page.evaluate(() => localStorage.getItem('winter-bench.unread'))).toContain('be');
    expect(await field(page, 'winding', 'cable.length').inputValue()).toBe('38');
  });

  it('looks through a bench that an older guide has kept', async () => {
    const page = await someone.goOn('chapters/winding/');
    await give(page, 'winding', 'cable.length', '30');
    await eventually(() => page.evaluate(() => localStorage.getItem('winter-bench'))).not.toBeNull();
    await page.evaluate(() => {
      const kept = JSON.parse(localStorage.getItem('winter-bench') ?? '') as {
        fields: string;
        set: string[];
        bench: Record<string, Record<string, unknown>>;
      };
      kept.fields = 'older';
      kept.set.push('loop.pipe');
      Object.assign(kept.bench['loop'] ?? {}, { pipe: 'a-pipe-that-is-no-more', colour: 'red' });
      localStorage.setItem('winter-bench', JSON.stringify(kept));
    });
    await page.reload();
    await eventually(() => page.locator('[data-notice="mended"]').innerText()).toContain('Pipe');
    expect(await field(page, 'winding', 'cable.length').inputValue()).toBe('30');
    expect(await field(page, 'winding', 'loop.pipe').inputValue()).toBe('drain-110');
  });
});

describe('the bench page', () => {
  it('has every field, and all of them can be answered', async () => {
    const page = await someone.goOn('bench/');
    const progress = () => page.locator('[data-progress]').innerText();
    await eventually(progress).toMatch(/of \d+ fields/u);
    const count = Number(/of (\d+) fields/u.exec(await progress())?.[1]);
    expect(count).toBeGreaterThan(60);
    const fields = page.locator('.whole-bench :is(input, select, textarea)[name]');
    expect(await fields.count()).toBe(count);
    for (const one of await fields.all()) expect(await one.isEnabled()).toBe(true);
    await page.locator('details').evaluateAll((all) => {
      for (const one of all) one.setAttribute('open', '');
    });
    expect(await page.locator('.whole-bench .origin:visible').count()).toBe(count);
    await give(page, 'bench', 'identity.name', 'Südhaus 2');
    await eventually(() => page.locator('.whole-bench .origin:visible').count()).toBe(count - 1);
    expect(await page.locator('[data-bench-name]').first().innerText()).toBe('Südhaus 2');
  });

  it('another region brings its stations along', async () => {
    const page = await someone.goOn('bench/');
    const stations = () => page.locator('#bench-place-station').innerText();
    const before = await stations();
    await page.locator('#bench-place-region').selectOption('tallow');
    await eventually(stations).not.toBe(before);
    // Its units come along too, as nobody has chosen others.
    await eventually(() => page.locator('#bench-frame-length ~ .suffix').innerText()).toBe('ft');
    await page.locator('[data-undo]').first().click();
    await eventually(stations).toBe(before);
  });

  it('a bench survives being saved as a file and opened again', async () => {
    const page = await someone.goOn('bench/');
    await give(page, 'bench', 'identity.name', 'Südhaus 2');
    await give(page, 'bench', 'cable.length', '31.7');
    await give(page, 'bench', 'loop.length', '14');
    await page.locator('#bench-skirt-material').selectOption('none');
    const values = () =>
      page
        .locator('.whole-bench :is(input, select, textarea)[name]')
        .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value));
    const mine = await values();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.locator('[data-export]').click(),
    ]);
    expect(download.suggestedFilename()).toBe('sudhaus-2.yaml');
    const file = await download.path();
    expect(readFileSync(file, 'utf8')).toContain('length: 31.7 m');

    await page.locator('[data-reset]').click();
    await eventually(() => field(page, 'bench', 'cable.length').inputValue()).toBe('38');
    await page.locator('[data-import]').setInputFiles(file);
    await eventually(() => field(page, 'bench', 'cable.length').inputValue()).toBe('31.7');
    expect(await values()).toEqual(mine);
    await page.locator('[data-notice="file"] button').first().click();
    await eventually(() => field(page, 'bench', 'cable.length').inputValue()).toBe('38');
    expect(someone.faults).toEqual([]);
    expect(await violationsOf(page)).toEqual([]);
  });

  it('a file with mistakes is not opened, and each is named with its line', async () => {
    const page = await someone.goOn('bench/');
    await give(page, 'bench', 'cable.length', '31.7');
    const upload = (text: string) =>
      page
        .locator('[data-import]')
        .setInputFiles({ name: 'mine.yaml', mimeType: 'text/yaml', buffer: Buffer.from(text) });
    const problems = page.locator('[data-file-problems]');
    await upload(
      'identity:\n  name: A\nplace:\n  region: estermark\n  station: lowfield\nframe:\n  lenght: 6 m\n  width: -2 m\n',
    );
    await eventually(() => problems.innerText()).toMatch(/mine\.yaml, line 7/u);
    expect(await problems.innerText()).toMatch(/mine\.yaml, line 8/u);
    expect(await field(page, 'bench', 'cable.length').inputValue()).toBe('31.7');
    await upload('x'.repeat(5_000_000));
    await eventually(() => problems.innerText()).toContain('5000 kB');
    await upload('');
    await eventually(() => problems.innerText()).not.toContain('5000 kB');
    expect(await problems.isVisible()).toBe(true);
    expect(await field(page, 'bench', 'cable.length').inputValue()).toBe('31.7');
    expect(someone.faults).toEqual([]);
  });

  it('a link carries a bench, asks before it takes the place of one’s own, and can be undone', async () => {
    const sharing = await reader({ permissions: ['clipboard-read', 'clipboard-write'] });
    const giver = await sharing.open('bench/');
    await give(giver, 'bench', 'identity.name', 'Linked');
    await give(giver, 'bench', 'cable.length', '31.7');
    await giver.locator('[data-link]').click();
    await eventually(() => giver.locator('[data-status]').textContent()).toBe('The link was copied.');
    const link = await giver.locator('[data-link-shown]').inputValue();
    expect(await giver.evaluate(() => navigator.clipboard.readText())).toBe(link);
    expect(link.startsWith(`${sharing.address}bench/#b=`)).toBe(true);
    const path = link.slice(sharing.address.length);
    await giver.close();

    const newcomer = await someone.goOn(path);
    await eventually(() => field(newcomer, 'bench', 'cable.length').inputValue()).toBe('31.7');
    expect(newcomer.url()).not.toContain('#b=');

    const asked = await someone.goOn('bench/');
    await give(asked, 'bench', 'cable.length', '22');
    await someone.comeBack(path);
    const notice = asked.locator('[data-notice="link"]');
    await eventually(() => notice.innerText()).toContain('“Linked”');
    expect(await field(asked, 'bench', 'cable.length').inputValue()).toBe('22');
    await notice.getByRole('button', { name: 'Show the bench of the link' }).click();
    await eventually(() => field(asked, 'bench', 'cable.length').inputValue()).toBe('31.7');
    await notice.getByRole('button', { name: /^Undo/u }).click();
    await eventually(() => field(asked, 'bench', 'cable.length').inputValue()).toBe('22');
    expect(someone.faults).toEqual([]);
  });

  it('a damaged link changes nothing and says what is wrong', async () => {
    const page = await someone.goOn('bench/');
    await give(page, 'bench', 'cable.length', '22');
    await page.locator('[data-link]').click();
    const link = await page.locator('[data-link-shown]').inputValue();
    for (const damaged of [
      link.slice(0, -3),
      link.replace(/#b=.{4}/u, '#b=AAAA'),
      `${link}%%%`,
      link.replace(/#b=.*/u, '#b='),
    ]) {
      await someone.comeBack(damaged.slice(someone.address.length));
      await eventually(() => page.locator('[data-notice="link"]').innerText()).toContain(
        'Your bench is as it was.',
      );
      expect(await field(page, 'bench', 'cable.length').inputValue()).toBe('22');
    }
    expect(someone.faults).toEqual([]);
  });

  it('starting again can be undone', async () => {
    const page = await someone.goOn('bench/');
    await give(page, 'bench', 'cable.length', '22');
    await give(page, 'bench', 'pots.count', 'many');
    await page.locator('[data-reset]').click();
    await eventually(() => field(page, 'bench', 'cable.length').inputValue()).toBe('38');
    await page.locator('[data-notice="reset"]').getByRole('button', { name: /^Undo/u }).click();
    await eventually(() => field(page, 'bench', 'cable.length').inputValue()).toBe('22');
    expect(await field(page, 'bench', 'pots.count').inputValue()).toBe('many');
  });
});

describe('the worksheet page', () => {
  it('draws the reader’s own worksheet in the browser, on demand', async () => {
    const someone = await reader();
    const page = await someone.open('worksheet/');
    await page.waitForLoadState('networkidle');
    const atRest = (await someone.allLoaded()).filter(({ path }) => path.endsWith('.js'));
    expect(atRest.reduce((sum, { bytes }) => sum + bytes.length, 0)).toBeLessThan(150_000);
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: 30_000 }),
      page.locator('[data-draw]').click(),
    ]);
    expect(download.suggestedFilename()).toBe('worksheet-first-row.pdf');
    const pdf = readFileSync(await download.path());
    expect(pdf.subarray(0, 5).toString('latin1')).toBe('%PDF-');
    expect(pdf.length).toBeGreaterThan(20_000);
    await eventually(() => page.locator('[data-draw-state]').innerText()).toContain('saved as a file');
    expect(someone.faults).toEqual([]);
    expect(await violationsOf(page)).toEqual([]);
  });
});

describe('without script', () => {
  it('the page is right: figures, drawings and answers of the example, and nothing that does nothing', async () => {
    const someone = await reader({ javaScriptEnabled: false });
    const page = await someone.open('chapters/winding/');
    expect(await figureNumber(page, 'winding.pitch')).toBeGreaterThan(0);
    expect(await page.locator('.drawn-sheet.wide svg').first().isVisible()).toBe(true);
    expect(await field(page, 'winding', 'cable.length').inputValue()).toBe('38');
    expect(await field(page, 'winding', 'cable.length').isDisabled()).toBe(true);
    expect(await page.locator('button:visible').count()).toBe(0);
    const bench = await someone.open('bench/');
    expect(await bench.locator('.no-script').innerText()).toContain('Without script');
    expect(await bench.locator('button:visible').count()).toBe(0);
  });
});

describe('on paper', () => {
  it('a chapter has its figures and no controls; what is folded away is unfolded', async () => {
    const page = await someone.goOn('chapters/winding/');
    await give(page, 'winding', 'cable.length', '30');
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('button:visible, nav:visible, .skip:visible').count()).toBe(0);
    const { border, colour, ground } = await field(page, 'winding', 'cable.length').evaluate((input) => ({
      border: getComputedStyle(input).borderTopWidth,
      colour: getComputedStyle(input).color,
      ground: getComputedStyle(document.body).backgroundColor,
    }));
    expect([border, colour, ground]).toEqual(['0px', 'rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
    expect(await page.locator('#winding .more .field').last().isVisible()).toBe(true);
    expect(await page.locator('.drawn-sheet.narrow:visible').count()).toBe(0);
    const size = await page.evaluate(() => parseFloat(getComputedStyle(document.body).fontSize));
    // 12 pt are 16 px of CSS.
    expect(size).toBe(16);
  });
});
