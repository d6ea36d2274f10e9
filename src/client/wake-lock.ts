/** Keeps the screen awake while the walk runs, where the browser can. */

/**
 * Asks for a wake lock, and again whenever the page comes back into view: browsers drop it when the page is
 * hidden. `tell` is told whether it holds.
 */
export function keepAwake(tell: (awake: boolean) => void): (wanted: boolean) => void {
  let lock: WakeLockSentinel | undefined;
  let isWanted = false;
  let isAsking = false;

  const ask = async (): Promise<void> => {
    if (!isWanted || lock || isAsking || document.visibilityState !== 'visible') return;
    if (!('wakeLock' in navigator)) return;
    isAsking = true;
    // Refused on a low battery, among others: the walk goes on without it.
    const granted = await navigator.wakeLock.request('screen').catch(() => undefined);
    isAsking = false;
    if (!granted) return;
    if (!isWanted) {
      void granted.release();
      return;
    }
    lock = granted;
    tell(true);
    granted.addEventListener('release', () => {
      lock = undefined;
      tell(false);
    });
  };

  document.addEventListener('visibilitychange', () => void ask());
  return (wanted) => {
    isWanted = wanted;
    if (wanted) void ask();
    else void lock?.release();
  };
}
