import type { APIRoute } from 'astro';
import { calculators } from '../../calculators/index.ts';
import { quantities } from '../../calculators/quantities/quantity.ts';
import { sources } from '../../calculators/sources.ts';
import { address } from '../address.ts';
import { citedInCalculator } from '../citations.ts';
import { edition } from '../edition.ts';
import { benches, example, region } from '../guide.ts';

/**
 * The guide for programs: its edition and region, every figure with its unit and sources, every source with its
 * standing, and where the figures of the example benches lie. Links are from the top of the host.
 */
const data = {
  format: 1,
  edition,
  region: { id: region.id, name: region.name, languages: region.languages },
  benchSchema: address('/bench.schema.json'),
  examples: Object.values(benches)
    .filter(({ bench }) => bench.place.region === region.id)
    .map(({ id }) => ({
      bench: address(`/benches/${id}.yaml`),
      worksheet: address(`/worksheets/${id}.pdf`),
      figures: address(`/worksheets/${id}.json`),
      onThePages: id === example.id,
    })),
  figures: Object.fromEntries(
    calculators.flatMap((calculator) =>
      Object.entries(calculator.figures).map(([name, { label, quantity }]) => [
        `${calculator.id}.${name}`,
        {
          label,
          quantity,
          unit: quantities[quantity].base,
          reference: address(`/reference/${calculator.id}/`),
          sources: [...new Set(citedInCalculator(calculator).map(({ source }) => source))],
        },
      ]),
    ),
  ),
  sources,
};

export const GET: APIRoute = () => new Response(`${JSON.stringify(data, null, 1)}\n`);
