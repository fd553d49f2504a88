// Whether the device says it has a network. Nothing depends on it but the mark in the header: everything works without.
// Worked example: in flight mode the header says "Offline".
import { useEffect, useState } from 'preact/hooks';

export function useOnline(): boolean {
  const [online, setOnline] = useState(() => navigator.onLine);
  useEffect(() => {
    const look = () => setOnline(navigator.onLine);
    addEventListener('online', look);
    addEventListener('offline', look);
    return () => {
      removeEventListener('online', look);
      removeEventListener('offline', look);
    };
  }, []);
  return online;
}
