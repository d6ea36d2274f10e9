/** The lookup as the page loads it: first what is needed to find a code, then the sentences shown with results. */
import { buildCodeIndex, type FindOptions, findCode } from '../codes/index.ts';
import { sentenceFileOf } from '../views/code-directory-format.ts';
import { type CodeSentences, type CodesFile, entriesOf, isWholeList } from '../views/code-list-format.ts';
import { codeListPath, codeSentencesPath } from '../views/paths.ts';
import { CodeFiles } from './code-list.ts';
import { CodesInParts } from './codes-in-parts.ts';
import type { Asking, ListSearch } from './list-search.ts';

export interface Lookup {
  /** Name of a family, by its id. */
  readonly familyNames: ReadonlyMap<string, string>;
  /** Searches the list for a text; undefined where it was no longer asked for. */
  readonly find: (typed: string, options: FindOptions, asking: Asking) => Promise<ListSearch | undefined>;
  /** The answer of a profile in a sentence, by its id; empty where the sentences cannot be loaded. */
  readonly sentence: (profile: string) => Promise<string>;
}

/** Where the site is, and where the list and the sentences are in this version of it. */
export interface LookupAddresses {
  /** With a slash at its end. */
  readonly base: string;
  readonly codes?: string | undefined;
  readonly sentences?: string | undefined;
}

let loading: Promise<Lookup> | undefined;

/** Fetches the list of codes once; a failure is forgotten, so that the next key tries again. */
export function loadLookup(addresses: LookupAddresses): Promise<Lookup> {
  loading ??= lookupOf(new CodeFiles(addresses.base), addresses);
  loading.catch(() => {
    loading = undefined;
  });
  return loading;
}

/** The lookup made of the files of a site. */
export async function lookupOf(files: CodeFiles, addresses: LookupAddresses): Promise<Lookup> {
  const list = await files.json<CodesFile>(codeListPath, addresses.codes);
  const sentenceAmong =
    (profiles: number): Lookup['sentence'] =>
    async (profile) => {
      const path = sentenceFileOf(profile, profiles);
      const address = path === codeSentencesPath ? addresses.sentences : undefined;
      const sentences = await files.json<CodeSentences>(path, address).catch((): CodeSentences => ({}));
      return sentences[profile] ?? '';
    };
  if (!isWholeList(list)) {
    const inParts = new CodesInParts(files, list);
    return {
      familyNames: new Map(list.families.map(([id, name]) => [id, name])),
      find: (typed, options, asking) => inParts.find(typed, options, asking),
      sentence: sentenceAmong(list.families.reduce((sum, [, , codes]) => sum + codes, 0)),
    };
  }
  const entries = entriesOf(list);
  const index = buildCodeIndex(entries);
  return {
    familyNames: new Map(list.map(({ id, name }) => [id, name])),
    find: async (typed, options) => findCode(index, typed, options),
    sentence: sentenceAmong(entries.length),
  };
}
