/** The content of a folder as it was at a revision of its git repository. */
import { spawn } from 'node:child_process';
import { CannotRun, type ContentFiles, linkFinding, MemoryFiles } from '../base/index.ts';
import type { Rename } from '../impact/index.ts';

export interface Revision {
  /** The full name of the commit. */
  readonly commit: string;
  readonly content: ContentFiles;
  /** Files of the content folder that have another path now. */
  readonly renames: readonly Rename[];
}

/**
 * Finds a revision and where the content folder lies in its repository; reads no content yet.
 * @throws CannotRun where git is missing, the folder is in no repository, or the revision is not known.
 */
export async function commitOf(folder: string, revision: string): Promise<string> {
  if (!(await git(folder, ['rev-parse', '--show-toplevel']).then(isTold, refusal)).ok) {
    throw new CannotRun(
      `--since compares with a git revision, and ${folder} is not in a git repository.`,
      'Leave --since out, or give a folder inside a clone with --content DIR.',
    );
  }
  const name = revision.startsWith('-')
    ? { ok: false, text: '' }
    : await git(folder, ['rev-parse', '--verify', '--quiet', `${revision}^{commit}`]).then(isTold, refusal);
  if (!name.ok) {
    throw new CannotRun(
      `The repository of ${folder} has no revision “${revision}”.`,
      'Give a branch, a tag or a commit; where only the latest commit was fetched, fetch the whole history.',
    );
  }
  return name.text.trim();
}

/** A commit, and the words for how it was chosen. */
export interface ChosenCommit {
  readonly commit: string;
  readonly revision: string;
}

/** Where the default branch of a repository is looked for, the likeliest first. */
const defaultBranches = ['origin/HEAD', 'origin/main', 'origin/master', 'main', 'master'] as const;

/**
 * The commit where the branch that is checked out left the default branch: that of the repository it was cloned from,
 * else `main` or `master`.
 * @throws CannotRun as {@link commitOf} does, and where there is no default branch or nothing in common with it.
 */
export async function whereBranchBegan(folder: string): Promise<ChosenCommit> {
  const head = await commitOf(folder, 'HEAD');
  for (const branch of defaultBranches) {
    const found = await git(folder, ['rev-parse', '--verify', '--quiet', `${branch}^{commit}`]).then(
      isTold,
      refusal,
    );
    if (!found.ok) continue;
    const base = await git(folder, ['merge-base', found.text.trim(), head]).then(isTold, refusal);
    if (!base.ok) break;
    return { commit: base.text.trim(), revision: `where this branch left ${branch}` };
  }
  throw new CannotRun(
    `Nobody can tell where the branch of ${folder} began: there is no ${defaultBranches.join(', ')} with a commit in common.`,
    'Give a branch, a tag or a commit with --since REV; where only the latest commit was fetched, fetch the whole history.',
  );
}

/**
 * The day a commit was made, ISO 8601, UTC.
 * @throws CannotRun where git fails.
 */
export async function dateOfCommit(folder: string, commit: string): Promise<string> {
  const seconds = await git(folder, ['show', '--no-patch', '--format=%ct', commit]);
  return new Date(Number(seconds.toString('utf8').trim()) * 1000).toISOString().slice(0, 10);
}

/**
 * Reads every file of the folder as it was in a commit; of a folder that was not there yet, none.
 * @throws CannotRun where git fails.
 */
export async function contentAt(folder: string, commit: string): Promise<Revision> {
  const prefix = (await git(folder, ['rev-parse', '--show-prefix'])).toString('utf8').replace(/\n$/, '');
  const listed = await git(folder, [
    'ls-tree',
    '-r',
    '-z',
    '--full-tree',
    commit,
    ...(prefix === '' ? [] : ['--', prefix]),
  ]);
  const objects: { readonly file: string; readonly object: string; readonly isLink: boolean }[] = [];
  for (const row of listed.toString('utf8').split('\0')) {
    const [, mode, object, path] = /^(\d+) blob ([0-9a-f]+)\t(.*)$/s.exec(row) ?? [];
    if (mode === undefined || object === undefined || path === undefined) continue;
    objects.push({ file: path.slice(prefix.length), object, isLink: mode === '120000' });
  }
  const texts = await readObjects(
    folder,
    objects.filter(({ isLink }) => !isLink),
  );
  const memory = new MemoryFiles(folder, texts);
  const links = objects.filter(({ isLink, file }) => isLink && !isHidden(file));
  return {
    commit,
    renames: await renamesSince(folder, commit),
    content: {
      folder,
      list: () => {
        const { files, findings } = memory.list();
        return { files, findings: [...findings, ...links.map(({ file }) => linkFinding(file))] };
      },
      read: (file) => memory.read(file),
    },
  };
}

function isHidden(file: string): boolean {
  return /(^|\/)\./.test(file);
}

/** The bytes of blobs, asked for all at once. */
async function readObjects(
  folder: string,
  objects: readonly { readonly file: string; readonly object: string }[],
): Promise<Map<string, Uint8Array>> {
  const answer = await git(
    folder,
    ['cat-file', '--batch'],
    objects.map(({ object }) => `${object}\n`).join(''),
  );
  const texts = new Map<string, Uint8Array>();
  let at = 0;
  for (const { file } of objects) {
    // Each answer is a line “name blob size”, the bytes, and a line end.
    const headEnd = answer.indexOf(10, at);
    const size = Number(answer.toString('latin1', at, headEnd).split(' ')[2]);
    if (headEnd === -1 || !Number.isInteger(size)) throw gitFault('git cat-file gave no such file.');
    texts.set(file, answer.subarray(headEnd + 1, headEnd + 1 + size));
    at = headEnd + 1 + size + 1;
  }
  return texts;
}

/** What git takes for renamed between a commit and the files as they lie there now, new ones if added to git. */
async function renamesSince(folder: string, commit: string): Promise<Rename[]> {
  const rows = await git(folder, [
    'diff',
    '-z',
    '-M',
    '--diff-filter=R',
    '--name-status',
    '--relative',
    commit,
    '--',
    '.',
  ]);
  const fields = rows.toString('utf8').split('\0');
  const renames: Rename[] = [];
  for (let at = 0; at + 2 < fields.length; at += 3) {
    renames.push({ from: fields[at + 1] ?? '', to: fields[at + 2] ?? '' });
  }
  return renames;
}

function isTold(answer: Buffer): { ok: boolean; text: string } {
  return { ok: true, text: answer.toString('utf8') };
}

/** A refusal of git is an answer here; that it cannot be run at all is not. */
function refusal(error: unknown): { ok: boolean; text: string } {
  if (error instanceof GitRefused) return { ok: false, text: '' };
  throw error;
}

class GitRefused extends CannotRun {}

function gitFault(message: string): GitRefused {
  return new GitRefused(`The earlier revision cannot be read: ${message}`, 'Leave --since out.');
}

/**
 * Runs git on a folder's repository and gives what it prints.
 * @throws CannotRun where it is not installed or refuses.
 */
function git(folder: string, args: readonly string[], input = ''): Promise<Buffer> {
  return new Promise((done, failed) => {
    const child = spawn('git', ['-C', folder, ...args], {
      // Messages are not shown to people, but paths are compared: neither may depend on settings.
      env: { ...process.env, LC_ALL: 'C', GIT_OPTIONAL_LOCKS: '0' },
    });
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    child.stdout.on('data', (chunk: Buffer) => out.push(chunk));
    child.stderr.on('data', (chunk: Buffer) => err.push(chunk));
    child.on('error', () =>
      failed(
        new CannotRun(
          '--since needs the program git, and it cannot be run here.',
          'Install git, or leave --since out.',
        ),
      ),
    );
    child.on('close', (code) => {
      if (code === 0) done(Buffer.concat(out));
      else failed(gitFault(Buffer.concat(err).toString('utf8').split('\n')[0] ?? `git ended with ${code}.`));
    });
    // Git may close its input early; what matters is how it ends.
    child.stdin.on('error', () => {});
    child.stdin.end(input);
  });
}
