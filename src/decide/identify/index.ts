/** Which profile is a unit on, told from a few readings of its outputs instead of its code? Pure. */
export { meterCautions } from './cautions.ts';
export { type ReadableUnit, readingProblem } from './check-reading.ts';
export { type Candidate, type Identification, identify, type Sureness, surenesses } from './identify.ts';
export { type IdentifyModel, type MeasuredUnit, modelOf } from './model.ts';
export type { NextReading } from './next-reading.ts';
export { accuracyProblem, type ParsedReading, type Problem, parseReading } from './parse-reading.ts';
export type { ReadingPoint, RiderReading } from './reading.ts';
export { conclusion, nextSentence } from './wording.ts';
