/**
 * What the names of everything begin with that the guide keeps in a browser. Guides of several regions on one host share
 * a storage, and each keeps its own benches there.
 */
export const own = import.meta.env.CHOOSER ? `winter-bench.${import.meta.env.REGION}` : 'winter-bench';
