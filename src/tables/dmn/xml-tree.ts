/** An XML text → its elements, each with where it stands. */
import sax from 'sax';
import { type Span, UnusableFile } from '../file-fault.ts';

export interface XmlElement {
  /** Name without its prefix. */
  readonly name: string;
  /** The namespace the name is in; empty for none. */
  readonly namespace: string;
  /** Attributes without a namespace of their own, by name. */
  readonly attributes: ReadonlyMap<string, string>;
  /** Attributes of other namespaces, as `namespace name`. */
  readonly foreign: ReadonlyMap<string, string>;
  readonly children: readonly XmlElement[];
  /** The text directly within it, blanks at both ends included. */
  readonly text: string;
  /** Its start tag. */
  readonly span: Span;
  /** Where its text stands; its start tag where it has none. */
  readonly textSpan: Span;
}

/** The largest file that is read, in characters: a thousand rules take a tenth of it. */
export const mostCharacters = 8 * 1024 ** 2;
/** How deep elements may lie in each other; decision tables take seven levels. */
const mostLevels = 60;

interface Growing {
  name: string;
  namespace: string;
  attributes: Map<string, string>;
  foreign: Map<string, string>;
  children: Growing[];
  text: string;
  span: Span;
  textSpan: Span;
}

/**
 * The root element. Document type declarations, and with them entities of any kind, are refused unread.
 * @throws UnusableFile where it is no well-formed XML, too large or too deep.
 */
export function readXml(text: string): XmlElement {
  if (text.length > mostCharacters) {
    throw new UnusableFile(
      { start: 0, end: 0 },
      `The file is larger than ${mostCharacters / 1024 ** 2} MB, which no file of decision tables is.`,
      'Export only the decisions you need.',
    );
  }
  const parser = sax.parser(true, { xmlns: true, strictEntities: true });
  const open: Growing[] = [];
  let root: Growing | undefined;
  let attributeNames = new Set<string>();
  const here = (): Span => ({ start: Math.max(0, parser.position - 1), end: parser.position });
  const tagSpan = (): Span => ({ start: parser.startTagPosition - 1, end: parser.position });

  parser.onerror = (error) => {
    throw notWellFormed(error, here(), open.at(-1));
  };
  parser.ondoctype = () => {
    throw new UnusableFile(
      { start: Math.max(0, text.lastIndexOf('<!DOCTYPE', parser.position)), end: parser.position },
      'The file declares a document type (DOCTYPE), which may load other files or swell without bounds.',
      'DMN files need none: delete the declaration, and write out the entities it declares.',
    );
  };
  parser.onattribute = ({ name }) => {
    if (attributeNames.has(name)) {
      throw new UnusableFile(tagSpan(), `The attribute “${name}” is given twice.`, 'Delete one of the two.');
    }
    attributeNames.add(name);
  };
  parser.onopentag = (tag) => {
    attributeNames = new Set();
    const element: Growing = {
      name: tag.local,
      namespace: tag.uri,
      attributes: new Map(),
      foreign: new Map(),
      children: [],
      text: '',
      span: tagSpan(),
      textSpan: tagSpan(),
    };
    for (const { prefix, local, uri, value } of Object.values(tag.attributes)) {
      if (prefix === '') element.attributes.set(local, value);
      else if (prefix !== 'xmlns') element.foreign.set(`${uri} ${local}`, value);
    }
    if (open.length >= mostLevels) {
      throw new UnusableFile(
        element.span,
        `More than ${mostLevels} elements lie in each other.`,
        'Decision tables take seven levels: export the file anew.',
      );
    }
    open.at(-1)?.children.push(element);
    root ??= element;
    open.push(element);
  };
  parser.onclosetag = () => {
    open.pop();
  };
  const see = (piece: string): void => {
    const element = open.at(-1);
    if (!element) return;
    if (element.text.trim() === '' && piece.trim() !== '') {
      // The parser hands a text over when it has seen the `<` after it.
      const start = text.indexOf(piece.trim().slice(0, 1), element.span.end);
      const end = text.indexOf('<', element.span.end);
      if (start >= 0 && start < end) {
        element.textSpan = { start, end: start + text.slice(start, end).trimEnd().length };
      }
    }
    element.text += piece;
  };
  parser.ontext = see;
  parser.oncdata = see;
  parser.write(text).close();
  if (!root) {
    throw new UnusableFile({ start: 0, end: 0 }, 'The file is empty.', 'Give a DMN file.');
  }
  return root;
}

const causes: readonly (readonly [RegExp, string])[] = [
  [/^Unexpected close tag/, 'An end tag closes something else than was opened last'],
  [/^Unmatched closing tag/, 'An end tag closes something that was not opened'],
  [/^Unclosed root tag/, 'The file ends before everything that was opened is closed'],
  [/^Unexpected end/, 'The file ends in the middle'],
  [
    /^(Invalid character entity|Invalid character in entity|Unescaped)/,
    'There is a “&” that begins no entity XML knows',
  ],
  [/^Unbound namespace prefix/, 'A prefix before “:” is not declared'],
  [/^(Non-whitespace|Text data outside|Unencoded)/, 'There is text outside of the elements'],
  [/^Max buffer length/, 'One text or name is longer than 64 KB'],
];

function notWellFormed(error: Error, span: Span, inside: Growing | undefined): UnusableFile {
  const [first = ''] = error.message.split('\n');
  const cause = causes.find(([pattern]) => pattern.test(first))?.[1] ?? first;
  const where = inside ? `, inside <${inside.name}>` : '';
  const help =
    inside === undefined
      ? 'A DMN file begins with <definitions …>. Export it anew from the program it was made with.'
      : 'Write “&amp;” for “&” and “&lt;” for “<”, and close what is opened; or export the file anew.';
  return new UnusableFile(span, `This is no well-formed XML: ${cause}${where}.`, help);
}
