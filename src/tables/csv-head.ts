/**
 * The first row of a table as CSV: `rule: first`, `when: clean volts (V; from 0)`, `give: answer (keep | reflash)`, `say`.
 * What stands in brackets is what the column holds.
 */
import { feelLiteral, unquoted } from './dmn/feel-text.ts';
import { type Aggregation, aggregations, type HitPolicy, hitPolicies, type ValueType } from './table.ts';

/** Stands in the first column of the row that holds the default answers. No rule can be called so. */
export const otherwiseRow = 'if no rule fits';

export interface Head {
  readonly kind: 'when' | 'give';
  readonly id: string;
  /** Undefined where the brackets are missing: then it goes by the cells. */
  readonly type: ValueType | undefined;
  readonly mayBeMissing: boolean;
}

const kinds: Readonly<Record<string, ValueType>> = {
  number: { kind: 'number' },
  'yes/no': { kind: 'yes-no' },
  date: { kind: 'date' },
  text: { kind: 'text' },
};
const kindWords = { number: 'number', 'yes-no': 'yes/no', date: 'date', text: 'text' } as const;

/** What it takes to read a column’s head, or what is wrong with it. */
export type ReadHead = Head | { readonly kind: 'fault'; readonly message: string; readonly help: string };

export const headHelp =
  'A column begins with “rule”, “when: NAME (WHAT IT HOLDS)”, “give: NAME (WHAT IT HOLDS)” or “say”. It holds a unit such as V, or number, yes/no, date, text, or the values of a choice: keep | reflash.';

/** Reads the head of a column that begins with `when:` or `give:`. */
export function readHead(text: string): ReadHead {
  const parts = /^(when|give)\s*:\s*(.*)$/is.exec(text);
  const kind = parts?.[1]?.toLowerCase() as 'when' | 'give' | undefined;
  const rest = parts?.[2]?.trim();
  if (!kind || rest === undefined) {
    return { kind: 'fault', message: `“${text}” is no head of a column.`, help: headHelp };
  }
  const open = rest.endsWith(')') ? rest.indexOf('(') : -1;
  const name = (open < 0 ? rest : rest.slice(0, open)).trim().replace(/\s+/g, ' ');
  if (name === '') {
    return { kind: 'fault', message: `“${text}” names no column.`, help: headHelp };
  }
  const id = /^[a-z0-9]+(?: [a-z0-9]+)*$/.test(name) ? name.replaceAll(' ', '-') : name;
  if (open < 0) return { kind, id, type: undefined, mayBeMissing: false };
  const [what = '', ...flags] = split(rest.slice(open + 1, -1), ';');
  const mayBeMissing = flags.includes('may be missing');
  const type = typeOf(what);
  if (!type || (kind === 'give' && flags.length > 0)) {
    return {
      kind: 'fault',
      message: `“${rest.slice(open)}” does not say what “${name}” holds.`,
      help: headHelp,
    };
  }
  let held = type;
  for (const flag of flags.filter((one) => one !== 'may be missing')) {
    const bounded = withFlag(held, flag);
    if (!bounded) {
      return {
        kind: 'fault',
        message: `“${flag}” says nothing about “${name}”.`,
        help: 'After the semicolon stands “whole”, “0 to 12”, “from 0”, “up to 12” or “may be missing”.',
      };
    }
    held = bounded;
  }
  return { kind, id, type: held, mayBeMissing };
}

function typeOf(what: string): ValueType | undefined {
  if (what === '') return undefined;
  const plain = kinds[what.toLowerCase()];
  if (plain) return plain;
  const members = split(what, '|');
  if (members.length === 1) return what.startsWith('"') ? undefined : { kind: 'number', unit: what };
  const values = members
    .filter((one) => one !== '')
    .map((one) => (one.startsWith('"') ? unquoted(one) : one));
  return values.length === 0 ? undefined : { kind: 'choice', values: [...new Set(values)] };
}

function withFlag(type: ValueType, flag: string): ValueType | undefined {
  if (flag === 'whole') return type.kind === 'number' ? { ...type, whole: true } : undefined;
  const [, both, from, to, only, upTo] = /^((\S+) to (\S+))$|^from (\S+)$|^up to (\S+)$/.exec(flag) ?? [];
  if (both === undefined && only === undefined && upTo === undefined) return undefined;
  const [least, most] = [from ?? only, to ?? upTo];
  if (type.kind === 'number') {
    const [low, high] = [least, most].map((one) => (one === undefined ? undefined : Number(one)));
    if (Number.isNaN(low) || Number.isNaN(high)) return undefined;
    return {
      ...type,
      ...(low === undefined ? {} : { least: low }),
      ...(high === undefined ? {} : { most: high }),
    };
  }
  if (type.kind !== 'date') return undefined;
  return { ...type, ...(least === undefined ? {} : { least }), ...(most === undefined ? {} : { most }) };
}

/** Splits outside of quotation marks, and trims. */
function split(text: string, at: ';' | '|'): string[] {
  const parts: string[] = [''];
  for (const piece of text.match(/"(?:[^"\\]|\\.)*"|[^";|]+|[;|"]/gs) ?? []) {
    if (piece === at) parts.push('');
    else parts[parts.length - 1] += piece;
  }
  return parts.map((one) => one.trim());
}

/** The head of a column. */
export function headText({ kind, id, type, mayBeMissing }: Head & { readonly type: ValueType }): string {
  const name = /^[a-z0-9-]+$/.test(id) ? id.replaceAll('-', ' ') : id;
  const holds = [holdsText(type), ...(kind === 'when' ? flagTexts(type, mayBeMissing) : [])].join('; ');
  return `${kind}: ${name} (${holds})`;
}

function holdsText(type: ValueType): string {
  if (type.kind === 'number' && type.unit !== undefined) return type.unit;
  if (type.kind !== 'choice') return kindWords[type.kind];
  const values = type.values.map((one) =>
    /["|;()\\]|^\s|\s$/.test(one) || one === '' ? feelLiteral(one, type) : one,
  );
  // A choice of one would be read as a unit.
  return values.length === 1 ? `${values[0]} |` : values.join(' | ');
}

function flagTexts(type: ValueType, mayBeMissing: boolean): string[] {
  const flags: string[] = [];
  if (type.kind === 'number' && type.whole) flags.push('whole');
  if (type.kind === 'number' || type.kind === 'date') {
    const { least, most } = type;
    const written = (value: number | string): string =>
      typeof value === 'number' ? feelLiteral(value, type) : value;
    if (least !== undefined && most !== undefined) flags.push(`${written(least)} to ${written(most)}`);
    else if (least !== undefined) flags.push(`from ${written(least)}`);
    else if (most !== undefined) flags.push(`up to ${written(most)}`);
  }
  if (mayBeMissing) flags.push('may be missing');
  return flags;
}

/** `rule: collect sum` → its policy; undefined where it names none. */
export function readPolicy(
  text: string,
): { readonly hitPolicy: HitPolicy; readonly aggregation: Aggregation | undefined } | undefined {
  const words = /^rule\s*(?::\s*(.*))?$/is.exec(text);
  if (!words) return undefined;
  const said = (words[1] ?? 'unique').trim().toLowerCase().replace(/\s+/g, ' ');
  const aggregation = aggregations.find((one) => said === `collect ${one}`);
  const hitPolicy = aggregation ? 'collect' : hitPolicies.find((one) => one === said);
  return hitPolicy && { hitPolicy, aggregation };
}

export function policyText(hitPolicy: HitPolicy, aggregation: Aggregation | undefined): string {
  return `rule: ${hitPolicy}${aggregation === undefined ? '' : ` ${aggregation}`}`;
}
