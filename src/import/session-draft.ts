/** Facts of a sheet → the session it is entered as, with its source; and what is still missing, in plain words. */
import { parse } from 'yaml';
import { z } from 'zod';
import { type Session, type Source, sessionSchema, sourceSchema } from '../../schemas/index.ts';
import { type Base, benchSourceId, codeSlug, type Entry } from '../base/index.ts';
import { counted } from '../words/index.ts';
import { type Fact, factSpecs, factValue } from './facts.ts';
import type { DecimalSign } from './numbers.ts';

/** A field that has no value, or not one that can stand there. */
export interface Missing {
  readonly field: string;
  readonly words: string;
  readonly help: string;
}

/** A field and where its value comes from. */
export interface Taken {
  readonly field: string;
  readonly value: string;
  readonly from: string;
}

export interface SessionDraft {
  /** Undefined where neither said nor to be made of date and bench. */
  readonly id: string | undefined;
  readonly existing: Entry<'outputs'> | undefined;
  /** Undefined while anything is missing. */
  readonly session: Session | undefined;
  readonly source: Source | undefined;
  readonly missing: readonly Missing[];
  readonly taken: readonly Taken[];
  /** Fields of an existing session that the sheet says otherwise. */
  readonly changed: readonly { readonly field: string; readonly before: string; readonly now: string }[];
  readonly isSine: boolean | undefined;
}

export interface SessionSettings {
  readonly base: Base;
  readonly facts: readonly Fact[];
  readonly sign: DecimalSign | undefined;
  readonly session: string | undefined;
  /** The session conditions are taken from. */
  readonly like: Entry<'outputs'> | undefined;
}

type Data = { [field: string]: unknown };

export function sessionDraft(settings: SessionSettings): SessionDraft {
  const { base, like, sign } = settings;
  const problems: Missing[] = [];
  const said = new Map<string, { value: unknown; from: string }>();
  for (const fact of settings.facts) {
    const spec = factSpecs[fact.name];
    if (spec?.kind === 'key' || spec?.kind === 'person' || spec?.field.startsWith('profile.')) continue;
    const value = spec ? factValue(fact, sign) : { fields: new Map([[fact.name, yamlValue(fact.text)]]) };
    if (value.problem !== undefined) {
      problems.push({
        field: fact.name,
        words: `${fact.from}: ${value.problem}.`,
        help: `Say it with --fact "${fact.name}=…"${fact.name === 'date' ? ', such as 2026-03-14' : ''}.`,
      });
    } else for (const [field, one] of value.fields) said.set(field, { value: one, from: fact.from });
  }
  const benchText = said.get('bench');
  if (benchText) said.set('bench', { ...benchText, value: knownBench(base, String(benchText.value)) });

  const date = said.get('date')?.value;
  const bench = said.get('bench')?.value ?? like?.data.bench;
  const id = settings.session ?? sessionId(base, date, bench);
  const existing = id === undefined ? undefined : base.outputs.get(id);
  const sourceId = existing?.data.source ?? (id === undefined ? undefined : benchSourceId(id));
  const data: Data = { source: sourceId };
  const sourceData: Data = {};
  const taken: Taken[] = [];
  const changed: { field: string; before: string; now: string }[] = [];
  if (existing) {
    Object.assign(data, structuredClone(existing.data));
    Object.assign(sourceData, structuredClone(base.sources.get(existing.data.source)?.data ?? {}));
  } else if (like) {
    copyLike(base, like, data, sourceData, taken, said);
  }
  const sayings = [...said].sort(([a], [b]) => (a < b ? -1 : 1));
  for (const [field, { value, from }] of sayings) {
    const [target, path] = field.startsWith('source.')
      ? ([sourceData, field.slice('source.'.length)] as const)
      : ([data, field] as const);
    const before = valueAt(target, path);
    if (existing && shown(before) !== shown(value)) {
      changed.push({ field, before: before === undefined ? 'nothing' : shown(before), now: shown(value) });
    }
    setAt(target, path, value);
    taken.push({ field, value: shown(value), from });
  }
  if (!existing) fillSource(sourceData, data);
  if (id === undefined) {
    problems.push({
      field: 'session',
      words: 'The session has no name.',
      help: 'Say --session, such as 2026-03-north; or the date and the bench, of which one is made.',
    });
  }
  const session = checkedData(sessionSchema, data, '', problems);
  const source = checkedData(sourceSchema, sourceData, 'source.', problems);
  const signal = valueAt(data, 'signal.kind');
  return {
    id,
    existing,
    session: problems.length === 0 ? session : undefined,
    source: problems.length === 0 ? source : undefined,
    missing: problems,
    taken,
    changed,
    isSine: signal === undefined ? undefined : signal === 'sine',
  };
}

/** What an earlier session of the same bench can tell: all but its day and its readings. */
function copyLike(
  base: Base,
  like: Entry<'outputs'>,
  data: Data,
  sourceData: Data,
  taken: Taken[],
  said: ReadonlyMap<string, unknown>,
): void {
  const { source, date: _, setAside: __, ...conditions } = like.data;
  Object.assign(data, structuredClone(conditions));
  const own = base.sources.get(source)?.data;
  if (own) {
    const { keptAt, trust, trustReason } = own;
    Object.assign(sourceData, { keptAt, trust, trustReason });
  }
  const from = `like ${like.id}`;
  const note = (field: string, value: unknown): void => {
    if (value === undefined || said.has(field)) return;
    if (Array.isArray(value)) taken.push({ field, value: counted(value.length, 'band'), from });
    else if (value !== null && typeof value === 'object') {
      for (const [inner, one] of Object.entries(value)) note(`${field}.${inner}`, one);
    } else taken.push({ field, value: shown(value), from });
  };
  for (const [field, value] of Object.entries(conditions)) note(field, value);
  if (own)
    for (const field of ['keptAt', 'trust', 'trustReason'] as const) note(`source.${field}`, own[field]);
}

/** Of a source, kind, title and date follow from the session. */
function fillSource(sourceData: Data, data: Data): void {
  const { date, bench } = data;
  const title =
    date === undefined || bench === undefined
      ? {}
      : { title: `Bench session of ${String(date)}, ${String(bench).replaceAll('-', ' ')}` };
  const own = { ...sourceData };
  Object.assign(sourceData, { kind: 'bench-session', ...title, date }, own);
}

/** A bench by its own name where one is known that this can only stand for, else a name made of the words. */
function knownBench(base: Base, text: string): string {
  const slug = codeSlug(text);
  const known = [...new Set([...base.outputs.values()].map(({ data }) => data.bench))];
  const alike = known.filter((one) => one === slug || one === `${slug}-bench` || one === `bench-${slug}`);
  return alike.length === 1 && alike[0] !== undefined ? alike[0] : slug;
}

/** `2026-03-north`; with the day where a session of that month has that name and another day. */
function sessionId(base: Base, date: unknown, bench: unknown): string | undefined {
  if (typeof date !== 'string' || typeof bench !== 'string') return undefined;
  const place = bench.replace(/^bench-|-bench$/g, '') || bench;
  const short = `${date.slice(0, 7)}-${place}`;
  const other = base.outputs.get(short);
  return other && other.data.date !== date ? `${date}-${place}` : short;
}

function yamlValue(text: string): unknown {
  try {
    return parse(text) as unknown;
  } catch {
    return text;
  }
}

function checkedData<T>(schema: z.ZodType<T>, data: Data, prefix: string, missing: Missing[]): T | undefined {
  const result = schema.safeParse(data);
  if (result.success) return result.data;
  for (const { path, message } of result.error.issues) {
    const field = path.join('.');
    if (field === 'source' || missing.some((one) => one.field === `${prefix}${field}`)) continue;
    const about = descriptionOf(schema, path) ?? field;
    const value = valueAt(data, field);
    missing.push({
      field: `${prefix}${field}`,
      words: value === undefined ? about : `${about} It cannot be ${shown(value)}: ${message}.`,
      help: `--fact "${factName(`${prefix}${field}`)}=…"`,
    });
  }
  return undefined;
}

function factName(field: string): string {
  return Object.entries(factSpecs).find(([, spec]) => spec.field === field)?.[0] ?? field;
}

function descriptionOf(schema: z.ZodType, path: readonly PropertyKey[]): string | undefined {
  let at: z.ZodType | undefined = schema;
  for (const part of path) {
    if (at instanceof z.ZodOptional) at = at.unwrap() as z.ZodType;
    if (at instanceof z.ZodArray) at = at.element as z.ZodType;
    else if (at instanceof z.ZodObject) at = (at.shape as Record<string, z.ZodType>)[String(part)];
    else return undefined;
  }
  return at?.meta()?.description;
}

function valueAt(data: Data, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>(
      (at, part) => (at !== null && typeof at === 'object' ? (at as Data)[part] : undefined),
      data,
    );
}

function setAt(data: Data, path: string, value: unknown): void {
  const parts = path.split('.');
  let at = data;
  for (const part of parts.slice(0, -1)) {
    const inner = at[part];
    const copy: Data = inner !== null && typeof inner === 'object' ? { ...(inner as Data) } : {};
    at[part] = copy;
    at = copy;
  }
  at[parts.at(-1) ?? ''] = value;
}

function shown(value: unknown): string {
  return typeof value === 'string' ? value : JSON.stringify(value);
}
