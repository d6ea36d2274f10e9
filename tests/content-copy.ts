/** A copy of the demo content, or of another content folder, in a temporary folder, to be broken on purpose. */
import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

export class ContentCopy {
  readonly folder: string;

  private constructor(folder: string) {
    this.folder = folder;
  }

  static async make(from = 'content'): Promise<ContentCopy> {
    const folder = await mkdtemp(join(tmpdir(), 'readback-content-'));
    await cp(from, folder, { recursive: true });
    return new ContentCopy(folder);
  }

  /** The demo in English alone: its sites are built in half the time. */
  static async inEnglish(): Promise<ContentCopy> {
    const copy = await ContentCopy.make();
    await copy.edit('site.yaml', 'languages: [en, es]', 'languages: [en]');
    return copy;
  }

  async read(file: string): Promise<string> {
    return await readFile(join(this.folder, file), 'utf8');
  }

  async write(file: string, text: string | Uint8Array): Promise<void> {
    await mkdir(dirname(join(this.folder, file)), { recursive: true });
    await writeFile(join(this.folder, file), text);
  }

  /**
   * Replaces the one occurrence of `from` in a file and gives back what undoes it. Fails where there is none
   * or more than one, so that no test edits something else than it says.
   */
  async edit(file: string, from: string, to: string): Promise<() => Promise<void>> {
    const before = await this.read(file);
    const parts = before.split(from);
    if (parts.length !== 2)
      throw new Error(`“${from}” occurs ${parts.length - 1} times in ${file}, not once`);
    await this.write(file, parts.join(to));
    return () => this.write(file, before);
  }

  async remove(): Promise<void> {
    await rm(this.folder, { recursive: true, force: true });
  }
}

/** The 1-based line and column of the one occurrence of `text`, as a finding would name them. */
export function placeOf(content: string, text: string, offset = 0): { line: number; column: number } {
  const at = content.indexOf(text);
  if (at === -1 || content.indexOf(text, at + 1) !== -1)
    throw new Error(`“${text}” does not occur exactly once`);
  const before = content.slice(0, at + offset);
  return { line: before.split('\n').length, column: at + offset - before.lastIndexOf('\n') };
}
