/** Code lookup: finds the known profile codes that a text, read off a blurry screen, may stand for. */

export { adviceFor } from './advice.ts';
export type { Slip } from './alignment.ts';
export { canonicalCode } from './canonical-code.ts';
export {
  type CodeFile,
  type FilePart,
  fileCodes,
  fileName,
  filesWanted,
  type ListedFile,
  partOf,
  type Side,
  sides,
} from './code-files.ts';
export { buildCodeIndex, type CodeEntry, type CodeIndex, type WholeList } from './code-index.ts';
export { type CodePattern, codePattern } from './code-pattern.ts';
export { type ConfusionModel, confusionModel } from './confusion.ts';
export {
  type CodeCandidate,
  type CodeSearch,
  type CodeVerdict,
  type FindOptions,
  findCode,
  type LookAgain,
} from './find.ts';
export { likelihood } from './likelihood.ts';
export { anyDisplay, type Display, foldOnScreen, modelOf } from './screens.ts';
export { type FamilyLength, Positions } from './strangers.ts';
