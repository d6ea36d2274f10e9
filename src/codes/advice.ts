/** What a rider should do next after a search, in a sentence or two. */
import { orList, phrase } from '../words/index.ts';
import type { CodeSearch } from './find.ts';
import { ordinal } from './note.ts';

/** Advice for each verdict; says which character to look at again where that settles it. */
export function adviceFor(search: CodeSearch): string {
  const [best] = search.candidates;
  switch (search.verdict) {
    case 'found':
      return search.families.length > 1
        ? phrase('This code is used by several units: pick yours.')
        : phrase('This is {code}.', { code: best?.code ?? '' });
    case 'look-again': {
      const { lookAgain } = search;
      if (!lookAgain) return phrase('More than one profile fits: compare the unit before you choose.');
      const place = ordinal(lookAgain.position);
      const options = lookAgain.options.map((option) => (option === '' ? phrase('nothing') : option));
      return phrase('Look at the {place} character again: is it {options}?', {
        place,
        options: orList(options),
      });
    }
    case 'partial':
      return phrase('This is the beginning of a code: go on, or pick one.');
    case 'unknown':
      return search.elsewhere.length > 0
        ? phrase('This unit has no such code, but another one has: check which unit it is.')
        : phrase(
            'No profile known here has this code. Read it once more from the screen that shows the active code, character by character; if it stays the same, it has not been measured yet.',
          );
  }
}
