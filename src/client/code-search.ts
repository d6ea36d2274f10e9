/** All that answers a typed code, with the tables it is compared by: loaded when the field is first used. */
export { loadLookup } from './code-index.ts';
export { searchFor } from './search-codes.ts';
export { verdictWords } from './verdict-words.ts';
