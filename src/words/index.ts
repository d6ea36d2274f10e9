/**
 * The texts of the interface in several languages: said in English in the code, given in the language of the site.
 * What pages and scripts need stands here; the lists of texts are in `shipped.ts`, and no page is sent those.
 */
export { counted } from './counted.ts';
export { fillSlots } from './fill.ts';
export { english, type Language, type Texts, type WordForms } from './language.ts';
export { andList, orList } from './lists.ts';
export { countPhrase, inLanguage, phrase, speak } from './phrase.ts';
export { type Tagged, taggedParts } from './tagged.ts';
