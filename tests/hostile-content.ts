/**
 * The demo content with something hostile in every free text of every kind of entry. Which fields are free text is
 * asked of the schemas: those that take such a text and name no other entry.
 */
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse, stringify } from 'yaml';
import type { z } from 'zod';
import { entrySchemas, type Kind } from '../schemas/index.ts';
import { ContentCopy } from './content-copy.ts';

/** Sets `ran` where a browser takes any part of it for more than text. */
const payloads = [
  `javascript:window.ran=1//"'><script>window.ran=1</script><img src=x onerror=window.ran=1><svg onload=window.ran=1></script></style></title></textarea>{{7*7}}\${7*7}&lt;b&gt;&#106;\u202eRTL<!--@@digest-of:nowhere@@]]>`,
  // For fields that hold no more than a few words.
  '<img src=x onerror=ran=1>',
] as const;

/** What every page that shows a long text must show, as text. */
export const shownMark = '<script>window.ran=1</script>';

/** Fields that take any text and are none: what they say is computed with, or names another entry. */
const notProse: readonly string[] = [
  'families.code.pattern',
  // Tests and answers of rules: names of values, in a notation of their own.
  'tables.rules.when.*',
  'tables.rules.give.*',
  // Ids of other entries, described in words of their own.
  'outputs.source',
  'statements.source',
];

/** Choices of a table are named by its rules: a further one is added beside them. */
const choices: readonly string[] = ['tables.inputs.values', 'tables.outputs.values'];

/** Raw HTML, odd schemes and pictures made of text, put below every Markdown body. */
export const hostileBody = `

<script>window.ran=1</script>

<img src=x onerror=window.ran=1> and <svg onload=window.ran=1></svg> and <a href="javascript:window.ran=1">raw</a>

<iframe srcdoc="<script>parent.ran=1</script>"></iframe><style>body{display:none}</style><base href="https://elsewhere.invalid/">

[one](javascript:window.ran=1) [two](JaVaScRiPt:window.ran=1) [three](data:text/html,<script>window.ran=1</script>)
[four](vbscript:window.ran=1) [five](&#106;avascript:window.ran=1) [six](<java\tscript:window.ran=1>) [seven][x]
[eight](//elsewhere.invalid/) <javascript:window.ran=1> [nine](https://elsewhere.invalid/"onmouseover="window.ran=1)

![picture](data:image/svg+xml;base64,PHN2ZyB4bWxucz0iaHR0cDovL3d3dy53My5vcmcvMjAwMC9zdmciIG9ubG9hZD0icGFyZW50LnJhbj0xIi8+)
![elsewhere](https://elsewhere.invalid/picture.svg "\\"onload=window.ran=1")
:code[<img src=x onerror=window.ran=1>] :value[nowhere <script>window.ran=1</script>] :span{onclick="window.ran=1" style="color:red"}

[x]: javascript:window.ran=1 "title\\" onmouseover=window.ran=1"

## \\<script>window.ran=1\\</script> {{7*7}} \u202ehgih

| \`<img src=x onerror=window.ran=1>\` | text[^1] |
| --- | --- |
| &lt;script&gt;window.ran=1&lt;/script&gt; | \\<svg onload=window.ran=1> |

[^1]: <img src=x onerror=window.ran=1>
`;

/** What of a Zod schema is looked at here. */
interface Def {
  readonly type: string;
  readonly shape?: Readonly<Record<string, z.core.$ZodType>>;
  readonly element?: z.core.$ZodType;
  readonly innerType?: z.core.$ZodType;
  readonly options?: readonly z.core.$ZodType[];
  readonly valueType?: z.core.$ZodType;
  readonly in?: z.core.$ZodType;
}
const defOf = (schema: z.core.$ZodType): Def => schema._zod.def as unknown as Def;
const takes = (schema: z.core.$ZodType, value: unknown): boolean =>
  (schema as z.ZodType).safeParse(value).success;

function isReference(schema: z.core.$ZodType): boolean {
  return ((schema as z.ZodType).meta()?.description ?? '').startsWith('The id of an entry in');
}

/** The longest payload a field takes; undefined where it takes none. */
function payloadFor(schema: z.core.$ZodType): string | undefined {
  if (defOf(schema).type !== 'string' || isReference(schema)) return undefined;
  return payloads.find((payload) => takes(schema, payload));
}

/** The paths of all free texts of a schema: `families.fitment.model`. */
function freeTexts(schema: z.core.$ZodType, path: string, found: Set<string>): Set<string> {
  const { type, shape, element, innerType, options, valueType, in: input } = defOf(schema);
  if (type === 'string') {
    if (payloadFor(schema) !== undefined && !notProse.includes(path)) found.add(path);
  } else if (shape) {
    for (const [key, field] of Object.entries(shape)) freeTexts(field, `${path}.${key}`, found);
  } else {
    for (const one of [element, innerType, input, ...(options ?? [])]) if (one) freeTexts(one, path, found);
    if (valueType) freeTexts(valueType, `${path}.*`, found);
  }
  return found;
}

export class HostileContent {
  readonly copy: ContentCopy;
  /** Free texts no entry had a place for: empty where none was forgotten. */
  readonly missed: readonly string[];

  private constructor(copy: ContentCopy, missed: readonly string[]) {
    this.copy = copy;
    this.missed = missed;
  }

  static async make(): Promise<HostileContent> {
    const copy = await ContentCopy.inEnglish();
    await addMissingKinds(copy);
    const wanted = new Set<string>();
    for (const [kind, schema] of Object.entries(entrySchemas)) freeTexts(schema, kind, wanted);
    const poison = new Poison();
    const files = await readdir(copy.folder, { recursive: true });
    for (const file of files.filter((name) => /\.(?:ya?ml|md)$/.test(name)).sort()) {
      const kind = (file === 'site.yaml' ? 'site' : file.split('/')[0]) as Kind;
      const path = join(copy.folder, file);
      const text = await readFile(path, 'utf8');
      const [, front, body] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/.exec(text) ?? [];
      const poisoned = stringify(poison.into(entrySchemas[kind], parse(front ?? text), kind));
      const whole = front === undefined ? poisoned : `---\n${poisoned}---\n${body}${hostileBody}`;
      await writeFile(path, whole);
    }
    const missed = [...wanted].filter((path) => !poison.reached.has(path));
    return new HostileContent(copy, missed);
  }
}

/** Kinds and fields the demo has none of. */
async function addMissingKinds(copy: ContentCopy): Promise<void> {
  await copy.write(
    'exceptions/one.yaml',
    stringify({
      rule: 'same-output',
      file: 'guides/x.md',
      about: 'text',
      reason: 'text',
      by: 'role',
      until: '2099-01-01',
    }),
  );
  await copy.write(
    'words/en.yaml',
    stringify({
      name: 'text',
      texts: { 'All codes': 'text', '{count}\u00a0readings': { one: 'text', other: 'text' } },
    }),
  );
  await copy.write(
    'tables/in-numbers.yaml',
    stringify({
      name: 'text',
      question: 'text',
      about: 'text',
      order: 900,
      hit: 'first',
      inputs: [{ id: 'rear', label: 'text', holds: 'yes-no', question: 'text' }],
      outputs: [{ id: 'gain', label: 'text', holds: 'number', unit: 'dB' }],
      rules: [{ id: 'one', give: { gain: 1 }, say: 'text' }],
      sources: ['equipment-classes'],
    }),
  );
  const session = 'outputs/2024-02-north/session.yaml';
  const setAside = [{ profiles: ['brasslight/8b0s-i5z'], reason: 'text', by: 'role', date: '2026-01-01' }];
  await copy.write(session, stringify({ ...parse(await copy.read(session)), setAside }));
}

class Poison {
  readonly reached = new Set<string>();
  #count = 0;

  /** The data with every free text replaced; what is not there and may be is added. */
  into(schema: z.core.$ZodType, data: unknown, path: string): unknown {
    const { type, shape, element, innerType, options, valueType, in: input } = defOf(schema);
    if (type === 'string') return this.#text(schema, data, path);
    if (shape) {
      const given = (data ?? {}) as Record<string, unknown>;
      if (data === undefined) return undefined;
      const entries = Object.entries(shape).map(([key, field]) => [
        key,
        this.into(field, given[key], `${path}.${key}`),
      ]);
      return Object.fromEntries(entries.filter(([, value]) => value !== undefined));
    }
    if (element) {
      const items = Array.isArray(data) ? (data as unknown[]) : [];
      if (choices.includes(path)) return [...items, this.into(element, undefined, path)];
      if (items.length === 0) {
        const added = this.into(element, undefined, path);
        return added === undefined ? data : [added];
      }
      return items.map((item) => this.into(element, item, path));
    }
    if (options) {
      const fitting = options.find((option) => data !== undefined && takes(option, data));
      return fitting ? this.into(fitting, data, path) : data;
    }
    if (valueType) {
      const given = Object.entries((data ?? {}) as Record<string, unknown>);
      return data === undefined
        ? undefined
        : Object.fromEntries(given.map(([key, value]) => [key, this.into(valueType, value, `${path}.*`)]));
    }
    const inner = innerType ?? input;
    return inner ? this.into(inner, data, path) : data;
  }

  #text(schema: z.core.$ZodType, data: unknown, path: string): unknown {
    const payload = payloadFor(schema);
    if (payload === undefined || notProse.includes(path)) return data;
    this.reached.add(path);
    this.#count += 1;
    // Codes stay what riders look up, as far as there is room; other texts are told apart by a number.
    const ways = [`${payload}${this.#count}`, `${String(data ?? '')}${payload}`.slice(-40), payload];
    const isCode = path.startsWith('profiles.') && payload === payloads[1];
    const text = (isCode ? ways.slice(1) : ways).find((one) => takes(schema, one));
    return text ?? data;
  }
}
