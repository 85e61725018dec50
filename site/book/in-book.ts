import { atTheEnd } from './at-the-end.ts';

const after: ReadonlySet<string> = new Set(atTheEnd.map(([id]) => id));

/**
 * A chapter's markup made fit to stand in one page with all others: its headings go down a level, its ids carry the
 * chapter's name, and links to what the book holds lead into the book. The markup is the guide's own, made at build.
 */
export function inBook(markup: string, chapter: string, base: string, chapters: readonly string[]): string {
  const own = (id: string) => `${chapter}--${id}`;
  const ids = (list: string) => list.split(' ').map(own).join(' ');
  const top = base.replace(/[.*+?^${}()|[\]\\]/gu, String.raw`\$&`);
  return markup
    .replace(/<(\/?)h([2-5])\b/gu, (_, slash: string, level: string) => `<${slash}h${Number(level) + 1}`)
    .replace(
      /(\s(?:id|for|aria-labelledby|aria-describedby)=")([^"]+)"/gu,
      (_, head: string, list: string) => `${head}${ids(list)}"`,
    )
    .replace(
      /(\shref=")#([^"]+)"/gu,
      (_, head: string, id: string) => `${head}#${after.has(id) ? id : own(id)}"`,
    )
    .replace(/(url\()#([^)]+)\)/gu, (_, head: string, id: string) => `${head}#${own(id)})`)
    .replace(new RegExp(`(\\shref=")${top}sources/#([^"]+)"`, 'gu'), '$1#source--$2"')
    .replace(new RegExp(`(\\shref=")${top}glossary/#([^"]+)"`, 'gu'), '$1#word--$2"')
    .replace(
      new RegExp(`(\\shref=")${top}chapters/([^/"]+)/(#[^"]*)?"`, 'gu'),
      (whole, head: string, id: string) => (chapters.includes(id) ? `${head}#chapter--${id}"` : whole),
    );
}
