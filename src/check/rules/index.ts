/** The rules of the check, in the order a contributor would want to hear of them. */
import type { Rule } from '../rule.ts';
import { bareValue } from './bare-value.ts';
import { circularLink } from './circular-link.ts';
import { codePatternRule } from './code-pattern.ts';
import { copiedBlock } from './copied-block.ts';
import { danglingLink } from './dangling-link.ts';
import { danglingValue } from './dangling-value.ts';
import { distortionFalls } from './distortion-falls.ts';
import { duplicateCode } from './duplicate-code.ts';
import { endlessHold } from './endless-hold.ts';
import { expiredException } from './expired-exception.ts';
import { fitmentGap } from './fitment-gap.ts';
import { fitmentRange } from './fitment-range.ts';
import { fitmentUndecided } from './fitment-undecided.ts';
import { flipWithoutSource } from './flip-without-source.ts';
import { formerAddress } from './former-address.ts';
import { impossibleReading } from './impossible-reading.ts';
import { interfaceText } from './interface-text.ts';
import { levelFalls } from './level-falls.ts';
import { listShownAsCode } from './list-shown-as-code.ts';
import { lookAlikeCodes } from './look-alike-codes.ts';
import { misplacedRow } from './misplaced-row.ts';
import { missingCaution } from './missing-caution.ts';
import { mistakenSeries } from './mistaken-series.ts';
import { mutedWithSignal } from './muted-with-signal.ts';
import { noWayToCode } from './no-way-to-code.ts';
import { notOfTheUnit } from './not-of-the-unit.ts';
import { offTheFace } from './off-the-face.ts';
import { orphanedEntry } from './orphaned-entry.ts';
import { planTable } from './plan-table.ts';
import { powerBeyondSupply } from './power-beyond-supply.ts';
import { proseLinks } from './prose-links.ts';
import { rangeReversed } from './range-reversed.ts';
import { repeatedRow } from './repeated-row.ts';
import { repeatsDisagree } from './repeats-disagree.ts';
import { sameOutput } from './same-output.ts';
import { schema } from './schema.ts';
import { sequenceAmbiguous } from './sequence-ambiguous.ts';
import { sequenceDeadEnd } from './sequence-dead-end.ts';
import { sequenceUnreachable } from './sequence-unreachable.ts';
import { sessionsDisagree } from './sessions-disagree.ts';
import { singleSource } from './single-source.ts';
import { sourceChain } from './source-chain.ts';
import { sourceTooOld } from './source-too-old.ts';
import { statedVersusComputed } from './stated-versus-computed.ts';
import { strayFile } from './stray-file.ts';
import { syntax } from './syntax.ts';
import { tableDeadRule } from './table-dead-rule.ts';
import { tableFarThreshold } from './table-far-threshold.ts';
import { tableFault } from './table-fault.ts';
import { tableFineThreshold } from './table-fine-threshold.ts';
import { tableGap } from './table-gap.ts';
import { tableIdleInput } from './table-idle-input.ts';
import { tableMergeable } from './table-mergeable.ts';
import { tableOverlap } from './table-overlap.ts';
import { tableUnusedAnswer } from './table-unused-answer.ts';
import { unitSlip } from './unit-slip.ts';
import { unknownControl } from './unknown-control.ts';
import { unknownKey } from './unknown-key.ts';
import { unsourced } from './unsourced.ts';
import { unusedException } from './unused-exception.ts';

export const rules: readonly Rule[] = [
  syntax,
  strayFile,
  schema,
  unknownKey,
  danglingLink,
  danglingValue,
  circularLink,
  duplicateCode,
  formerAddress,
  codePatternRule,
  lookAlikeCodes,
  fitmentRange,
  fitmentGap,
  fitmentUndecided,
  unsourced,
  bareValue,
  proseLinks,
  rangeReversed,
  offTheFace,
  sourceTooOld,
  sourceChain,
  unknownControl,
  noWayToCode,
  listShownAsCode,
  sequenceUnreachable,
  sequenceDeadEnd,
  sequenceAmbiguous,
  endlessHold,
  missingCaution,
  interfaceText,
  tableFault,
  planTable,
  tableOverlap,
  tableDeadRule,
  tableGap,
  tableIdleInput,
  notOfTheUnit,
  repeatedRow,
  misplacedRow,
  copiedBlock,
  mistakenSeries,
  unitSlip,
  repeatsDisagree,
  impossibleReading,
  powerBeyondSupply,
  mutedWithSignal,
  sessionsDisagree,
  levelFalls,
  distortionFalls,
  statedVersusComputed,
  sameOutput,
  tableFineThreshold,
  tableFarThreshold,
  expiredException,
  unusedException,
  flipWithoutSource,
  singleSource,
  tableMergeable,
  tableUnusedAnswer,
  orphanedEntry,
];
