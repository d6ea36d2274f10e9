/** Parts of a page that a script counts on. */

/**
 * The first element that fits.
 * @throws Error where there is none of that kind: page and script do not belong together.
 */
export function part<Kind extends HTMLElement>(
  within: ParentNode,
  selector: string,
  kind: new () => Kind,
): Kind {
  const element = within.querySelector(selector);
  if (!(element instanceof kind)) throw new Error(`The page has no ${selector}`);
  return element;
}
