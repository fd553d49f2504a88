// Before the meeting: what we want out of it, the line we would not cross, when the chain looks at its shelf, how far we
// would go on each term, and what we would rather give. All of it is kept with the plan, and none of it shows on the
// meeting's screen in words. Worked example: target 18,000 a year, slotting at most 300, doors given before margin.
import type { VNode } from 'preact';
import { setAims } from '../../app/commands/talks.ts';
import { CODE_CAUTION, codeFrom } from '../../app/their-side.ts';
import type { Table as Talks } from '../../domain/plan/index.ts';
import type { Problem } from '../../domain/problems.ts';
import { AmountField, Segmented, SelectField, SwitchField, TextField } from '../../widgets/index.ts';
import { Part } from '../shared/parts.tsx';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { useShownItem } from './head.tsx';
import type { MeetingKept } from './kept.ts';
import { Limits } from './limits.tsx';
import type { TalksModel } from './model.ts';
import { useTyped } from './use-typed.ts';
import { money } from './verdict-words.ts';

const OBJECTIVES = [
  { value: 'firstYear', label: 'First year' },
  { value: 'presentValue', label: 'Present value' },
  { value: 'payback', label: 'Payback' },
];

/** A rate to start from, as the command line has it; a guess until it is typed. */
const USUAL_RATE = '0.1';

export function Prepare({ model, kept }: { model: TalksModel; kept: MeetingKept }): VNode {
  return (
    <div class="ff-stack">
      <Part title="What we want">
        <Aims model={model} />
      </Part>
      <Part title="How far, and what rather">
        <p class="ff-least ff-quiet">
          First what we would rather give. A limit is as far as we would go; counter-offers keep to it.
        </p>
        <Limits model={model} />
      </Part>
      <Part title="On this device">
        <OnDevice model={model} kept={kept} />
      </Part>
    </div>
  );
}

type AimsChange = Partial<Pick<Talks, 'objective' | 'targetAmount' | 'walkAwayAmount' | 'reviewWeeks'>>;

/** Sets an aim as an edit of its own place; gives back what stands against it. */
function useSetAims({ account }: TalksModel): (at: string, aims: AimsChange) => readonly Problem[] {
  const session = useSession();
  return (at, aims) => {
    const path = `accounts/${account.id}/table/${at}`;
    if (session.run(setAims, { accountId: account.id, aims }, path)) return [];
    const problems = session.problems.value.get(path) ?? [];
    session.forget(path);
    return problems;
  };
}

function Aims({ model }: { model: TalksModel }): VNode {
  const say = useSay();
  const setting = useSetAims(model);
  const { objective, targetAmount, walkAwayAmount } = model.table;
  const { standing } = model;
  const isWeeks = objective.by === 'payback';
  const unit = isWeeks ? 'weeks' : objective.by === 'firstYear' ? 'a year' : 'today';
  const text = (value: number): string =>
    isWeeks ? say.number(Math.round(value * 10) / 10) : money(value, say);
  const session = useSession();
  return (
    <div>
      <Segmented
        label="Measured by"
        value={objective.by}
        choices={OBJECTIVES}
        hint={HINTS[objective.by]}
        onChoose={(by) => {
          session.endStep();
          setting('objective', { objective: objectiveOf(by), targetAmount: null, walkAwayAmount: null });
          session.endStep();
        }}
      />
      {objective.by === 'presentValue' && <YearlyRate model={model} />}
      <AimField
        model={model}
        label="Target"
        unit={unit}
        kept={targetAmount}
        place="targetAmount"
        hint={
          targetAmount === null ? `Empty: the plan before the asks, ${text(standing.target)}.` : undefined
        }
      />
      <AimField
        model={model}
        label="Walk away"
        unit={unit}
        kept={walkAwayAmount}
        place="walkAwayAmount"
        hint={walkAwayAmount === null ? `Empty: where it just pays, ${text(standing.walkAway)}.` : undefined}
      />
      <ReviewWeeks model={model} />
    </div>
  );
}

const HINTS: Record<Talks['objective']['by'], string> = {
  firstYear: 'Contribution of the first year, less the money put down in it.',
  presentValue: 'What the deal over its term is worth today, at a yearly rate.',
  payback: 'Weeks until the money put down is back; fewer are better.',
};

function objectiveOf(by: string): Talks['objective'] {
  if (by === 'presentValue') return { by, yearlyRate: USUAL_RATE };
  return by === 'payback' ? { by } : { by: 'firstYear' };
}

interface AimProps {
  model: TalksModel;
  label: string;
  unit: string;
  kept: string | null;
  place: 'targetAmount' | 'walkAwayAmount';
  hint: string | undefined;
}

function AimField({ model, label, unit, kept, place, hint }: AimProps): VNode {
  const session = useSession();
  const setting = useSetAims(model);
  const field = useTyped({
    label,
    kind: model.table.objective.by === 'payback' ? 'factor' : 'amount',
    read: () =>
      session.plan.value?.accounts.find(({ id }) => id === model.account.id)?.table?.[place] ?? null,
    put: (value) => setting(place, { [place]: value }),
    mayBeEmpty: true,
  });
  return (
    <AmountField
      label={label}
      value={field.text}
      suffix={unit}
      placeholder={kept === null ? 'as below' : undefined}
      hint={hint}
      problem={field.problem}
      onInput={field.onInput}
      onCommit={field.onCommit}
    />
  );
}

function YearlyRate({ model }: { model: TalksModel }): VNode {
  const session = useSession();
  const setting = useSetAims(model);
  const field = useTyped({
    label: 'Yearly rate',
    kind: 'percent',
    read: () => {
      const account = session.plan.value?.accounts.find(({ id }) => id === model.account.id);
      const objective = account?.table?.objective;
      return objective?.by === 'presentValue' ? objective.yearlyRate : null;
    },
    put: (value) =>
      setting('objective/yearlyRate', { objective: { by: 'presentValue', yearlyRate: value ?? '' } }),
    mayBeEmpty: false,
  });
  return (
    <AmountField
      label="Yearly rate"
      value={field.text}
      suffix="%"
      problem={field.problem}
      onInput={field.onInput}
      onCommit={field.onCommit}
    />
  );
}

function ReviewWeeks({ model }: { model: TalksModel }): VNode {
  const session = useSession();
  const setting = useSetAims(model);
  const field = useTyped({
    label: 'First look at the shelf',
    kind: 'whole',
    read: () =>
      session.plan.value?.accounts.find(({ id }) => id === model.account.id)?.table?.reviewWeeks ??
      model.table.reviewWeeks,
    put: (value) => setting('reviewWeeks', { reviewWeeks: Number(value) }),
    mayBeEmpty: false,
  });
  return (
    <AmountField
      label="First look at the shelf"
      value={field.text}
      suffix="weeks after opening"
      hint={model.account.table === null ? 'Half a year stands in until it is known; guess.' : undefined}
      problem={field.problem}
      onInput={field.onInput}
      onCommit={field.onCommit}
    />
  );
}

function OnDevice({ model, kept }: { model: TalksModel; kept: MeetingKept }): VNode {
  const { plan, account } = model;
  const { habits, setHabits } = kept;
  const [itemId, showItem] = useShownItem(account);
  const code = codeFrom(habits.code);
  const items = account.listings.map((listing) => ({
    value: listing.itemId,
    label: plan.items.find(({ id }) => id === listing.itemId)?.name ?? listing.itemId,
  }));
  return (
    <div>
      <SwitchField
        label="For the left hand"
        hint="− and + stand at the left edge."
        on={habits.leftHand}
        onChange={(leftHand) => setHabits({ leftHand })}
      />
      {items.length > 1 && (
        <SelectField label="Their side shows" value={itemId} choices={items} onChoose={showItem} />
      )}
      <TextField
        label="Code for coming back"
        value={habits.code}
        placeholder="none"
        maxLength={8}
        hint={`Four digits, besides holding the key. ${CODE_CAUTION}`}
        problem={
          code.ok
            ? undefined
            : code.problems.map(({ got, expected }) => `Code: got “${got}”. Expected ${expected}.`).join(' ')
        }
        onInput={(text) => setHabits({ code: text })}
      />
    </div>
  );
}
