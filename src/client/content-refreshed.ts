/**
 * While entries are being written: reloads a page that was asked for before content was loaded anew. The development
 * server tells open pages itself, but not one that is still loading and has not connected yet.
 */
import { refreshedPath } from '../views/paths.ts';

const pauseMs = 2000;

async function look(): Promise<void> {
  try {
    const { refreshedAt } = (await (await fetch(`/${refreshedPath}`)).json()) as { refreshedAt: number };
    if (refreshedAt > performance.timeOrigin) window.location.reload();
  } catch {
    // The server is being stopped or started; it is asked again.
  }
  setTimeout(look, pauseMs);
}

void look();
