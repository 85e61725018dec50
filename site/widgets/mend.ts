import { allFields } from '../../calculators/bench/all-fields.ts';
import type { FieldPath } from '../../calculators/bench/fields.ts';
import { problemIn, type FieldValue } from '../../calculators/bench/read-field.ts';
import { fieldValue, withValues } from '../bench-value.ts';
import { notice } from './notice.ts';
import { loadRegion, regionIds } from './place.ts';
import { store } from './the-store.ts';

/**
 * Looks through a bench that an older guide has kept: what the fields of this guide do not allow goes back to the
 * example's value, and the reader is told which.
 */
export async function mendBench(): Promise<void> {
  const { state, example } = store;
  const stations = (await loadRegion(state.bench.place.region)).stations.map(({ id }) => id);
  const wrong = allFields.filter(({ path, field }) => {
    const references = field.shape === 'reference' && field.to === 'region' ? regionIds : stations;
    return problemIn(field, fieldValue(state.bench, path), references) !== null;
  });
  const paths = wrong.map(({ path }) => path);
  const values: Partial<Record<FieldPath, FieldValue>> = Object.fromEntries(
    paths.map((path) => [path, fieldValue(example, path)]),
  );
  store.mend({
    ...state,
    bench: withValues(state.bench, values),
    set: state.set.filter((path) => !paths.includes(path)),
  });
  if (wrong.length > 0)
    notice(
      'mended',
      `The guide has changed since you were here. These fields of your bench went back to the example’s values: ${wrong.map(({ field }) => field.label).join(', ')}.`,
    );
}
