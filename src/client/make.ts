/** Elements made in one expression. */

type Child = Node | string | undefined;
export type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

/** An HTML element. Attributes that are `false` or undefined are left out, `true` stands without a value. */
export function make<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Tag] {
  return filled(document.createElement(tag), attributes, children);
}

/** An element of a drawing. */
export function makeSvg(tag: string, attributes: Attributes = {}, ...children: readonly Child[]): SVGElement {
  return filled(document.createElementNS('http://www.w3.org/2000/svg', tag), attributes, children);
}

/** An element of a formula. */
export function makeMath(tag: string, ...children: readonly Child[]): Element {
  return filled(document.createElementNS('http://www.w3.org/1998/Math/MathML', tag), {}, children);
}

function filled<Kind extends Element>(
  element: Kind,
  attributes: Attributes,
  children: readonly Child[],
): Kind {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) continue;
    element.setAttribute(name, value === true ? '' : String(value));
  }
  element.append(...children.filter((child) => child !== undefined));
  return element;
}
