/** The codes looked up last, kept on this device and nowhere else. */

export interface RecentCode {
  readonly code: string;
  readonly family: string;
  /** Below the base path. */
  readonly path: string;
}

const key = 'readback-recent-codes';
const most = 6;

/** The codes opened last, newest first; none where the browser keeps nothing or something else stands there. */
export function recentCodes(): RecentCode[] {
  try {
    const kept: unknown = JSON.parse(window.localStorage.getItem(key) ?? '[]');
    return Array.isArray(kept) ? kept.filter(isRecentCode).slice(0, most) : [];
  } catch {
    return [];
  }
}

/** Puts a code in front; the same profile is kept once. Does nothing where the browser keeps nothing. */
export function keepRecentCode(recent: RecentCode): void {
  const others = recentCodes().filter(({ path }) => path !== recent.path);
  write([recent, ...others].slice(0, most));
}

export function forgetRecentCodes(): void {
  write([]);
}

function write(codes: readonly RecentCode[]): void {
  try {
    if (codes.length === 0) window.localStorage.removeItem(key);
    else window.localStorage.setItem(key, JSON.stringify(codes));
  } catch {
    // Private windows may keep nothing: then there is no history.
  }
}

function isRecentCode(value: unknown): value is RecentCode {
  const { code, family, path } = (value ?? {}) as Record<string, unknown>;
  // A path that leads out of the site was not written here.
  return (
    typeof code === 'string' &&
    typeof family === 'string' &&
    typeof path === 'string' &&
    /^profiles\/[\w/-]+$/.test(path)
  );
}
