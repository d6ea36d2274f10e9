/** The part of a finished page that the search index is made of. */

/** What marks the part of a page that is searched; a page without it is left out. */
const searchedPart = 'data-pagefind-body';

/** What the index would pass over: sections that are marked so, drawings, and styles. */
const passedOver =
  /<section [^>]*?data-pagefind-ignore(?:="")?[^>]*>[\s\S]*?<\/section>|<svg[\s>][\s\S]*?<\/svg>|<style[\s>][\s\S]*?<\/style>/g;

/**
 * The searched part of a page as a small page of its own, which says the same to the index as the whole: to take in a
 * page costs by its bytes, and most of a profile’s are plots and tables of numbers. Undefined where nothing is searched.
 */
export function searchedPage(html: string): string | undefined {
  const at = html.indexOf(searchedPart);
  if (at < 0) return undefined;
  const begin = html.lastIndexOf('<main', at);
  const end = html.lastIndexOf('</main>');
  if (begin < 0 || end < at) return html;
  return `<html><body>${html.slice(begin, end).replace(passedOver, '')}</main></body></html>`;
}
