// The sheets over the meeting: the ways on, the other terms, preparation, what was said, worth, and what stands beside the
// price. Each has its address, so Back closes it. Worked example: ?sheet=said is "Said so far".
import type { ComponentChildren, VNode } from 'preact';
import { bringIntoPlay, takeOutOfPlay } from '../../app/commands/talks.ts';
import { hashOf } from '../../app/route.ts';
import { Button, SelectField, Sheet, SwitchField } from '../../widgets/index.ts';
import { Part } from '../shared/parts.tsx';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { Beside } from './beside.tsx';
import type { MeetingKept } from './kept.ts';
import type { TalksModel } from './model.ts';
import { Prepare } from './prepare.tsx';
import { Said } from './said.tsx';
import { valueText } from './term-words.ts';
import type { Work } from './work.ts';
import { WorthTable } from './worth.tsx';

interface SheetsProps {
  model: TalksModel;
  work: Work;
  kept: MeetingKept;
  sheet: string | null;
}

export function TalksSheets({ model, work, kept, sheet }: SheetsProps): VNode | null {
  const session = useSession();
  const found = contentsOf({ model, work, kept, sheet });
  if (found === null) return null;
  return (
    <Sheet key={sheet} title={found.title} onClose={() => session.closeSheet()}>
      {found.body}
    </Sheet>
  );
}

function contentsOf({
  model,
  work,
  kept,
  sheet,
}: SheetsProps): { title: string; body: ComponentChildren } | null {
  switch (sheet) {
    case 'more':
      return { title: 'More', body: <More model={model} /> };
    case 'terms':
      return { title: 'More terms', body: <MoreTerms model={model} /> };
    case 'prepare':
      return { title: 'Prepare', body: <Prepare model={model} kept={kept} /> };
    case 'said':
      return { title: 'Said so far', body: <Said model={model} /> };
    case 'worth':
      return { title: 'Worth in each other', body: <WorthTable model={model} work={work} /> };
    case 'beside':
      return { title: 'Beside the price', body: <Beside model={model} work={work} /> };
    default:
      return null;
  }
}

const WAYS = [
  ['terms', 'More terms'],
  ['said', 'Said so far'],
  ['worth', 'Worth in each other'],
  ['beside', 'Beside the price'],
  ['prepare', 'Prepare'],
] as const;

function More({ model: { plan, account } }: { model: TalksModel }): VNode {
  const session = useSession();
  return (
    <div class="ff-stack">
      <ul class="ff-talks-ways">
        {WAYS.map(([name, label]) => (
          <li key={name}>
            <Button wide onPress={() => session.openSheet(name)}>
              {label}
            </Button>
          </li>
        ))}
      </ul>
      {plan.accounts.length > 1 && (
        <SelectField
          label="Across the table"
          value={account.id}
          choices={plan.accounts.map(({ id, name }) => ({ value: id, label: name }))}
          onChoose={(id) => session.go({ view: 'table', planId: plan.id, accountId: id, sheet: null })}
        />
      )}
      <p>
        <a class="ff-link" href={hashOf({ view: 'front', planId: plan.id, sheet: null })}>
          Verdicts of {plan.name}
        </a>
      </p>
    </div>
  );
}

/** Every term with the switch that puts it on the screen; of five, one as the plan has it makes room. */
function MoreTerms({ model }: { model: TalksModel }): VNode {
  const session = useSession();
  const say = useSay();
  const { account, terms, inPlay, draft } = model;
  const set = (term: string, on: boolean): void => {
    session.endStep();
    session.run(on ? bringIntoPlay : takeOutOfPlay, { accountId: account.id, term }, 'talks/play');
    session.endStep();
  };
  return (
    <Part title="On the screen, five at most">
      <div>
        {terms.map((term) => {
          const on = inPlay.some(({ name }) => name === term.name);
          const value = draft[term.name] ?? term.value;
          const assumed = term.assumed === null ? '' : ` (${term.assumed})`;
          return (
            <SwitchField
              key={term.name}
              label={term.label}
              hint={`${valueText(term, value, say)}${assumed}`}
              on={on}
              onChange={(next) => set(term.name, next)}
            />
          );
        })}
      </div>
    </Part>
  );
}
