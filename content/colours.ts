/** Whether text of a colour can be read on a page, for colours that an office brings. */

const channel = (eight: number): number => {
  const share = eight / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
};

/** How bright a colour is beside white [1]: relative luminance of WCAG 2.2, of `#rrggbb`. */
export function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) =>
    channel(parseInt(colour.slice(at, at + 2), 16)),
  );
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast of two colours, 1 to 21: the ratio of WCAG 2.2. */
export function contrast(one: string, other: string): number {
  const [bright = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (bright + 0.05) / (dark + 0.05);
}

/** What text of ordinary size asks for (WCAG 2.2, 1.4.3, level AA). */
export const leastContrast = 4.5;

/** Paper and panels of the guide, on which text stands (`site/styles/tokens.css`). */
export const grounds = { light: ['#fbf9f3', '#f3efe4'], dark: ['#15191a', '#1c2223'] } as const;

/** The lowest contrast of a colour on the grounds of a scheme. */
export const lowestContrast = (colour: string, scheme: keyof typeof grounds): number =>
  Math.min(...grounds[scheme].map((ground) => contrast(colour, ground)));
