/** XML 1.0 written from plain data. */

export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly content: string | readonly XmlElement[];
}

export function element(
  name: string,
  attributes: Readonly<Record<string, string>>,
  content: string | readonly XmlElement[] = [],
): XmlElement {
  return { name, attributes, content };
}

/** A whole document, a line an element. */
export function xmlText(root: XmlElement): string {
  return `<?xml version="1.0" encoding="utf-8"?>\n${written(root, '')}\n`;
}

function written({ name, attributes, content }: XmlElement, indent: string): string {
  const head = [name, ...Object.entries(attributes).map(([key, value]) => `${key}="${escaped(value)}"`)].join(
    ' ',
  );
  if (content.length === 0) return `${indent}<${head}/>`;
  if (typeof content === 'string') return `${indent}<${head}>${escaped(content)}</${name}>`;
  const inner = content.map((child) => written(child, `${indent}  `));
  return `${indent}<${head}>\n${inner.join('\n')}\n${indent}</${name}>`;
}

const names: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text with its marks escaped; characters XML 1.0 does not have (section 2.2) are left out. */
function escaped(text: string): string {
  return text
    .replace(/[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu, '')
    .replace(/[&<>"]/g, (mark) => names[mark] ?? mark);
}
