import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  faceCount,
  restingTransmittance,
  stackTransmittance,
  type SheetStack,
} from '../calculators/bench/sheet-stack.ts';
import { exchangeThrough, type RadiantLayer } from '../calculators/laws/layered-radiation.ts';
import { exchangeEmissivity } from '../calculators/laws/radiation.ts';
import { sheets, type Sheet } from '../calculators/tables/films.ts';
import { expectNear } from './support/near.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any sheet that takes up a little: what it does not, it lets through or reflects. */
const anyLayer: fc.Arbitrary<RadiantLayer> = fc
  .tuple(between(0.05, 1), between(0, 1))
  .map(([emissivity, through]) => ({ emissivity, transmittance: (1 - emissivity) * through }));
const anyLayers = fc.array(anyLayer, { maxLength: 4 });
const anySurface = between(0.3, 1);

describe('radiation through sheets', () => {
  it('goes both ways alike, and nothing that is sent out is lost', () => {
    fc.assert(
      fc.property(anyLayers, anySurface, (layers, surface) => {
        const faces = 2 * layers.length + 2;
        const exchange = exchangeThrough(layers, surface);
        for (let a = 0; a < faces; a++) {
          const emissivity = layers[Math.ceil(a / 2) - 1]?.emissivity ?? surface;
          const sent = exchange.slice(a * faces, (a + 1) * faces).reduce((sum, one) => sum + one, 0);
          expectNear(sent, emissivity, 1e-9, `what face ${a} sends out`);
          for (let b = 0; b < a; b++) {
            expect(exchange[a * faces + b]).toBeGreaterThanOrEqual(0);
            expectNear(exchange[a * faces + b]!, exchange[b * faces + a]!, 1e-9, `${a} and ${b}`);
          }
        }
      }),
    );
  });

  it('is that of parallel planes where there is no sheet, and between opaque sheets', () => {
    fc.assert(
      fc.property(anySurface, between(0.05, 1), (surface, emissivity) => {
        expectNear(exchangeThrough([], surface)[1]!, exchangeEmissivity(surface, surface), 1e-9);
        const opaque = exchangeThrough([{ emissivity, transmittance: 0 }], surface);
        const pair = exchangeEmissivity(surface, emissivity);
        // Face 0 and face 1, face 2 and face 3; nothing gets past the sheet.
        for (const [at, expected] of [
          [1, pair],
          [2 * 4 + 3, pair],
          [3, 0],
          [1 * 4 + 2, 0],
        ] as const)
          expectNear(opaque[at]!, expected, 1e-9);
      }),
    );
  });

  it('of black surfaces passes sheets that reflect nothing in the share that they let through', () => {
    const clear = { transmittance: 0.8, emissivity: 0.2 };
    const exchange = exchangeThrough([clear, clear], 1);
    // From one surface straight through both to the other; from the first sheet through the second.
    expectNear(exchange[5]!, 0.8 * 0.8, 1e-12);
    expectNear(exchange[2 * 6 + 5]!, 0.2 * 0.8, 1e-12);
    expectNear(exchange[2 * 6 + 3]!, 0.2 * 0.2, 1e-12);
  });
});

const stack = (layers: readonly Sheet[], more: Partial<SheetStack> = {}): SheetStack => ({
  sheets: layers,
  wet: false,
  longwave: 0,
  place: 'side',
  size: 0.8,
  ...more,
});
const anySheet = fc.constantFrom<Sheet>(...Object.values(sheets));
const anyStack: fc.Arbitrary<SheetStack> = fc.record({
  sheets: fc.array(anySheet, { minLength: 1, maxLength: 3 }),
  wet: fc.boolean(),
  longwave: between(-0.1, 0.1),
  place: fc.constantFrom('side', 'top'),
  size: between(0.05, 3),
  moving: between(0, 30),
});

describe('skirt and cover', () => {
  it('come to rest with as much heat coming in as going out, whatever hangs there', () => {
    fc.assert(
      fc.property(anyStack, between(-20, 30), between(-40, 20), (one, inside, outside) => {
        const value = restingTransmittance(one, inside, outside);
        expect(Number.isFinite(value) && value > 0).toBe(true);
        const faces = new Float64Array(faceCount(one)).fill(NaN);
        for (let round = 0; round < 60; round++) stackTransmittance(one, inside, outside, faces, 0);
        expectNear(stackTransmittance(one, inside, outside, faces, 0), value, 1e-3 * value);
        const [low, high] = [Math.min(inside, outside), Math.max(inside, outside)];
        for (const face of faces) expect(face >= low - 1e-9 && face <= high + 1e-9).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('lose less with one more sheet, of any kind', () => {
    fc.assert(
      fc.property(anyStack, anySheet, (one, more) => {
        fc.pre(one.sheets.length < 3);
        const two = { ...one, sheets: [...one.sheets, more] };
        expect(restingTransmittance(two, 10, -10)).toBeLessThan(restingTransmittance(one, 10, -10));
      }),
      { numRuns: 200 },
    );
  });

  it('lose less wet than dry where the film lets heat radiation through, and the same where it does not', () => {
    for (const sheet of [sheets['film-plain'], sheets['film-infrared'], sheets.fleece])
      expect(restingTransmittance(stack([sheet], { wet: true }), 10, -10)).toBeLessThan(
        restingTransmittance(stack([sheet]), 10, -10),
      );
    expectNear(
      restingTransmittance(stack([sheets['twin-wall']], { wet: true }), 10, -10),
      restingTransmittance(stack([sheets['twin-wall']]), 10, -10),
      1e-12,
    );
  });

  it('a wet film still shines through a dry one outside it, so that a second film saves less than half', () => {
    // The dry outer film lets three quarters of the radiation of the wet inner one out (0.75 of it by the table of films).
    const film = sheets['film-plain'];
    const one = restingTransmittance(stack([film]), 10, -10);
    expect(restingTransmittance(stack([film, film]), 10, -10)).toBeGreaterThan(one / 2);
    expect(restingTransmittance(stack([film, film], { wet: true }), 10, -10)).toBeGreaterThan(one / 2);
  });

  it('loses more in a draught, and in none the same as in still air', () => {
    const still = restingTransmittance(stack([sheets['film-plain']]), 10, -10);
    expect(restingTransmittance(stack([sheets['film-plain']], { moving: 0 }), 10, -10)).toBe(still);
    expect(restingTransmittance(stack([sheets['film-plain']], { moving: 5 }), 10, -10)).toBeGreaterThan(
      still,
    );
  });
});
