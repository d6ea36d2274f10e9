/** Smooth characters, of the shapes print has: what looks alike in print looks alike here. */
import { confusionModel, type LookAlike } from '../confusion.ts';
import { bothWays, ocrPairs } from './ocr-pairs.ts';

/** Shapes that share most of their outline: judgement, no source. */
const blurred: readonly LookAlike[] = [
  ['b', '6', 0.02],
  ['g', '9', 0.02],
  ['q', '9', 0.02],
  ['3', '8', 0.006],
  ['6', '8', 0.006],
  ['8', '9', 0.004],
  ['5', '6', 0.004],
  ['8', 'S', 0.004],
  ['3', 'B', 0.003],
  ['1', '7', 0.006],
  ['C', 'G', 0.006],
  ['E', 'F', 0.004],
  ['P', 'R', 0.004],
  ['U', 'V', 0.006],
  ['V', 'Y', 0.004],
  ['M', 'N', 0.004],
  ['H', 'N', 0.004],
  ['K', 'X', 0.003],
];

/** RN for M: Unicode UTS #39 (rn and m); characters are set close here, and codes may be listed in capitals. */
export const antiAliased = confusionModel('anti-aliased', bothWays([...ocrPairs, ...blurred]), [
  ['RN', 'M', 0.04],
]);
