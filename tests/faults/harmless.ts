/** Edits that change nothing, or nothing for the worse: the check has to keep quiet. */
import type { Demo, Edit } from './demo.ts';
import type { Dice } from './dice.ts';
import { additionKinds } from './harmless/additions.ts';
import { styleKinds } from './harmless/style.ts';
import { tableKinds } from './harmless/tables.ts';
import { valueKinds } from './harmless/values.ts';

export interface HarmlessEdit {
  /** The edit in words, for the report. */
  readonly what: string;
  readonly edits: readonly Edit[];
}

export interface HarmlessKind {
  readonly name: string;
  readonly make: (dice: Dice, demo: Demo) => HarmlessEdit;
}

export const harmlessKinds: readonly HarmlessKind[] = [
  ...styleKinds,
  ...valueKinds,
  ...additionKinds,
  ...tableKinds,
];
