/**
 * What a page may load and run: its Content-Security-Policy (W3C, CSP Level 3). Nothing from other sites, and of
 * what stands within a page only what the build wrote, named by its digest.
 */
import { createHash } from 'node:crypto';
import type { InlineParts } from './inline-parts.ts';

/** Digests as a policy names them: `'sha256-…'`. */
export interface PolicyDigests {
  readonly scripts: ReadonlySet<string>;
  readonly styles: ReadonlySet<string>;
}

/** The digests of scripts and styles, which have a character for each of their bytes. */
export function policyDigests({ scripts, styles }: Pick<InlineParts, 'scripts' | 'styles'>): PolicyDigests {
  return { scripts: new Set(scripts.map(digestSource)), styles: new Set(styles.map(digestSource)) };
}

/** The policy that stands in a page. */
export function pagePolicy({ scripts, styles }: PolicyDigests): string {
  return [
    "default-src 'none'",
    // The search for words is WebAssembly, which browsers allow only with this word; it does not allow eval.
    `script-src 'self' 'wasm-unsafe-eval' ${[...scripts].sort().join(' ')}`.trimEnd(),
    `style-src 'self' ${[...styles].sort().join(' ')}`.trimEnd(),
    "img-src 'self' data:",
    "connect-src 'self'",
    "manifest-src 'self'",
    "worker-src 'self'",
    "form-action 'self'",
    "base-uri 'none'",
  ].join('; ');
}

/**
 * The policy a server sends with every file, from the digests of all pages. Who may frame a page can be said
 * only here; workers go by the policy that came with their own file.
 */
export function headerPolicy(pages: Iterable<PolicyDigests>): string {
  const all = [...pages];
  const policy = pagePolicy({
    scripts: new Set(all.flatMap(({ scripts }) => [...scripts])),
    styles: new Set(all.flatMap(({ styles }) => [...styles])),
  });
  return `${policy}; frame-ancestors 'self'`;
}

/** Most pages hold the same scripts and styles. */
const known = new Map<string, string>();
const mostKnown = 1000;

function digestSource(text: string): string {
  const already = known.get(text);
  if (already !== undefined) return already;
  const source = `'sha256-${createHash('sha256').update(text, 'latin1').digest('base64')}'`;
  if (known.size >= mostKnown) known.clear();
  known.set(text, source);
  return source;
}
