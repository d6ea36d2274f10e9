/** Expressions of a decision that cannot be read, or that name what is not there, before any value is given. */
import { type FileFault, UnusableFile } from '../file-fault.ts';
import { readTest } from '../sets/read-test.ts';
import { neededBy } from './decide-chain.ts';
import { evaluated, passes } from './expression.ts';
import type { DmnDecision, DmnFile } from './model.ts';
import { tableOfDecision } from './to-table.ts';

/**
 * What keeps a decision from being decided, whatever the values: a requirement that is missing or goes round in a circle,
 * or an expression. Simple tests are left to `readTable`.
 */
export function decisionFaults(file: DmnFile, decision: DmnDecision): FileFault[] {
  const faults: FileFault[] = [];
  const attempt = (run: () => unknown): boolean => {
    try {
      run();
      return true;
    } catch (error) {
      if (!(error instanceof UnusableFile)) throw error;
      // What is refused in the file is told once, for itself.
      if (!file.refused.some(({ span }) => span === error.span)) faults.push(error.fault);
      return false;
    }
  };
  let inputs: readonly string[] = [];
  const found = attempt(() => {
    inputs = neededBy(file, decision).inputs.map(({ name }) => name);
  });
  if (!found) return faults;
  const { logic, requires } = decision;
  const others = file.decisions.filter(({ id }) => requires.some((one) => one.id === id));
  const names = [...file.inputs.map(({ name }) => name), ...inputs, ...others.map(({ name }) => name)];
  const context = Object.fromEntries(names.map((name) => [name, null]));
  const notes = new Set<string>();
  if (logic.kind === 'expression') {
    attempt(() => evaluated(logic, context, notes));
    return faults;
  }
  const { written } = tableOfDecision(file, decision);
  for (const { expression } of logic.inputs) attempt(() => evaluated(expression, context, notes));
  for (const { tests, results } of logic.rules) {
    for (const [column, test] of tests.entries()) {
      const type = written?.inputs[column]?.type;
      if (type && readTest(test.text, type).beyond === undefined) continue;
      attempt(() => passes(test, null, context, notes));
    }
    for (const result of results.filter(({ text }) => text !== ''))
      attempt(() => evaluated(result, context, notes));
  }
  return faults;
}
