// Where deals side by side come in: a sheet on a phone, a part of the page from 900 px on. The address carries it, so Back
// puts it away. Its code comes with the first opening. Worked example: #/p/spring/deal/corner?sheet=compare.
import type { ComponentType, VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Button, ButtonRow, EmptyState, Sheet, useWide } from '../../widgets/index.ts';
import { Part } from '../shared/parts.tsx';
import { useSession } from '../shared/session-context.ts';
import type { SideBySideProps } from './side-by-side.tsx';

const SHEET = 'compare';
const TITLE = 'Side by side';

let loaded: ComponentType<SideBySideProps> | null = null;

async function load(): Promise<void> {
  const part = await import('./side-by-side.tsx');
  loaded = part.SideBySide;
}

/** Opens it, one tap from the view; pressed again it is put away. */
export function SideBySideKey(): VNode {
  const session = useSession();
  const isOpen = session.route.value.sheet === SHEET;
  return (
    <Button pressed={isOpen} onPress={() => (isOpen ? session.closeSheet() : session.openSheet(SHEET))}>
      {TITLE}
    </Button>
  );
}

export function SideBySideLater(props: SideBySideProps): VNode | null {
  const session = useSession();
  const wide = useWide();
  if (session.route.value.sheet !== SHEET) return null;
  const close = (): void => session.closeSheet();
  if (!wide) {
    return (
      <Sheet title={TITLE} onClose={close}>
        <Fetched {...props} />
      </Sheet>
    );
  }
  return (
    <Part title={TITLE}>
      <Fetched {...props} />
      <ButtonRow>
        <Button onPress={close}>Put away</Button>
      </ButtonRow>
    </Part>
  );
}

function Fetched(props: SideBySideProps): VNode {
  const session = useSession();
  const [failed, setFailed] = useState(false);
  const [, setDone] = useState(loaded !== null);
  useEffect(() => {
    load().then(
      () => setDone(true),
      () => setFailed(true),
    );
  }, []);
  if (loaded !== null) {
    const Loaded = loaded;
    return <Loaded {...props} />;
  }
  return failed ? (
    <EmptyState title="This part could not be fetched. Your edits are kept; loading the page again gets it.">
      <Button kind="primary" onPress={() => void session.flush().then(() => location.reload())}>
        Load the page again
      </Button>
    </EmptyState>
  ) : (
    <p class="ff-quiet ff-label">Opening …</p>
  );
}
