/** Outputs that are kept while a folder is read again and again: those of a unit stay as long as what they follow from. */
import { type Base, familyOutputsDigest } from './base/index.ts';
import type { ComparableOutput, ProfileOutput } from './measure/index.ts';

/** Profiles whose outputs are kept, 130 kB each, and what they are compared by, 70 kB: those last asked for. */
const mostOutputs = 10_000;
const mostCompared = 2000;

/** Outputs by profile, each with the digest of what it follows from. */
export class KeptOutputs {
  readonly outputs = new KeptByDigest<ProfileOutput>(mostOutputs);
  readonly comparable = new KeptByDigest<ComparableOutput>(mostCompared);
}

class KeptByDigest<Output> {
  readonly #most: number;
  readonly #kept = new Map<string, { readonly digest: string; readonly output: Output }>();

  constructor(most: number) {
    this.#most = most;
  }

  /** The output of a profile of a base: as it is kept, or made now and kept. */
  of(base: Base, profile: string, make: () => Output): Output {
    const digest = familyOutputsDigest(base, base.profiles.get(profile)?.data.family ?? '');
    const known = this.#kept.get(profile);
    const output = known?.digest === digest ? known.output : make();
    // Put at the end again: the first is the one not asked for the longest.
    this.#kept.delete(profile);
    this.#kept.set(profile, { digest, output });
    const [oldest] = this.#kept.keys();
    if (this.#kept.size > this.#most && oldest !== undefined) this.#kept.delete(oldest);
    return output;
  }
}
