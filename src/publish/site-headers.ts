/** What any server is to send with the files of a site, beside their types and lengths. */
import { embedDataPaths } from '../views/paths.ts';

/** Header → value, for every file; `policy` is that of content-policy.ts for headers. */
export function siteHeaders(policy: string): Readonly<Record<string, string>> {
  return {
    'Content-Security-Policy': policy,
    'X-Content-Type-Options': 'nosniff',
    // The address of a page can hold a rider's plan: other sites are not told.
    'Referrer-Policy': 'same-origin',
    'Permissions-Policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()',
    'Cross-Origin-Opener-Policy': 'same-origin',
  };
}

/** What comes with the files the code field on other sites fetches: pages of any origin may have them. */
export const openFiles = {
  /** Files, and folders with a slash at the end. */
  paths: embedDataPaths,
  header: ['Access-Control-Allow-Origin', '*'],
} as const;

/** Whether a file, by its path below the base path, is one of those. */
export function isOpenFile(path: string): boolean {
  return openFiles.paths.some((one) => (one.endsWith('/') ? path.startsWith(one) : path === one));
}

/** Names in these folders carry a digest of their content, so what is at such an address never changes. */
export const hashedFolders: readonly string[] = ['assets/', 'pagefind/fragment/', 'pagefind/index/'];

/** How long a file may be used without asking: for good where its name says what it holds, else not at all. */
export const cacheControl = { hashed: 'public, max-age=31536000, immutable', other: 'no-cache' } as const;
