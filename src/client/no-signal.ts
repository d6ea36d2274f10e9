/** What a code field says where what it searches could not be loaded. */
import { phrase } from '../words/index.ts';

export function noSignal(): string {
  return phrase('The list of codes did not come through. Check the signal and type again.');
}
