/**
 * What editors say of a faulty entry. Held against the language server that editors use for YAML (yaml-language-server,
 * as VS Code’s YAML extension and others run it), and against Ajv: both find fault where the check does, and where
 * JSON Schema has room for words, the editor’s are those of the check.
 */
import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { dirname, join, matchesGlob, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { parse } from 'yaml';
import { getLanguageService } from 'yaml-language-server';
import { entrySchemas, type Kind, kindNouns } from '../../schemas/index.ts';
import { entrySchemaFiles, jsonSchemaFiles } from '../../schemas/json-schemas.ts';
import { TextFile, validate } from '../../src/base/index.ts';
import { readYaml } from '../../src/base/yaml.ts';
import { editorSettings } from '../../src/cli/starter/editor-settings.ts';
import { validator } from './ajv.ts';

const schemas = jsonSchemaFiles();

const service = getLanguageService({
  schemaRequestService: async (uri) => schemas.get(uri.replace('file:///', '')) ?? '',
  workspaceContext: { resolveRelativePath: (path) => path },
});
service.configure({ validate: true });
let documents = 0;

/** What the editor marks in an entry: message, and where the marked text begins. */
async function editorOn(kind: Kind, text: string) {
  // The editor finds the schema by the first line, as in the entries. It remembers documents by their addresses.
  const first = `# yaml-language-server: $schema=file:///${entrySchemaFiles[kind]}\n`;
  documents += 1;
  const document = TextDocument.create(`file:///${documents}.yaml`, 'yaml', 1, `${first}${text}`);
  const marks = await service.doValidation(document, false);
  return marks.map(({ message, range }) => ({
    message: typeof message === 'string' ? message : message.value,
    line: range.start.line,
  }));
}

/** What the check says of it. */
function checkOn(kind: Kind, text: string) {
  const { data, positions, findings } = readYaml(new TextFile('x.yaml', text));
  expect(findings).toEqual([]);
  return validate<object>(entrySchemas[kind], data, positions, kindNouns[kind]).findings;
}

function ajvOn(kind: Kind, text: string): string[] {
  const isValid = validator(entrySchemaFiles[kind]);
  isValid(parse(text));
  return (isValid.errors ?? []).map(({ instancePath, keyword, params }) =>
    keyword === 'required'
      ? `${instancePath}/${String(params.missingProperty)}`
      : keyword === 'additionalProperties'
        ? `${instancePath}/${String(params.additionalProperty)}`
        : instancePath,
  );
}

const profile = `family: brasslight
code: "8B0S-I5Z"
origin: factory
system: unamplified
about: About it.
sources: [somewhere]
`;
const source = `kind: data-sheet
title: A title
date: 2024-02-01
keptAt: Binder 1
trust: high
trustReason: A reason.
`;
const plan = `name: Two
summary: A pair.
order: 5
feeds: speakers
rear: needed
mostBassBoostDb: 6
canCorrect: false
sources: [somewhere]
`;
const exception = `rule: same-output
file: profiles/a/b.yaml
reason: A reason.
by: bench technician
until: 2027-01-31
`;
const table = `name: A table
question: What now?
about: What it decides.
order: 1
hit: first
inputs:
  - { id: clean-volts, label: Clean volts, holds: characteristic, characteristic: clean-volts }
outputs:
  - { id: answer, label: Answer, holds: text }
rules:
  - { id: all, give: { answer: "yes" } }
sources: [somewhere]
`;
const site = `name: Shop
tagline: A line
about: About it.
contact: {}
address: https://help.example
colours: { accent: "#5a3a8a", accentDark: "#c8b0f0" }
`;

interface Fault {
  readonly kind: Kind;
  readonly entry: string;
  readonly good: string;
  readonly bad: string;
  /** Where the fault is. */
  readonly pointer: string;
  /** Whether the editor has the words of the check for it. */
  readonly sameWords: boolean;
}

const faults: readonly Fault[] = [
  {
    kind: 'profiles',
    entry: profile,
    good: 'origin: factory',
    bad: 'origin: factori',
    pointer: '/origin',
    sameWords: true,
  },
  {
    kind: 'profiles',
    entry: profile,
    good: 'origin: factory',
    bad: 'origin: 7',
    pointer: '/origin',
    sameWords: true,
  },
  {
    kind: 'profiles',
    entry: profile,
    good: 'code: "8B0S-I5Z"',
    bad: 'code: 2024',
    pointer: '/code',
    sameWords: true,
  },
  {
    kind: 'profiles',
    entry: profile,
    good: 'sources:',
    bad: 'formerly: [Old Name]\nsources:',
    pointer: '/formerly/0',
    sameWords: true,
  },
  {
    kind: 'sources',
    entry: source,
    good: '2024-02-01',
    bad: 'last spring',
    pointer: '/date',
    sameWords: true,
  },
  {
    kind: 'sources',
    entry: source,
    good: 'trust: high',
    bad: 'trust: very',
    pointer: '/trust',
    sameWords: true,
  },
  { kind: 'plans', entry: plan, good: 'order: 5', bad: 'order: soon', pointer: '/order', sameWords: true },
  {
    kind: 'plans',
    entry: plan,
    good: 'canCorrect: false',
    bad: 'canCorrect: perhaps',
    pointer: '/canCorrect',
    sameWords: true,
  },
  {
    kind: 'exceptions',
    entry: exception,
    good: 'rule: same-output',
    bad: 'rule: Same output',
    pointer: '/rule',
    sameWords: true,
  },
  {
    kind: 'site',
    entry: site,
    good: '"#5a3a8a"',
    bad: 'purple',
    pointer: '/colours/accent',
    sameWords: true,
  },
  {
    kind: 'site',
    entry: site,
    good: 'address:',
    bad: 'correctAt: https://git.example/help\naddress:',
    pointer: '/correctAt',
    sameWords: true,
  },
  {
    kind: 'tables',
    entry: table,
    good: 'id: clean-volts',
    bad: 'id: Clean_Volts',
    pointer: '/inputs/0/id',
    sameWords: true,
  },
  // What follows has words of the editor’s own: they name the bound or the field, and JSON Schema has no place for others.
  { kind: 'plans', entry: plan, good: 'order: 5', bad: 'order: 5000', pointer: '/order', sameWords: false },
  { kind: 'plans', entry: plan, good: 'order: 5', bad: 'order: 5.5', pointer: '/order', sameWords: false },
  { kind: 'plans', entry: plan, good: 'rear: needed\n', bad: '', pointer: '/rear', sameWords: false },
  {
    kind: 'sources',
    entry: source,
    good: 'title: A title',
    bad: 'title: ""',
    pointer: '/title',
    sameWords: false,
  },
  {
    kind: 'profiles',
    entry: profile,
    good: 'about:',
    bad: 'colour: red\nabout:',
    pointer: '/colour',
    sameWords: false,
  },
  { kind: 'profiles', entry: profile, good: '[somewhere]', bad: '[]', pointer: '/sources', sameWords: false },
];

describe('check, Ajv and editor find fault at the same place', () => {
  test.each(faults)('$kind: $bad', async ({ kind, entry, good, bad, pointer, sameWords }) => {
    expect(checkOn(kind, entry)).toEqual([]);
    expect(ajvOn(kind, entry)).toEqual([]);
    expect(await editorOn(kind, entry)).toEqual([]);
    expect(entry.split(good)).toHaveLength(2);
    const faulty = entry.replace(good, bad);

    const [finding, ...more] = checkOn(kind, faulty);
    expect(more).toEqual([]);
    const pointers = ajvOn(kind, faulty);
    expect(pointers).toContain(pointer);
    // Of a block of several kinds, every other kind is found wrong too, and the block with them.
    if (kind !== 'tables') expect(new Set(pointers)).toEqual(new Set([pointer]));
    const [mark] = await editorOn(kind, faulty);
    if (!finding || !mark) throw new Error('check or editor has nothing to say');
    // A field that is not there is marked at the beginning of the block by one, at its end by none.
    if (bad !== '') expect(mark.line).toBe(finding.place.line);
    if (!sameWords) return;
    const words = mark.message.replace(/\.$/, '');
    expect(
      finding.help.startsWith(words) || finding.help.endsWith(mark.message),
      `${finding.help} / ${mark.message}`,
    ).toBe(true);
  });
});

describe('editors are told which schema is for which entry', () => {
  test('.vscode/settings.json of this repository is what is written for shops, with its own schemas (npm run schemas)', async () => {
    expect(await readFile('.vscode/settings.json', 'utf8')).toBe(editorSettings('schemas/json'));
  });

  test('each YAML entry has one, by the settings and by its first line, and it is the same', async () => {
    const wired = Object.entries(
      JSON.parse(editorSettings('schemas/json'))['yaml.schemas'] as Record<string, string>,
    );
    const files = (await readdir('content', { recursive: true })).filter((file) => file.endsWith('.yaml'));
    expect(files.length).toBeGreaterThan(80);
    for (const file of files) {
      const path = join('content', file);
      const [schema, ...others] = wired.filter(([, pattern]) => matchesGlob(path, pattern));
      expect(others).toEqual([]);
      const [, named = ''] =
        /^# yaml-language-server: \$schema=(\S+)\n/.exec(await readFile(path, 'utf8')) ?? [];
      expect(resolve(dirname(path), named), file).toBe(resolve(schema?.[0] ?? ''));
      expect(existsSync(resolve(dirname(path), named))).toBe(true);
    }
  });
});
