// Where a failed assertion stops: what happened in a sentence, the plan as a file, and the ways on. Nothing else of the
// page goes down with it. Worked example: a ladder that doesn't add up shows this in place of its screen, and the header
// and the other views still work.
import type { ComponentChildren, VNode } from 'preact';
import { useErrorBoundary } from 'preact/hooks';
import { hashOf } from '../../app/route.ts';
import { Button, ButtonRow, LinkButton } from '../../widgets/Buttons.tsx';
import { useSession } from '../shared/session-context.ts';

/** Around a sheet it is `quiet`: the boundary around the screen says it. */
export function Boundary({ children, quiet }: { children: ComponentChildren; quiet: boolean }): VNode | null {
  const session = useSession();
  const [error, reset] = useErrorBoundary((thrown) => session.reportBug(thrown));
  const bug = session.bug.value;
  if (bug === null && error === undefined) return <>{children}</>;
  if (quiet) return null;
  const goOn = () => {
    session.clearBug();
    reset();
  };
  return (
    <section class="ff-bug ff-stack" role="alert">
      <h1>Something in this app is broken</h1>
      <p>
        A check of the app itself failed, so what it would have shown can’t be trusted. Your plan is not lost:
        save it as a file before you go on.
      </p>
      <p class="ff-least ff-quiet">{bug?.message ?? String(error)}</p>
      <ButtonRow>
        {bug?.file != null && (
          <Button kind="primary" onPress={() => bug.file !== null && session.download(bug.file)}>
            Save the plan as a file
          </Button>
        )}
        <Button onPress={goOn}>Try again</Button>
        <span onClickCapture={goOn}>
          <LinkButton href={hashOf({ view: 'plans', sheet: null })}>All plans</LinkButton>
        </span>
      </ButtonRow>
    </section>
  );
}
