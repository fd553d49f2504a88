// Keeps the screen awake while the meeting view is open; where the device can't, nothing happens. A lock is lost whenever
// the page is hidden, so it is asked for again when the page comes back.
// Worked example: a phone that dims after 30 seconds stays lit through a buyer's silence.
import { useEffect } from 'preact/hooks';

export function useWakeLock(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | null = null;
    let gone = false;
    const ask = async (): Promise<void> => {
      if (document.visibilityState !== 'visible' || !('wakeLock' in navigator)) return;
      try {
        const own = await navigator.wakeLock.request('screen');
        if (gone) await own.release();
        else lock = own;
      } catch {
        // Low battery, or not allowed: the screen dims as it does elsewhere.
      }
    };
    const follow = (): void => void ask();
    follow();
    document.addEventListener('visibilitychange', follow);
    return () => {
      gone = true;
      document.removeEventListener('visibilitychange', follow);
      void lock?.release().catch(() => undefined);
    };
  }, []);
}
