/** The rules of the check, in the order a contributor would want to hear of them. */
import type { Rule } from '../rule.ts';
import { danglingLink } from './dangling-link.ts';
import { duplicateCode } from './duplicate-code.ts';
import { impossibleReading } from './impossible-reading.ts';
import { levelFalls } from './level-falls.ts';
import { misplacedRow } from './misplaced-row.ts';
import { noWayToCode } from './no-way-to-code.ts';
import { repeatedRow } from './repeated-row.ts';
import { sameOutput } from './same-output.ts';
import { schema } from './schema.ts';
import { sessionsDisagree } from './sessions-disagree.ts';
import { statedVersusComputed } from './stated-versus-computed.ts';
import { strayFile } from './stray-file.ts';
import { syntax } from './syntax.ts';
import { unitSlip } from './unit-slip.ts';
import { unknownKey } from './unknown-key.ts';
import { unsourced } from './unsourced.ts';

export const rules: readonly Rule[] = [
  syntax,
  strayFile,
  schema,
  unknownKey,
  danglingLink,
  duplicateCode,
  unsourced,
  noWayToCode,
  repeatedRow,
  unitSlip,
  impossibleReading,
  misplacedRow,
  sessionsDisagree,
  levelFalls,
  statedVersusComputed,
  sameOutput,
];
