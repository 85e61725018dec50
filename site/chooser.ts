import type { Region } from '../calculators/region.ts';
import { policy } from './policy.ts';

/** The page at the top of a guide of several regions, on which a reader chooses one. It needs no script. */

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escape = (text: string): string => text.replace(/[&<>"]/gu, (letter) => escapes[letter] ?? letter);

/** Where the style sheet of the page lies beside it. */
export const chooserStyles = 'chooser.css';

/**
 * @param regions those that there are to choose from
 * @param base address of the page from the top of the host, with a slash at either end
 * @param lost whether somebody has asked for a page that is not there
 */
export function chooserPage(regions: readonly Region[], base: string, lost = false): string {
  const sorted = [...regions].sort((one, other) => one.name.localeCompare(other.name, 'en'));
  const items = sorted.map(
    ({ id, name, about, office }) => `<li>
<a href="${base}${id}/">${escape(name)}</a>
<p>${escape(about)}</p>
<p class="office">${escape(office.name)}</p>
</li>`,
  );
  const title = 'The winter bench guide';
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${escape(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<title>${title}: choose a region</title>
<meta name="description" content="Each region has a guide of its own, with its weather, mains, prices, cautions and contacts.">
<link rel="icon" type="image/svg+xml" href="${base}${sorted[0]?.id ?? ''}/icon.svg">
<link rel="stylesheet" href="${base}${chooserStyles}">
</head>
<body>
<main>
${lost ? '<p class="lost">There is no page at this address.</p>\n' : ''}<h1>${title}</h1>
<p class="lede">Choose the region that your bench stands in. Its guide has that region’s weather, mains, prices, cautions and contacts, and keeps its own benches.</p>
<ul>
${items.join('\n')}
</ul>
</main>
</body>
</html>
`;
}
