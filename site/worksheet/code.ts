import { encode } from 'uqr';

/** Modules along one side beyond which the stronger correction makes the squares too many for the sheet. */
const fewest = 45;

/**
 * The QR code of a link: true for a dark module, without quiet zone. A quarter of its squares may be lost (level Q) while
 * it stays small, else a seventh (level M).
 *
 * @throws RangeError on a link that no QR code holds
 */
export function codeOf(link: string): readonly (readonly boolean[])[] {
  const make = (ecc: 'Q' | 'M') => encode(link, { ecc, border: 0 }).data;
  try {
    const strong = make('Q');
    return strong.length <= fewest ? strong : make('M');
  } catch {
    try {
      return make('M');
    } catch (cause) {
      throw new RangeError(`a link of ${link.length} characters is too long for a QR code`, { cause });
    }
  }
}
