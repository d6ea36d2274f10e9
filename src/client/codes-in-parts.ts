/** Finds codes in a list that is too long to be loaded whole: loads the files that may have what was typed. */
import {
  buildCodeIndex,
  type CodeIndex,
  canonicalCode,
  type FilePart,
  type FindOptions,
  fileName,
  filesWanted,
  findCode,
  type ListedFile,
  type WholeList,
} from '../codes/index.ts';
import { filesOf, wholeListOf } from '../views/code-directory-format.ts';
import type { CodeDirectory } from '../views/code-list-format.ts';
import { codeFilePath, unitCodesPath } from '../views/paths.ts';
import type { CodeFiles } from './code-list.ts';
import type { Asking, ListSearch } from './list-search.ts';

/** Before what was typed is also looked for by its end, which changes with every key. */
const pauseMs = 300;
/** Files of longer codes are loaded once they are so small together (characters). */
const mostOfLonger = 15_000;

/** Indexes kept at hand. */
const mostIndexes = 4;

export class CodesInParts {
  readonly #files: CodeFiles;
  readonly #listed: readonly ListedFile[];
  readonly #whole: WholeList;
  readonly #unitSizes: ReadonlyMap<string, number>;
  readonly #shortest: number;
  /** The latest indexes: while one types the same files are asked for, and each key then costs little. */
  readonly #indexes = new Map<string, Promise<CodeIndex>>();

  constructor(files: CodeFiles, directory: CodeDirectory) {
    this.#files = files;
    this.#listed = filesOf(directory);
    this.#whole = wholeListOf(directory);
    this.#unitSizes = new Map(directory.families.map(([id, , , size]) => [id, size]));
    this.#shortest = Math.min(...directory.lengths.map(([, length]) => length));
  }

  /** @throws where a file cannot be loaded. */
  async find(typed: string, options: FindOptions, asking: Asking): Promise<ListSearch | undefined> {
    const text = canonicalCode(typed);
    const { family } = options;
    const paths: string[] = [];
    /** Takes a file where it may still be loaded. */
    const take = (path: string, size: number): boolean => {
      if (paths.includes(path)) return true;
      const cost = this.#files.isLoaded(path) ? 0 : size;
      if (cost > asking.left) return false;
      asking.left -= cost;
      paths.push(path);
      return true;
    };
    const takeParts = (parts: readonly FilePart[]): void => {
      for (const one of parts) take(codeFilePath(fileName(one)), one.file.size);
    };
    const search = async (): Promise<{ index: CodeIndex; found: ListSearch }> => {
      const index = await this.#indexOf(paths);
      return { index, found: findCode(index, typed, options) };
    };

    if (text === '') return findCode(buildCodeIndex([]), typed, options);
    const hasUnit = family !== undefined && take(unitCodesPath(family), this.#unitSizes.get(family) ?? 0);
    const begin = filesWanted(this.#listed, 'begin', text);
    takeParts(begin.first);
    const isLittle = sumOf(begin.longer, ({ size }) => size) <= mostOfLonger;
    if (isLittle) takeParts(begin.longer);
    const unread = isLittle ? {} : { longer: sumOf(begin.longer, ({ codes, parts }) => codes / parts) };
    const { index, found } = await search();
    const isKnown = index.entriesOf
      .get(text)
      ?.some((at) => family === undefined || index.entries[at]?.family === family);
    if (isKnown || found.verdict === 'partial' || text.length < this.#shortest - 1)
      return { ...found, ...unread };

    const end = filesWanted(this.#listed, 'end', text);
    if (!asking.hasWaited && end.first.some((one) => !this.#files.isLoaded(codeFilePath(fileName(one))))) {
      await new Promise((resolve) => setTimeout(resolve, pauseMs));
      asking.hasWaited = true;
    }
    if (!asking.isCurrent()) return undefined;
    takeParts(end.first);
    takeParts([...begin.more, ...end.more]);
    const { found: best } = await search();
    return { ...best, ...unread, ...(!hasUnit && best.verdict === 'unknown' && { isPart: true }) };
  }

  #indexOf(paths: readonly string[]): Promise<CodeIndex> {
    const key = paths.join(' ');
    const index =
      this.#indexes.get(key) ??
      this.#files.entries(paths).then((entries) => buildCodeIndex(entries, this.#whole));
    this.#indexes.delete(key);
    this.#indexes.set(key, index);
    index.catch(() => this.#indexes.delete(key));
    for (const oldest of this.#indexes.keys()) {
      if (this.#indexes.size <= mostIndexes) break;
      this.#indexes.delete(oldest);
    }
    return index;
  }
}

function sumOf(parts: readonly FilePart[], of: (file: ListedFile) => number): number {
  return parts.reduce((sum, { file }) => sum + of(file), 0);
}
