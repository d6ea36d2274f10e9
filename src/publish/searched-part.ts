/** The part of a finished page that the search index is made of. */

/** What marks the part of a page that is searched; a page without it is left out. */
const searchedPart = 'data-pagefind-body';

/** What the index would pass over: sections that are marked so, drawings, and styles. */
const passedOver =
  /<section [^>]*?data-pagefind-ignore(?:="")?[^>]*>[\s\S]*?<\/section>|<svg[\s>][\s\S]*?<\/svg>|<style[\s>][\s\S]*?<\/style>/g;

const tagOf = /<(\/?)([a-z][a-z\d]*)((?:\s(?:[^>"]|"[^"]*")*)?)>/g;

/** Stand within a line: they part no words from each other. */
const inline = /^(?:a|abbr|code|em|span|strong|time)$/;

/** What the index goes by: its own marks, and names of places in a page. */
const told = /\s(?:id=|data-pagefind-)/;
const untold = /\s(?:class|href|title|role|lang|aria-[a-z]+|data-(?!pagefind)[a-z-]+)="[^"]*"/g;

/**
 * The searched part of a page as a small page of its own, which says the same to the index as the whole: to take in a
 * page costs by its bytes and tags, and most of a profile’s are plots, tables of numbers and links. Undefined where
 * nothing is searched.
 */
export function searchedPage(html: string): string | undefined {
  const at = html.indexOf(searchedPart);
  if (at < 0) return undefined;
  const begin = html.lastIndexOf('<main', at);
  const end = html.lastIndexOf('</main>');
  if (begin < 0 || end < at) return html;
  return `<html><body>${withFewerTags(html.slice(begin, end).replace(passedOver, ''))}</main></body></html>`;
}

/** Without attributes that tell the index nothing, and without tags within lines that have no other. */
function withFewerTags(html: string): string {
  const open: { readonly name: string; readonly stays: boolean }[] = [];
  return html.replace(tagOf, (tag, slash: string, name: string, given: string) => {
    if (!inline.test(name)) return given === '' ? tag : `<${slash}${name}${given.replace(untold, '')}>`;
    if (slash === '') {
      const stays = told.test(given);
      open.push({ name, stays });
      return stays ? tag : '';
    }
    const begun = open.pop();
    return begun?.name === name && !begun.stays ? '' : tag;
  });
}
