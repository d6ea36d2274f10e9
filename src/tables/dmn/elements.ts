/** Small questions to the elements of a DMN file. */
import type { FeelText } from './model.ts';
import type { XmlElement } from './xml-tree.ts';

/** Children of a name, of the element’s own namespace. */
export function all(element: XmlElement, name: string): XmlElement[] {
  return element.children.filter((one) => one.name === name && one.namespace === element.namespace);
}

/** The first of them. */
export function only(element: XmlElement, name: string): XmlElement | undefined {
  return all(element, name)[0];
}

/** What stands in its `text` element, trimmed; empty where there is none. */
export function textOf(element: XmlElement): FeelText {
  const text = only(element, 'text');
  return text ? { text: text.text.trim(), span: text.textSpan } : { text: '', span: element.span };
}

/** FEEL takes blanks in names for one (DMN 1.3, 10.3.1.4). */
export function normalName(name: string): string {
  return name.trim().replace(/\s+/g, ' ');
}

/** Its name, else its id. */
export function nameOf(element: XmlElement): string {
  return element.attributes.get('name')?.trim() ?? element.attributes.get('id') ?? '';
}
