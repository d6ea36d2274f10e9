/**
 * A long list of codes laid into small files, so that few of them are needed for one code. Every code is filed twice: by
 * its beginning and by its end, which share no character and leave one between them. So a single slip, even a swap,
 * leaves the code in one of the two places where what was typed leads; look-alikes leave it in both.
 */

import { canonicalCode } from './canonical-code.ts';
import type { CodeEntry } from './code-index.ts';
import { dotMatrix } from './displays/dot-matrix.ts';
import { leadingZeros } from './normalise.ts';

export type Side = 'begin' | 'end';
export const sides: readonly Side[] = ['begin', 'end'];

/** Codes whose filed text begins with the key, and that are in no file with a longer key. */
export interface CodeFile {
  readonly side: Side;
  readonly key: string;
  /** Where they are too many for one file, which part of them; see `partOf`. */
  readonly part: number;
  readonly parts: number;
  readonly entries: readonly CodeEntry[];
}

/**
 * What a code is filed by: its canonical form with look-alikes unified and without leading zeros, which people leave
 * out; backwards where it is filed by its end.
 */
export function filedText(canonical: string, side: Side): string {
  const alike = Array.from(canonical, (character) => dotMatrix.representative.get(character) ?? character);
  // Afterwards, as an O at the beginning may be a zero.
  const folded = alike.slice(leadingZeros(alike.join('')));
  return (side === 'begin' ? folded : folded.reverse()).join('');
}

/** How many characters a code may be filed by: both sides together leave one, which a swap over the middle needs. */
function mostFiledBy(text: string, side: Side): number {
  const both = Math.max(0, text.length - 1);
  return side === 'begin' ? Math.floor(both / 2) : Math.ceil(both / 2);
}

/** Which of so many parts a code is in, by all of its filed text (FNV-1a, 32 bits). */
export function partOf(text: string, parts: number): number {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) {
    hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193) >>> 0;
  }
  return hash % parts;
}

interface Filed {
  readonly entry: CodeEntry;
  readonly text: string;
  readonly depth: number;
}

/** Lays codes into files of about `most` codes, by their beginning or end; one code stands in as many as it has spellings. */
export function fileCodes(entries: readonly CodeEntry[], side: Side, most: number): CodeFile[] {
  const filed = entries.flatMap((entry) =>
    [...new Set([entry.code, ...entry.otherSpellings].map(canonicalCode))]
      .filter((canonical) => canonical !== '')
      .map((canonical): Filed => {
        const text = filedText(canonical, side);
        return { entry, text, depth: mostFiledBy(text, side) };
      }),
  );
  return filesBelow('', filed, side, most);
}

function filesBelow(key: string, filed: readonly Filed[], side: Side, most: number): CodeFile[] {
  const longer = filed.length > most ? filed.filter(({ depth }) => depth > key.length) : [];
  const here = longer.length > 0 ? filed.filter(({ depth }) => depth <= key.length) : filed;
  const further = Map.groupBy(longer, ({ text }) => text.charAt(key.length));
  return [
    ...filesOf(key, here, side, most),
    ...[...further]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .flatMap(([next, some]) => filesBelow(key + next, some, side, most)),
  ];
}

function filesOf(key: string, filed: readonly Filed[], side: Side, most: number): CodeFile[] {
  const parts = Math.ceil(filed.length / most);
  const inPart = Map.groupBy(filed, ({ text }) => partOf(text, parts));
  return Array.from({ length: parts }, (_, part) => ({
    side,
    key,
    part,
    parts,
    entries: [...new Set((inPart.get(part) ?? []).map(({ entry }) => entry))],
  }));
}

/** A file as a directory lists it. */
export interface ListedFile {
  readonly side: Side;
  readonly key: string;
  readonly parts: number;
  /** Codes in all parts together. */
  readonly codes: number;
  /** Characters of its largest part. */
  readonly size: number;
}

/** One part of a listed file. */
export interface FilePart {
  readonly file: ListedFile;
  readonly part: number;
}

export interface FilesWanted {
  /** Where the code is, if typed right or with look-alikes only, or with a slip on the other side. */
  readonly first: readonly FilePart[];
  /** Other parts of the same files: where it may be with a slip anywhere. */
  readonly more: readonly FilePart[];
  /** Files of codes of which this is but the beginning. */
  readonly longer: readonly FilePart[];
}

/** Which files of one side may have the code someone typed. `canonical` must not be empty. */
export function filesWanted(files: readonly ListedFile[], side: Side, canonical: string): FilesWanted {
  const text = filedText(canonical, side);
  const own = files.filter((file) => file.side === side);
  const near = own.filter(({ key }) => text.startsWith(key));
  const first = near.map((file) => ({ file, part: partOf(text, file.parts) }));
  const all = (file: ListedFile): FilePart[] =>
    Array.from({ length: file.parts }, (_, part) => ({ file, part }));
  return {
    first,
    more: near.flatMap((file, at) => all(file).filter(({ part }) => part !== first[at]?.part)),
    longer: own.filter(({ key }) => key !== text && key.startsWith(text)).flatMap(all),
  };
}

/** The name of a part: letters and digits, whatever the codes are made of. */
export function fileName({ file: { side, key, parts }, part }: FilePart): string {
  const word = key.replaceAll(/[^0-9A-Z]/g, (unit) => `_${unit.charCodeAt(0).toString(16)}`);
  return `${side}-${word}${parts > 1 ? `-${part + 1}of${parts}` : ''}`;
}
