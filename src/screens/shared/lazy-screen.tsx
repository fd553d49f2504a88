// A screen that is fetched when it is first looked at, and kept. Where it can't be fetched (a new version replaced the
// files of this one) it says so and offers to load the page again.
// Worked example: the cash screen's code comes with the first tap on Cash; the second tap draws it at once.
import type { ComponentType, VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Button, EmptyState } from '../../widgets/index.ts';
import { useSession } from './session-context.ts';

export type Load = () => Promise<ComponentType>;

const loaded = new Map<Load, ComponentType>();

/** Fetches a screen ahead of its use; failing is no trouble yet. */
export function prefetch(load: Load): void {
  load().then(
    (Screen) => loaded.set(load, Screen),
    () => undefined,
  );
}

export function LazyScreen({ load }: { load: Load }): VNode {
  const [failed, setFailed] = useState(false);
  const [, setDone] = useState(false);
  const Screen = loaded.get(load);
  useEffect(() => {
    if (loaded.has(load)) return;
    setFailed(false);
    load().then(
      (fetched) => {
        loaded.set(load, fetched);
        setDone(true);
      },
      () => setFailed(true),
    );
  }, [load]);
  if (Screen !== undefined) return <Screen />;
  return failed ? <NotFetched /> : <p class="ff-starting ff-quiet">Opening …</p>;
}

function NotFetched(): VNode {
  const session = useSession();
  return (
    <EmptyState title="This view could not be fetched. Your edits are kept; loading the page again gets it.">
      <Button kind="primary" onPress={() => void session.flush().then(() => location.reload())}>
        Load the page again
      </Button>
    </EmptyState>
  );
}
