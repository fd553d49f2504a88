// Undo and redo by key, where the key isn't the text box's own. Worked example: Ctrl+Z beside a stepper takes the last
// step back; inside a text box it is the box's.
import { useEffect } from 'preact/hooks';
import { useSession } from '../shared/session-context.ts';

export function useUndoKeys(): void {
  const session = useSession();
  useEffect(() => {
    const typed = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== 'z') return;
      const target = event.target;
      if (target instanceof HTMLInputElement && target.type === 'text') return;
      event.preventDefault();
      if (event.shiftKey) session.redo();
      else session.undo();
    };
    document.addEventListener('keydown', typed);
    return () => document.removeEventListener('keydown', typed);
  }, [session]);
}
