/** The list of codes as it is loaded: whole, or only the files that may have a code. */
import type { CodeEntry } from '../codes/index.ts';
import { type CodeList, entriesOf } from '../views/code-list-format.ts';
import { fetchJson } from './fetch-json.ts';

/** Reads a JSON file of the site by its address. */
export type ReadJson = (address: string) => Promise<unknown>;

/** Loads each file once; what fails is forgotten, so that the next key tries again. */
export class CodeFiles {
  readonly #base: string;
  readonly #read: ReadJson;
  readonly #loading = new Map<string, Promise<unknown>>();

  /** @param base the address of the site, with a slash at its end */
  constructor(base: string, read: ReadJson = fetchJson) {
    this.#base = base;
    this.#read = read;
  }

  /** A file below the base path; or, where it has one, by the address that says its version. */
  json<Kind>(path: string, address = `${this.#base}${path}`): Promise<Kind> {
    const known = this.#loading.get(path) as Promise<Kind> | undefined;
    if (known) return known;
    const asked = this.#read(address) as Promise<Kind>;
    this.#loading.set(path, asked);
    asked.catch(() => this.#loading.delete(path));
    return asked;
  }

  isLoaded(path: string): boolean {
    return this.#loading.has(path);
  }

  /** The codes of some files of the list, each once. */
  async entries(paths: readonly string[]): Promise<CodeEntry[]> {
    const lists = await Promise.all(paths.map((path) => this.json<CodeList>(path)));
    return [...new Map(lists.flatMap(entriesOf).map((entry) => [entry.profile, entry])).values()];
  }
}
