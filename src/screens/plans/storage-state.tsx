// In words, how well this device keeps the plans: not at all (and why), as long as the browser likes, or for good.
// Worked example: "Kept on this device. The browser may clear them when it runs short of space: save as a file what you
// can't lose."
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Button, ButtonRow, ProblemNote } from '../../widgets/index.ts';
import { useSession } from '../shared/session-context.ts';

export function StorageState(): VNode {
  const session = useSession();
  const refusal = session.storage.value;
  const persisted = usePersisted();
  if (refusal !== null) {
    return (
      <ProblemNote>
        <p>{refusal.sentence}</p>
        <p>
          Everything works meanwhile, in memory: save as a file what you want to keep before you close this
          page.
        </p>
        <ButtonRow>
          <Button onPress={() => void session.openStoreAgain()}>Try again</Button>
        </ButtonRow>
      </ProblemNote>
    );
  }
  if (persisted === null) return <p class="ff-least ff-quiet">Kept on this device, nowhere else.</p>;
  return (
    <p class="ff-least ff-quiet">
      {persisted
        ? 'Kept on this device, nowhere else. The browser keeps them until you delete them.'
        : 'Kept on this device, nowhere else. The browser may clear them when space runs short: save as a file what you can’t lose.'}
    </p>
  );
}

/** Whether the browser has promised to keep what is stored; null while it hasn't answered, or can't. */
function usePersisted(): boolean | null {
  const [persisted, setPersisted] = useState<boolean | null>(null);
  const saving = useSession().saving.value;
  useEffect(() => {
    let isHere = true;
    navigator.storage?.persisted?.().then(
      (answer) => isHere && setPersisted(answer),
      () => undefined,
    );
    return () => {
      isHere = false;
    };
  }, [saving]);
  return persisted;
}
