/** Values as commands and the API give them to other programs. */
import type { z } from 'zod';
import type { agreementSchema, characteristicSchema } from '../../schemas/results/explain.ts';
import type { Characteristic, SessionAgreement } from '../measure/index.ts';

/** A value with its uncertainty, conditions, readings and sources; parts of the budget are left out. */
export function publishedValue(one: Characteristic): z.infer<typeof characteristicSchema> {
  return {
    name: one.name,
    value: one.value,
    unit: one.unit,
    expandedUncertainty: one.expandedUncertainty,
    coverageFactor: one.coverageFactor,
    bound: one.bound,
    conditions: { ...one.conditions },
    readings: [...one.readings],
    sources: [...one.sources],
  };
}

/** How the sessions agree, in one object. */
export function publishedAgreement({
  test,
  ...agreement
}: SessionAgreement): z.infer<typeof agreementSchema> {
  return {
    ...agreement,
    ...test,
    sessions: [...agreement.sessions],
    agreeing: [...agreement.agreeing],
  };
}
