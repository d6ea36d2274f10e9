/** The one reader of content: a folder in, a linked Base and everything wrong with its shape out. */
import type { z } from 'zod';
import { type EntryData, entrySchemas, type Kind, kindNouns, markdownKinds } from '../../schemas/index.ts';
import { type Base, Entry, type EntryMap } from './base.ts';
import { beyondBounds } from './bounds.ts';
import { type ContentFiles, FolderFiles } from './content-folder.ts';
import { compareFindings, type Finding, type Place } from './finding.ts';
import { danglingLinks, linkedKinds } from './links.ts';
import { readMarkdown } from './markdown.ts';
import { type Memory, noMemory } from './memory.ts';
import { nearest } from './nearest.ts';
import { knownReadings, type ReadingTable, readReadings } from './readings.ts';
import type { TextFile } from './text-file.ts';
import { validate } from './validate.ts';
import { readYaml } from './yaml.ts';

export interface BaseReading {
  readonly base: Base;
  /** What is wrong with the shape of files and the links between them. */
  readonly findings: readonly Finding[];
}

/** What a file of the content folder is, by its path. */
type FileRole =
  | { readonly role: 'entry'; readonly kind: Kind; readonly id: string }
  | { readonly role: 'readings'; readonly session: string }
  | { readonly role: 'stray'; readonly message: string; readonly help: string };

/**
 * Reads every file of a content folder (on disk, or from elsewhere) once, validates it, and links the entries.
 * Entries that do not fit their schema are left out of the Base and named by a finding.
 * @throws CannotRun where the folder cannot be read.
 */
export async function readBase(from: string | ContentFiles, memory: Memory = noMemory): Promise<BaseReading> {
  const content = typeof from === 'string' ? new FolderFiles(from) : from;
  const { files, findings } = content.list();
  const entries = new Map<Kind, Map<string, Entry>>();
  const readings = new Map<string, ReadingTable>();
  const broken = new Set<string>();

  for (const file of files) {
    const role = roleOf(file);
    if (role.role === 'stray') {
      findings.push(finding('stray-file', startOf(file), role.message, role.help));
      continue;
    }
    const { source, findings: unreadable } = content.read(file);
    findings.push(...unreadable);
    if (role.role === 'readings') {
      if (unreadable.length > 0) continue;
      const sheet = readSheet(source, role.session, memory);
      readings.set(role.session, sheet.table);
      findings.push(...sheet.findings);
      continue;
    }
    const read = unreadable.length > 0 ? undefined : readEntry(source, role.kind, role.id, memory);
    findings.push(...(read?.findings ?? []));
    if (read?.entry) {
      const ofKind = entries.get(role.kind) ?? new Map<string, Entry>();
      entries.set(role.kind, ofKind.set(role.id, read.entry));
    } else broken.add(`${role.kind}/${role.id}`);
  }

  findings.push(...misplacedProfiles(entries, broken));
  const base = link(content.folder, entries, readings);
  findings.push(...placementFindings(base, broken), ...danglingLinks(base, broken));
  return { base, findings: findings.sort(compareFindings) };
}

/** A sheet, or what an earlier run knows of one without a finding. */
function readSheet(
  source: TextFile,
  session: string,
  memory: Memory,
): { table: ReadingTable; findings: readonly Finding[] } {
  const key = `sheet ${source.digest}`;
  const profiles = memory.recall(key) as readonly string[] | undefined;
  if (profiles) return { table: knownReadings(source, session, profiles), findings: [] };
  const sheet = readReadings(source, session);
  if (sheet.findings.length === 0) memory.keep(key, sheet.table.profiles);
  return sheet;
}

/** An entry, or what an earlier run knows of one without a finding. */
function readEntry(
  source: TextFile,
  kind: Kind,
  id: string,
  memory: Memory,
): { entry: Entry | undefined; findings: readonly Finding[] } {
  const key = `${kind} ${source.digest}`;
  const known = memory.recall(key) as EntryData<Kind> | undefined;
  if (known) {
    const parse = () => (markdownKinds.includes(kind) ? readMarkdown(source) : readYaml(source));
    return { entry: new Entry(kind, id, source, known, parse), findings: [] };
  }
  const reading = parsedEntry(source, kind, id);
  if (reading.entry) memory.keep(key, reading.entry.data);
  return reading;
}

function parsedEntry(
  source: TextFile,
  kind: Kind,
  id: string,
): { entry: Entry | undefined; findings: readonly Finding[] } {
  const isMarkdown = markdownKinds.includes(kind);
  const beyond = beyondBounds(source, isMarkdown);
  if (beyond) return { entry: undefined, findings: [beyond] };
  const markdown = isMarkdown ? readMarkdown(source) : undefined;
  const read = markdown ?? readYaml(source);
  if (read.findings.length > 0) return { entry: undefined, findings: read.findings };
  const noun = kindNouns[kind];
  if (read.data === null || typeof read.data !== 'object' || Array.isArray(read.data)) {
    return {
      entry: undefined,
      findings: [
        finding(
          'schema',
          read.positions.place([]),
          `This ${noun} is not made of “name: value” lines.`,
          'Compare with an entry of the same kind that works.',
        ),
      ],
    };
  }
  const { data, findings } = validate(schemaOf(kind), read.data, read.positions, noun);
  if (data === undefined) return { entry: undefined, findings };
  // Where things stand is asked of few entries: it is found again then, and not kept of all of them.
  const parse = markdown ? () => markdown : () => readYaml(source);
  return { entry: new Entry(kind, id, source, data, parse), findings };
}

function schemaOf(kind: Kind): z.ZodType<EntryData<Kind>> {
  return entrySchemas[kind] as unknown as z.ZodType<EntryData<Kind>>;
}

/** Ids are paths of lower-case words, so that they can stand in an address as they are. */
const idPattern = /^[a-z0-9]+(?:-[a-z0-9]+)*(?:\/[a-z0-9]+(?:-[a-z0-9]+)*)*$/;

/** Whether a name can be the id of an entry, and so stand in an address. */
export function isEntryId(id: string): boolean {
  return idPattern.test(id);
}

function roleOf(file: string): FileRole {
  if (file === 'site.yaml') return { role: 'entry', kind: 'site', id: 'site' };
  const slash = file.indexOf('/');
  const folder = slash === -1 ? '' : file.slice(0, slash);
  const rest = file.slice(slash + 1);
  const kind = linkedKinds.find((known) => known === folder);
  if (!kind) {
    const guess = folder === '' ? undefined : nearest(folder, linkedKinds);
    return {
      role: 'stray',
      message: 'No entry is kept here, so nothing reads this file.',
      help: guess
        ? `Did you mean the folder ${guess}/?`
        : `Move it into one of: ${linkedKinds.map((known) => `${known}/`).join(', ')}, or delete it.`,
    };
  }
  if (kind === 'outputs') return outputRole(rest);
  const ending = markdownKinds.includes(kind) ? '.md' : '.yaml';
  const id = rest.slice(0, -ending.length);
  if (!rest.endsWith(ending)) {
    return {
      role: 'stray',
      message: `The entries in ${kind}/ end in ${ending}.`,
      help: `Rename it to end in ${ending}, or move it out of the content folder.`,
    };
  }
  return isEntryId(id) ? { role: 'entry', kind, id } : badName;
}

function outputRole(rest: string): FileRole {
  const [session = '', file, ...deeper] = rest.split('/');
  if (deeper.length === 0 && (file === 'session.yaml' || file === 'readings.csv')) {
    if (!isEntryId(session)) return badName;
    return file === 'session.yaml'
      ? { role: 'entry', kind: 'outputs', id: session }
      : { role: 'readings', session };
  }
  return {
    role: 'stray',
    message: 'A bench session is a folder with the files session.yaml and readings.csv.',
    help: 'Rename this file to one of the two, or move it out of the content folder.',
  };
}

const badName: FileRole = {
  role: 'stray',
  message: 'This name cannot stand in an address.',
  help: 'Use lower-case letters, digits and single hyphens for files and folders.',
};

/**
 * A finding for each profile that names another family than the one it lies with. Nothing can be said of its
 * code or its readings until that is mended, so it is left out as one that could not be read.
 */
function misplacedProfiles(entries: ReadonlyMap<Kind, Map<string, Entry>>, broken: Set<string>): Finding[] {
  const findings: Finding[] = [];
  const profiles = (entries.get('profiles') ?? new Map<string, Entry>()) as Map<string, Entry<'profiles'>>;
  for (const profile of [...profiles.values()]) {
    const { family } = profile.data;
    const isKnown = entries.get('families')?.has(family) || broken.has(`families/${family}`);
    if (!isKnown || profile.id.startsWith(`${family}/`)) continue;
    profiles.delete(profile.id);
    broken.add(`profiles/${profile.id}`);
    findings.push(
      finding(
        'schema',
        profile.place(['family']),
        `This profile lies in profiles/${profile.id.split('/')[0] ?? ''}/ but names the family “${family}”.`,
        `Move the file to profiles/${family}/, or correct the family.`,
      ),
    );
  }
  return findings;
}

/** Files that belong together but do not stand together. */
function placementFindings(base: Base, broken: ReadonlySet<string>): Finding[] {
  const findings: Finding[] = [];
  if (!base.site && !broken.has('site/site')) {
    findings.push(
      finding(
        'schema',
        startOf('site.yaml'),
        'The content folder has no site.yaml.',
        'Add one with the shop’s name, contact and address.',
      ),
    );
  }
  for (const session of base.outputs.values()) {
    if (base.readings.has(session.id)) continue;
    findings.push(
      finding('schema', session.place(), 'This session has no readings.', 'Add its readings.csv beside it.'),
    );
  }
  for (const [session, table] of base.readings) {
    if (base.outputs.has(session) || broken.has(`outputs/${session}`)) continue;
    findings.push(
      finding(
        'unsourced',
        table.source.place(0),
        'These readings have no session.yaml, so nobody can tell where they come from.',
        'Add a session.yaml beside them with date, bench, instrument and source.',
      ),
    );
  }
  return findings;
}

function link(
  folder: string,
  entries: ReadonlyMap<Kind, ReadonlyMap<string, Entry>>,
  readings: ReadonlyMap<string, ReadingTable>,
): Base {
  const of = <K extends Kind>(kind: K): EntryMap<K> =>
    (entries.get(kind) ?? new Map<string, Entry>()) as unknown as EntryMap<K>;
  const sessions = [...of('outputs').values()].sort((a, b) => a.data.date.localeCompare(b.data.date));
  return Object.freeze({
    folder,
    site: of('site').get('site'),
    families: of('families'),
    sequences: of('sequences'),
    profiles: of('profiles'),
    outputs: of('outputs'),
    readings,
    sources: of('sources'),
    statements: of('statements'),
    guides: of('guides'),
    plans: of('plans'),
    tables: of('tables'),
    equipment: of('equipment'),
    exceptions: of('exceptions'),
    words: of('words'),
    profilesOfFamily: groupBy(of('profiles').values(), (profile) => [profile.data.family]),
    sequencesOfFamily: groupBy(of('sequences').values(), (sequence) => [sequence.data.family]),
    sessionsOfProfile: groupBy(sessions, (session) => readings.get(session.id)?.profiles ?? []),
    statementsOfProfile: groupBy(of('statements').values(), (statement) => [
      ...new Set(statement.data.claims.map((claim) => claim.profile)),
    ]),
  });
}

function groupBy<T>(items: Iterable<T>, keysOf: (item: T) => readonly string[]): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    for (const key of keysOf(item)) {
      const group = groups.get(key);
      if (group) group.push(item);
      else groups.set(key, [item]);
    }
  }
  return groups;
}

function startOf(file: string): Place {
  return { file, line: 1, column: 1, endLine: 1, endColumn: 1 };
}

function finding(rule: string, place: Place, message: string, help: string): Finding {
  return { rule, severity: 'error', place, message, help, related: [] };
}
