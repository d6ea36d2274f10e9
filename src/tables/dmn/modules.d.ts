/** The parts of two libraries that are used here; neither brings types along. */

declare module 'sax' {
  /** A tag with its namespaces resolved, as the parser gives it with `xmlns: true`. */
  export interface QualifiedTag {
    readonly prefix: string;
    readonly local: string;
    readonly uri: string;
    readonly attributes: Readonly<Record<string, QualifiedAttribute>>;
  }
  export interface QualifiedAttribute {
    readonly name: string;
    readonly prefix: string;
    readonly local: string;
    readonly uri: string;
    readonly value: string;
  }
  export interface SAXParser {
    /** Characters read so far. */
    readonly position: number;
    /** Characters read when the tag at hand began: one more than the offset of its `<`. */
    readonly startTagPosition: number;
    onerror: (error: Error) => void;
    ondoctype: (text: string) => void;
    onopentag: (tag: QualifiedTag) => void;
    onclosetag: (name: string) => void;
    onattribute: (attribute: QualifiedAttribute) => void;
    ontext: (text: string) => void;
    oncdata: (text: string) => void;
    write(text: string): SAXParser;
    close(): SAXParser;
  }
  export function parser(
    strict: boolean,
    options: { readonly xmlns: boolean; readonly strictEntities: boolean },
  ): SAXParser;
  const sax: { readonly parser: typeof parser };
  export default sax;
}

declare module 'dmn-moddle' {
  /** An element of a DMN file: its attributes and children are properties under their own names. */
  export interface ModdleElement {
    readonly $type: string;
    readonly $attrs: Record<string, string>;
    readonly id?: string;
    readonly [property: string]: unknown;
    set(name: string, value: unknown): void;
    get(name: string): unknown;
  }
  export interface ReadXml {
    readonly rootElement: ModdleElement;
    readonly warnings: readonly Error[];
    readonly elementsById: Readonly<Record<string, ModdleElement>>;
  }
  export class DmnModdle {
    constructor(packages?: Readonly<Record<string, object>>);
    create(type: string, properties?: Readonly<Record<string, unknown>>): ModdleElement;
    fromXML(xml: string): Promise<ReadXml>;
    toXML(root: ModdleElement, options?: { readonly format?: boolean }): Promise<{ readonly xml: string }>;
  }
}
