/** The one table of mistakes. A mistake that nothing in the base contradicts has no place here. */
import type { FaultKind } from '../kind.ts';
import { codeKinds } from './codes.ts';
import { familyKinds } from './families.ts';
import { fileKinds } from './files.ts';
import { linkKinds } from './links.ts';
import { planningKinds } from './planning.ts';
import { proseKinds } from './prose.ts';
import { readingKinds } from './readings.ts';
import { sequenceKinds } from './sequences.ts';
import { shapeKinds } from './shape.ts';
import { sheetKinds } from './sheets.ts';
import { sourceKinds } from './sources.ts';
import { statementKinds } from './statements.ts';
import { syntaxKinds } from './syntax.ts';
import { tableKinds } from './tables.ts';

export const faultKinds: readonly FaultKind[] = [
  ...syntaxKinds,
  ...shapeKinds,
  ...fileKinds,
  ...linkKinds,
  ...sourceKinds,
  ...codeKinds,
  ...familyKinds,
  ...readingKinds,
  ...sheetKinds,
  ...statementKinds,
  ...sequenceKinds,
  ...tableKinds,
  ...planningKinds,
  ...proseKinds,
];
