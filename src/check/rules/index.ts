/** The rules of the check, in the order a contributor would want to hear of them. */
import type { Rule } from '../rule.ts';
import { bareValue } from './bare-value.ts';
import { danglingLink } from './dangling-link.ts';
import { danglingValue } from './dangling-value.ts';
import { duplicateCode } from './duplicate-code.ts';
import { impossibleReading } from './impossible-reading.ts';
import { noWayToCode } from './no-way-to-code.ts';
import { proseLinks } from './prose-links.ts';
import { repeatedRow } from './repeated-row.ts';
import { sameOutput } from './same-output.ts';
import { schema } from './schema.ts';
import { sessionsDisagree } from './sessions-disagree.ts';
import { statedVersusComputed } from './stated-versus-computed.ts';
import { strayFile } from './stray-file.ts';
import { syntax } from './syntax.ts';
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
  impossibleReading,
  sessionsDisagree,
  statedVersusComputed,
  sameOutput,
  danglingValue,
  bareValue,
  proseLinks,
];
