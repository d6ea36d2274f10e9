/** Parts of the page that the walk counts on. Not shared with other pages: a shared file is one more request. */

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
