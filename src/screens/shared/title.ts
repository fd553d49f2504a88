// The name of the page in tabs, histories and screen readers. Worked example: "Cash · Granola, Fern · Firstfill".
import { useEffect } from 'preact/hooks';

export function useTitle(title: string): void {
  useEffect(() => {
    document.title = `${title} · Firstfill`;
  }, [title]);
}
