/** The command that confirms what a preview showed, to copy. */
import { type Role, roleText } from '../../import/index.ts';
import type { ImportOptions } from './settings.ts';

interface Guessed {
  readonly head: string;
  readonly at: number;
  readonly role: Role;
}

/** As it was typed, with the guessed columns said and `--write`. */
export function commandLine(
  sheet: string,
  options: ImportOptions,
  guessed: readonly Guessed[],
  isThere: boolean,
): string {
  const several = (name: string, values: readonly string[] | undefined): string[] =>
    (values ?? []).flatMap((value) => [name, value]);
  const one = (name: string, value: string | undefined): string[] =>
    value === undefined ? [] : [name, value];
  const columns = guessed.map(({ head, role }) => `${head}=${roleText(role)}`).join(',');
  const words = [
    'readback',
    'import',
    sheet,
    ...one('--content', options.content === 'content' ? undefined : options.content),
    ...one('--sheet', options.sheet),
    ...one('--header', options.header),
    ...one('--decimals', options.decimals),
    ...one('--unit', options.unit),
    ...one('--session', options.session),
    ...one('--like', options.like),
    ...several('--fact', options.fact),
    ...several('--code', options.code),
    ...several('--new', options.new),
    ...several('--channel', options.channel),
    ...several('--leave-out', options.leaveOut),
    ...several('--columns', options.columns),
    ...(columns === '' || options.asShown ? [] : ['--columns', columns]),
    ...(options.asShown ? ['--as-shown'] : []),
    ...(options.despiteFindings ? ['--despite-findings'] : []),
    ...(isThere ? ['--replace'] : []),
    '--write',
  ];
  return words.map(shellWord).join(' ');
}

/** Quoted where a shell would take it apart. */
function shellWord(word: string): string {
  if (/^[\w./:=@+-]+$/.test(word)) return word;
  return /["$`\\!]/.test(word) ? `'${word.replaceAll("'", `'\\''`)}'` : `"${word}"`;
}
