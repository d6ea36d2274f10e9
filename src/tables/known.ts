/** What is known of a value a table asks for. */
import type { Value } from './table.ts';

/** What is known of one input. */
export type Known =
  | { readonly value: Value }
  /** A number that lies between two ends, both counted in; `value` is the best estimate. */
  | { readonly value: number; readonly low: number; readonly high: number }
  /** One of several. */
  | { readonly oneOf: readonly Value[] }
  /** Anything the input can be, except “not known”. */
  | { readonly anything: true };
