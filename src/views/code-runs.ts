/** A code in runs, each zero a run of its own: it is drawn with a stroke wherever a code is shown. */
export function codeRuns(code: string): string[] {
  return code.split(/(0)/).filter((run) => run !== '');
}
