// What limits the plan and what lifts it: the first limit in a sentence, the three best changes with what each does and a
// key that puts it in, every change that was tried in a table. The changes are run beside the page, again after each edit.
// Worked example: "Tarrowby pays 14 days earlier": lowest cash −31,416 to −24,196, the first year contributes the same.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { putChange } from '../../app/commands/answers.ts';
import { bindingOf, changeWords, type Lift, type Lifts, pathsOfChange } from '../../domain/answers/index.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { Button, Table, type TableColumn, type TableRow } from '../../widgets/index.ts';
import { Fold, Part } from '../shared/parts.tsx';
import { type Shown, useSession } from '../shared/session-context.ts';
import { useFollowing } from '../shared/use-following.ts';
import { useSay } from '../shared/use-say.ts';
import { liftSentences, limitSentences, stretchWords } from './limit-words.ts';

const BEST = 3;

export function Limits({ shown }: { shown: Shown }): VNode {
  const say = useSay();
  const { plan, results } = shown;
  const binding = useMemo(() => bindingOf(plan, results), [results]);
  const job = useMemo(() => ({ kind: 'lifts' as const, plan }), [plan]);
  const followed = useFollowing(job);
  const older = followed !== null && followed.job !== job;
  return (
    <Part title="What limits, and what lifts it">
      <ul class="ff-said" aria-label="What limits">
        {limitSentences({ plan, results, binding }, say).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <Fold label="What limits, week by week">
        <Table
          caption="What limits each stretch of weeks"
          captionHidden
          columns={STRETCH_COLUMNS}
          rows={binding.stretches.map((stretch) => ({
            id: String(stretch.fromWeek),
            cells: stretchWords(stretch, say),
          }))}
          bounded
        />
      </Fold>
      {followed === null ? (
        <p class="ff-quiet">Trying what lifts it …</p>
      ) : followed.answer.ok ? (
        <LiftsRead plan={followed.job.plan} lifts={followed.answer.value} older={older} />
      ) : (
        <p>{followed.answer.trouble}</p>
      )}
    </Part>
  );
}

const STRETCH_COLUMNS: readonly TableColumn[] = [
  { key: 'weeks', label: 'Weeks', kind: 'text' },
  { key: 'what', label: 'What limits', kind: 'text' },
];

interface LiftsReadProps {
  /** The plan the answer is for. */
  plan: Plan;
  lifts: Lifts;
  older: boolean;
}

function LiftsRead({ plan, lifts, older }: LiftsReadProps): VNode {
  const { best, others, noHelp } = lifts;
  const tried = best.length + others.length + noHelp.length;
  return (
    <div class={older ? 'ff-lifts ff-is-older' : 'ff-lifts'}>
      {best.length === 0 ? (
        <p>{tried === 0 ? 'There is nothing to try yet.' : `None of ${tried} changes tried lifts it.`}</p>
      ) : (
        <ol class="ff-lift-list" aria-label="The best of what was tried">
          {best.slice(0, BEST).map((lift) => (
            <LiftRow key={keyOf(lift)} plan={plan} lift={lift} older={older} />
          ))}
        </ol>
      )}
      {older && <p class="ff-least ff-quiet">Of the plan before the last edit; being tried again …</p>}
      {tried > 0 && (
        <Fold label="All changes tried" value={String(tried)}>
          <AllTried plan={plan} lifts={lifts} />
        </Fold>
      )}
    </div>
  );
}

function LiftRow({ plan, lift, older }: { plan: Plan; lift: Lift; older: boolean }): VNode {
  const session = useSession();
  const say = useSay();
  const words = changeWords(lift.change, plan, say);
  const put = (): void => {
    session.endStep();
    session.run(putChange, lift.change, pathsOfChange(plan, lift.change)[0] ?? '');
    session.endStep();
  };
  return (
    <li class="ff-lift">
      <div>
        <p class="ff-lift-change">{words}</p>
        <p class={older ? 'ff-least ff-quiet ff-older' : 'ff-least ff-quiet'}>
          {capital(liftSentences(lift, say).join('; '))}.
        </p>
      </div>
      <Button label={`Put in: ${words}`} disabled={older} onPress={put}>
        Put in
      </Button>
    </li>
  );
}

const TRIED_COLUMNS: readonly TableColumn[] = [
  { key: 'change', label: 'Change', kind: 'text' },
  { key: 'need', label: 'Cash needed', kind: 'number' },
  { key: 'low', label: 'Lowest cash', kind: 'number' },
  { key: 'week', label: 'In week', kind: 'number' },
  { key: 'lost', label: 'Units lost', kind: 'number' },
  { key: 'year', label: 'First year', kind: 'number' },
];

function AllTried({ plan, lifts }: { plan: Plan; lifts: Lifts }): VNode {
  const say = useSay();
  const rows = useMemo((): TableRow[] => {
    const cells = ({ cashNeed, lowestCash, lowestWeek, unitsLost, contribution }: Lift['after']) => [
      say.money(cashNeed),
      say.money(lowestCash),
      String(lowestWeek),
      say.count(unitsLost),
      say.money(contribution),
    ];
    const rowOf = (lift: Lift): TableRow => ({
      id: keyOf(lift),
      cells: [
        <span key="change" class={lift.liftsCash || lift.liftsUnits ? 'ff-tried' : 'ff-tried ff-quiet'}>
          {changeWords(lift.change, plan, say)}
          {lift.withoutItsCost && ' (without its cost)'}
        </span>,
        ...cells(lift.after),
      ],
    });
    return [
      { id: 'planned', strong: true, cells: ['As planned', ...cells(lifts.before)] },
      ...[...lifts.best, ...lifts.others, ...lifts.noHelp].map(rowOf),
    ];
  }, [plan, lifts, say]);
  return (
    <>
      <Table
        caption="The plan with each change alone, the best first"
        columns={TRIED_COLUMNS}
        rows={rows}
        compact
        bounded
      />
      <p class="ff-least ff-quiet">
        Each was run through the whole plan. “First year” is what its first 52 weeks contribute, before
        overhead, depreciation and interest. What a chain or a supplier would ask in return is not in it.
        Quiet rows lift nothing.
      </p>
    </>
  );
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

function keyOf({ change }: Lift): string {
  return JSON.stringify(change);
}
