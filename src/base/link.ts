/** A link between entries. */
import type { Kind } from '../../schemas/index.ts';
import type { Place } from './finding.ts';
import type { DataPath } from './yaml.ts';

/** A mention of one entry in another: the kind and id it names, and where. */
export interface Link {
  readonly kind: Exclude<Kind, 'site'>;
  readonly id: string;
  /** Where in the entry’s data; empty where the mention is in its body. */
  readonly path: DataPath;
  /** Where in the file, for a mention in the body. */
  readonly place?: Place;
}
