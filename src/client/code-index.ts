/** The list of codes as the page loads it: first what the lookup needs, then the sentences shown with results. */
import { buildCodeIndex, type CodeIndex } from '../codes/index.ts';
import { type CodeList, type CodeSentences, entriesOf } from '../views/code-list-format.ts';

export interface Lookup {
  readonly index: CodeIndex;
  /** Name of a family, by its id. */
  readonly familyNames: ReadonlyMap<string, string>;
  /** The answer of a profile in a sentence, by its id; empty where the sentences cannot be loaded. */
  readonly sentence: (profile: string) => Promise<string>;
}

let loading: Promise<Lookup> | undefined;

/** Where the list of codes and the sentences of all codes are. */
export interface LookupAddresses {
  readonly codes: string;
  readonly sentences: string;
}

/** Fetches the list of codes once; a failure is forgotten, so that the next key tries again. */
export function loadLookup(addresses: LookupAddresses): Promise<Lookup> {
  loading ??= fetchJson<CodeList>(addresses.codes).then((list) => {
    const entries = entriesOf(list);
    const places = new Map(entries.map(({ profile }, place) => [profile, place]));
    let sentences: Promise<CodeSentences> | undefined;
    return {
      index: buildCodeIndex(entries),
      familyNames: new Map(list.map(({ id, name }) => [id, name])),
      sentence: async (profile) => {
        sentences ??= fetchJson<CodeSentences>(addresses.sentences);
        try {
          const all = await sentences;
          // A list of another length is of another version of the site: its sentences are of other codes.
          return all.length === entries.length ? (all[places.get(profile) ?? -1] ?? '') : '';
        } catch {
          sentences = undefined;
          return '';
        }
      },
    };
  });
  loading.catch(() => {
    loading = undefined;
  });
  return loading;
}

async function fetchJson<Kind>(address: string): Promise<Kind> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return (await response.json()) as Kind;
}
