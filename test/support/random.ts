/** Numbers that look like chance and are the same every time: uniform in (0, 1), and standard normal. */
export function seeded(seed: number): { readonly uniform: () => number; readonly normal: () => number } {
  let state = seed >>> 0;
  // A linear congruential generator (W. H. Press et al., Numerical Recipes, section 7.1, from memory).
  const uniform = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  // G. E. P. Box and M. E. Muller, 1958.
  const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}
