// What can be done with one plan besides opening it: another name, a copy, a file, and away with it (which can be undone).
// Worked example: deleting closes the sheet and a notice says "“Granola” was deleted", with Undo.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { hashOf } from '../../app/route.ts';
import { Button, LinkButton, Sheet, TextField } from '../../widgets/index.ts';
import { useSession } from '../shared/session-context.ts';

const NAME_MOST = 120;

export function PlanSheet(): VNode | null {
  const session = useSession();
  const { sheet } = session.route.value;
  if (sheet === null || !sheet.startsWith('plan:')) return null;
  const id = sheet.slice('plan:'.length);
  const row = session.plans.value.find((each) => each.id === id);
  const example = session.examples().find((each) => each.id === id);
  const name = row?.name ?? example?.name;
  if (name === undefined) return null;
  return (
    <Sheet title={name} onClose={() => session.closeSheet()}>
      <Actions key={id} id={id} name={name} isExample={row === undefined} />
    </Sheet>
  );
}

function Actions({ id, name, isExample }: { id: string; name: string; isExample: boolean }): VNode {
  const session = useSession();
  const duplicate = async () => {
    if (!(await session.duplicatePlan(id, `${name.slice(0, NAME_MOST - 6)}, copy`))) return;
    const made = session.plan.value?.id;
    if (made !== undefined) session.go({ view: 'front', planId: made, sheet: null });
  };
  const remove = () => {
    session.closeSheet();
    void session.deletePlan(id);
  };
  return (
    <div class="ff-stack">
      {!isExample && <Rename id={id} name={name} />}
      <LinkButton wide kind="primary" href={hashOf({ view: 'front', planId: id, sheet: null })}>
        Open
      </LinkButton>
      <Button wide onPress={() => void duplicate()}>
        {isExample ? 'Make a plan of mine from it' : 'Duplicate'}
      </Button>
      <Button wide onPress={() => void session.exportPlan(id)}>
        Save as a file
      </Button>
      {!isExample && (
        <Button wide onPress={remove}>
          Delete
        </Button>
      )}
    </div>
  );
}

/** The name is taken over when the field is left, or with Enter; an empty one is not. */
function Rename({ id, name }: { id: string; name: string }): VNode {
  const session = useSession();
  const [text, setText] = useState(name);
  const wanted = text.trim();
  return (
    <TextField
      label="Name"
      value={text}
      maxLength={NAME_MOST}
      problem={
        wanted === ''
          ? 'Name: got nothing. Expected a name of 1 to 120 characters, not only blanks.'
          : undefined
      }
      onInput={setText}
      onCommit={() => {
        if (wanted !== '' && wanted !== name) void session.renamePlan(id, wanted);
      }}
    />
  );
}
