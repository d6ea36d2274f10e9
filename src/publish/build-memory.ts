/** How the engine that runs a build goes about memory. */
import { setFlagsFromString } from 'node:v8';

/**
 * Bytes of finished pages lie outside of V8’s heap. By itself it looks through all that is kept whenever 64 MB of them
 * have gathered, every two seconds of a large build; counted with the heap, they wait until the whole has grown.
 */
export function gatherGarbageLater(): void {
  setFlagsFromString('--external-memory-accounted-in-global-limit');
  // To 2.2 times of what is kept, not to four times: a large build stays below 3 GB.
  setFlagsFromString('--heap-growing-percent=120');
}
