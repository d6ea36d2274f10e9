/** Types in a DMN file: FEEL’s own, and those it defines itself. */
import type { ValueType } from '../table.ts';
import { literalsOf } from './feel-text.ts';
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
    if (values && values.length > 0 && values.every((one) => typeof one === 'string')) {
      return { kind: 'choice', values: [...new Set(values)] };
    }
  }
  return type.kind === 'number' ? { ...type, ...boundsOf(text) } : type;
}

/** Closed bounds only: a table’s inputs have no open ones. */
function boundsOf(text: string): { least?: number; most?: number } {
  const number = String.raw`(-?\d+(?:\.\d+)?)`;
  const range = new RegExp(`^\\[\\s*${number}\\s*\\.\\.\\s*${number}\\s*\\]$`).exec(text);
  if (range) return { least: Number(range[1]), most: Number(range[2]) };
  const one = new RegExp(`^(<=|>=)\\s*${number}$`).exec(text);
  if (!one) return {};
  return one[1] === '>=' ? { least: Number(one[2]) } : { most: Number(one[2]) };
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
