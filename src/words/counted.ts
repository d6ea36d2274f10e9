/**
 * A number with its noun: “1 error”, “2 errors”. For what commands report, which is in English whatever the site
 * speaks: by `countPhrase` each such text would ask every language for words that nobody is shown.
 */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
