/** The text of the files that findings point into: read once, only where needed, for frames and comparisons. */
import type { ContentFiles, Finding, Place, TextFile } from '../base/index.ts';

/** The text of a file of the content; undefined where it cannot be read, is empty, or nothing points into it. */
export type SourceLookup = (file: string) => TextFile | undefined;

/** Reads every file that findings, or what relates to them, point into. */
export function sourceTexts(content: ContentFiles, findings: readonly Finding[]): SourceLookup {
  const files = new Set(
    findings.flatMap(({ place, related }) => [place.file, ...related.map((one) => one.place.file)]),
  );
  const texts = new Map<string, TextFile>();
  for (const file of files) {
    const { source } = content.read(file);
    if (source.text !== '') texts.set(file, source);
  }
  return (file) => texts.get(file);
}

/**
 * The text a place points at, on its first line: of an entry that is pointed at whole, its first line. Line
 * and column numbers have no part in it, so it stays the same where lines are added above.
 */
export function textAt(sourceOf: SourceLookup, place: Place): string {
  const line = sourceOf(place.file)?.lineText(place.line) ?? '';
  return line.slice(place.column - 1, place.endLine === place.line ? place.endColumn - 1 : undefined);
}

/** The whole lines a place lies on. */
export function linesAt(sourceOf: SourceLookup, place: Place): string {
  const source = sourceOf(place.file);
  if (!source) return '';
  const lines: string[] = [];
  for (let line = place.line; line <= Math.min(place.endLine, source.lineCount); line += 1) {
    lines.push(source.lineText(line));
  }
  return lines.join('\n');
}
