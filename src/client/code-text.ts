import { codeRuns } from '../views/code-runs.ts';

/** A code as the pages show it: every zero in an element of its own, so that it can be struck through. */
export function codeText(code: string): HTMLSpanElement {
  const element = document.createElement('span');
  element.className = 'code';
  for (const run of codeRuns(code)) {
    if (run === '0') {
      const zero = document.createElement('span');
      zero.className = 'zero';
      zero.textContent = '0';
      element.append(zero);
    } else element.append(run);
  }
  return element;
}
