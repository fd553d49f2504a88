// When one chain's doors open: its waves with their dates, doors that already sell, and how doors are lost again.
// Worked example: 180 doors at 45 a week from week 10 open from 11 May to 1 June.
import type { VNode } from 'preact';
import type { Account } from '../../domain/plan/index.ts';
import { LinkButton } from '../../widgets/index.ts';
import { useBulkHash } from '../inputs/bulk-hash.ts';
import { Fields, Places } from '../inputs/fields.tsx';
import { choice, count, share, week } from '../inputs/specs.ts';
import { usePlan } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { WeekFor } from '../shared/week-for.tsx';

type Wave = Account['waves'][number];

const WAVE = [
  count('doors', 'Doors', '', { step: 'doors', least: 1 }),
  count('doorsPerWeek', 'Doors a week', '', { step: 'doors', least: 1 }),
];
const RUNNING = [
  count('doors', 'Doors', '', { step: 'doors', least: 1 }),
  count('ageWeeks', 'Selling since', 'weeks'),
  count('unitsPerDoor', 'Of each product on the shelf', 'units'),
];

export function Openings({ account }: { account: Account }): VNode {
  const plan = usePlan();
  const bulkHash = useBulkHash();
  const base = `accounts/${account.id}`;
  const first = Math.min(Math.max(account.terms.transitWeeks, 12), plan.horizonWeeks - 1);
  return (
    <div class="ff-inputs-section">
      <Places
        listPath={`${base}/waves`}
        nameOf={(_, index) => `Opening ${index + 1}`}
        addLabel="Add an opening"
        blank={(id) => ({ id, openWeek: first, doors: 10, doorsPerWeek: 10 })}
      >
        {(path, place) => (
          <>
            <WeekFor path={`${path}/openWeek`} label="First doors open in" />
            <Fields base={path} specs={WAVE} />
            <Span wave={place as Wave} />
          </>
        )}
      </Places>
      <p>
        <LinkButton kind="quiet" href={bulkHash('doors')}>
          Paste a table of openings
        </LinkButton>
      </p>
      <Places
        listPath={`${base}/runningDoors`}
        nameOf={(_, index) => `Already selling ${index + 1}`}
        addLabel="Add doors that already sell"
        blank={(id) => ({ id, doors: 10, ageWeeks: 26, unitsPerDoor: 12 })}
      >
        {(path) => <Fields base={path} specs={RUNNING} />}
      </Places>
      <Losing account={account} />
    </div>
  );
}

/** From when to when one wave opens. */
function Span({ wave: { openWeek, doors, doorsPerWeek } }: { wave: Wave }): VNode {
  const say = useSay();
  const weeks = Math.ceil(doors / doorsPerWeek);
  const last = openWeek + weeks - 1;
  const words =
    weeks === 1
      ? `All ${say.count(doors)} open in ${say.week(openWeek)}.`
      : `They open from ${say.weekDay(openWeek)} to ${say.week(last)}, ${say.count(weeks)} weeks.`;
  return <p class="ff-least ff-quiet">{words}</p>;
}

const ATTRITION = [
  share('attritionYearlyRate', 'Doors lost in a year', { step: 'slowShare' }),
  share('voidRate', 'Doors without it on the shelf', {
    step: 'slowShare',
    hint: 'Of the doors that open: authorised, but neither filled nor selling.',
  }),
];
const CUT = [week('week', 'They close in'), count('doors', 'Doors', '', { step: 'doors', least: 1 })];
const MARKDOWN = [
  share('exitMarkdownRate', 'Money for marking it down', {
    step: 'depth',
    hint: 'Of the invoiced value of what stands there.',
  }),
];
const CLOSED = [
  choice('closedStock', 'Stock of a closed door', [
    { value: 'kept', label: 'the chain keeps' },
    { value: 'credited', label: 'is credited' },
    { value: 'ours', label: 'is ours' },
  ]),
];

/** Attrition and voids, doors planned to close, the week the chain takes it off its shelves, and whose the stock is then. */
function Losing({ account }: { account: Account }): VNode {
  const { horizonWeeks } = usePlan();
  const base = `accounts/${account.id}`;
  return (
    <div>
      <Fields base={base} specs={ATTRITION} />
      <Places
        listPath={`${base}/cuts`}
        nameOf={(_, index) => `Closing ${index + 1}`}
        addLabel="Add a planned closing of doors"
        blank={(id) => ({ id, week: closingWeek(account, horizonWeeks), doors: 1 })}
      >
        {(path) => <Fields base={path} specs={CUT} />}
      </Places>
      <WeekFor path={`${base}/cutWeek`} label="Taken off the shelves in" placeholder="never" />
      <Fields base={base} specs={CLOSED} />
      {account.closedStock === 'kept' && <Fields base={base} specs={MARKDOWN} />}
    </div>
  );
}

/** Half a year after the first doors are open, where the plan goes so far and the chain still has it. */
function closingWeek({ waves, runningDoors, cutWeek }: Account, horizonWeeks: number): number {
  const first =
    runningDoors.length > 0 ? 0 : Math.min(...waves.map(({ openWeek }) => openWeek), horizonWeeks);
  return Math.max(0, Math.min(first + 26, horizonWeeks - 1, (cutWeek ?? horizonWeeks) - 1));
}
