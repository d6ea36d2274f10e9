/** Types in a DMN file: FEEL’s own, and those it defines itself. */
import type { Value, ValueType } from '../table.ts';
import { literalOf, literalsOf } from './feel-text.ts';
import { type FeelType, ownNamespace } from './model.ts';
import type { XmlElement } from './xml-tree.ts';

const plain: Readonly<Record<string, FeelType>> = {
  number: { kind: 'number' },
  string: { kind: 'text' },
  boolean: { kind: 'yes-no' },
  date: { kind: 'date' },
  time: { kind: 'time' },
  'date and time': { kind: 'date and time' },
  datetime: { kind: 'date and time' },
  'days and time duration': { kind: 'duration' },
  'years and months duration': { kind: 'duration' },
  daytimeduration: { kind: 'duration' },
  yearmonthduration: { kind: 'duration' },
  any: { kind: 'any' },
};

/** Resolves type names of one file. */
export class FeelTypes {
  readonly #definitions: ReadonlyMap<string, XmlElement>;

  /** @param definitions the `itemDefinition` elements of the file. */
  constructor(definitions: readonly XmlElement[]) {
    this.#definitions = new Map(definitions.map((one) => [one.attributes.get('name') ?? '', one]));
  }

  /** What a `typeRef` stands for; any type where there is none or it is not defined in the file. */
  named(typeRef: string | undefined, seen: readonly string[] = []): FeelType {
    if (typeRef === undefined || typeRef.trim() === '') return { kind: 'any' };
    const name = typeRef.trim();
    const defined = this.#definitions.get(name);
    if (!defined || seen.includes(name)) {
      // Older tools write FEEL’s types with a prefix: feel:number.
      return plain[name.replace(/^[\w-]+:/, '').toLowerCase()] ?? { kind: 'any' };
    }
    const child = (wanted: string): XmlElement | undefined =>
      defined.children.find((one) => one.name === wanted);
    if (
      defined.attributes.get('isCollection') === 'true' ||
      child('itemComponent') ||
      child('functionItem')
    ) {
      return { kind: 'structure', name };
    }
    const base = this.named(child('typeRef')?.text, [...seen, name]);
    return narrowed(base, child('allowedValues'));
  }
}

/** A type held to allowed values: a choice where they are texts, bounds where they are a range of numbers. */
export function narrowed(type: FeelType, allowed: XmlElement | undefined): FeelType {
  const text = allowed?.children.find((one) => one.name === 'text')?.text.trim();
  if (text === undefined || text === '' || text === '-') return type;
  if (type.kind === 'text' || type.kind === 'any' || type.kind === 'choice') {
    const values = literalsOf(text)?.filter((one) => one !== null);
    if (values && values.length > 0 && values.every(isText)) {
      return { kind: 'choice', values: [...new Set(values)] };
    }
  }
  if (type.kind === 'number') return { ...type, ...boundsOf(text, isNumber) };
  if (type.kind === 'date') return { ...type, ...boundsOf(text, isText) };
  return type;
}

const isNumber = (value: Value | undefined): value is number => typeof value === 'number';
const isText = (value: Value | undefined): value is string => typeof value === 'string';

/** Closed bounds only: a table’s inputs have no open ones. */
function boundsOf<Bound extends Value>(
  text: string,
  fits: (value: Value | undefined) => value is Bound,
): { readonly least?: Bound; readonly most?: Bound } {
  const bound = (written: string | undefined): Bound | undefined => {
    const value = written === undefined ? undefined : literalOf(written);
    return fits(value) ? value : undefined;
  };
  const [, low, high] = /^\[(.*?)\.\.(.*)\]$/.exec(text) ?? [];
  const least = bound(low ?? /^>=(.*)$/.exec(text)?.[1]);
  const most = bound(high ?? /^<=(.*)$/.exec(text)?.[1]);
  return { ...(least === undefined ? {} : { least }), ...(most === undefined ? {} : { most }) };
}

/** Adds what our own export keeps beside DMN: unit, whole numbers. */
export function withOwn(type: FeelType, clause: XmlElement): FeelType {
  if (type.kind !== 'number') return type;
  const unit = clause.foreign.get(`${ownNamespace} unit`);
  const whole = clause.foreign.get(`${ownNamespace} whole`) === 'true';
  return { ...type, ...(unit === undefined ? {} : { unit }), ...(whole ? { whole } : {}) };
}

/** The type a column of a table can have; undefined where it cannot be one. */
export function columnType(type: FeelType): ValueType | undefined {
  switch (type.kind) {
    case 'number':
    case 'date':
    case 'choice':
    case 'text':
    case 'yes-no':
      return type;
    default:
      return undefined;
  }
}
