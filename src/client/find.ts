/** An element a page must have. @throws Error where it has not, which is a fault of the page. */
export function find<Kind extends HTMLElement>(
  within: ParentNode,
  selector: string,
  kind: new () => Kind,
): Kind {
  const element = within.querySelector(selector);
  if (!(element instanceof kind)) throw new Error(`The page has no ${selector}`);
  return element;
}
