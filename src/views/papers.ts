/** The two papers, for the pages. */
export { papers } from '../check/papers.ts';
