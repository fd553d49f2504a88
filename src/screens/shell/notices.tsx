// What the app has to say about itself. What may lose something or asks for a choice stands as a line above the page
// until it is answered; what is only good to know comes as a toast and goes.
// Worked example: a full device is a line with "Save as a file"; a deleted plan is a toast with "Undo".
import type { VNode } from 'preact';
import type { Notice, Session } from '../../app/session.ts';
import { Banner, ToastArea } from '../../widgets/Notices.tsx';
import { useSession } from '../shared/session-context.ts';

/** A toast stays long enough to be read and reached. */
const TOAST_SECONDS = 10;

export function Banners(): VNode {
  const session = useSession();
  const lines = session.notices.value.filter(({ kind }) => kind === 'update' || kind === 'refusal');
  return (
    <>
      {lines.map((notice) => (
        <Banner
          key={notice.id}
          text={notice.sentence}
          tone={notice.kind === 'update' ? 'ask' : 'warn'}
          actions={actionsOf(session, notice)}
        />
      ))}
    </>
  );
}

function actionsOf(session: Session, notice: Notice): { label: string; onPress: () => void }[] {
  const { action, file } = notice;
  const isStore = session.storage.value !== null && session.storage.value.sentence === notice.sentence;
  return [
    ...(action === null ? [] : [{ label: action.label, onPress: action.run }]),
    ...(file === null ? [] : [{ label: 'Save as a file', onPress: () => session.download(file) }]),
    ...(isStore ? [{ label: 'Try again', onPress: () => void session.openStoreAgain() }] : []),
    { label: notice.kind === 'update' ? 'Later' : 'Close', onPress: () => session.dismiss(notice.id) },
  ];
}

export function Toasts(): VNode {
  const session = useSession();
  const toasts = session.notices.value
    .filter(({ kind }) => kind === 'offline' || kind === 'undo' || kind === 'info')
    .map(({ id, sentence, action }) => ({
      id,
      text: sentence,
      actionLabel: action?.label,
      onAction: action?.run,
    }));
  return <ToastArea toasts={toasts} seconds={TOAST_SECONDS} onDismiss={(id) => session.dismiss(id)} />;
}
