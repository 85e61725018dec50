import { nameOf, pageElement, showTypeface } from './preview.ts';
import { openTypeface, type FontFiles } from './pdf.ts';
import { layOut, type WorksheetInput } from './worksheet.ts';

export { drawWorksheet } from './worksheet.ts';

/** Faces that the page knows already. */
const shown = new WeakSet<FontFiles>();

/** The sides of a worksheet as nodes of a page, in the order of printing. */
export async function pagesOnScreen(input: WorksheetInput, document: Document): Promise<SVGElement[]> {
  const { fonts } = input;
  if (!shown.has(fonts)) {
    await showTypeface(fonts, document);
    shown.add(fonts);
  }
  const { measure } = openTypeface(fonts);
  return layOut(input, measure).pages.map((page, index) =>
    pageElement(page, nameOf(page), `sheet-${index + 1}`, measure, document),
  );
}
