// What happens when one gate takes longer: which openings move, and what that costs, stepped by the day. The openings can be
// moved in the plan then, as one edit. Worked example: "5 days more: Corner opens 1 week later, 23 Mar 2026; −1,200".
import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { openLater } from '../../app/commands/readiness.ts';
import type { Plan } from '../../domain/plan/index.ts';
import type { SlipCost, WaveReading } from '../../domain/readiness/index.ts';
import { Button, ButtonRow, WholeNumberField } from '../../widgets/index.ts';
import { Trouble } from '../inputs/fields.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { useReadiness, useSlipCosts } from './use-readiness.ts';
import { openingName } from './words.ts';

export const SLIP_MOST = 500;

/** In the sheet of a gate: five days to begin with. */
export function Slip({ gateId }: { gateId: string }): VNode {
  const [days, setDays] = useState(5);
  return (
    <fieldset class="ff-place">
      <legend class="ff-label">If it slips</legend>
      <SlipFields gateId={gateId} days={days} onDays={setDays} />
    </fieldset>
  );
}

export interface SlipProps {
  gateId: string;
  days: number;
  onDays: (days: number) => void;
}

export function SlipFields({ gateId, days, onDays }: SlipProps): VNode {
  const plan = usePlan();
  const [text, setText] = useState<string | null>(null);
  const planned = useReadiness(plan);
  const slipped = useReadiness(plan, { gateId, days });
  const read = (typed: string): void => {
    const known = isDays(typed);
    setText(known ? null : typed);
    if (known) onDays(Number(typed));
  };
  return (
    <div class="ff-slip">
      <WholeNumberField
        label="It takes longer by"
        value={text ?? String(days)}
        suffix={days === 1 ? 'working day' : 'working days'}
        problem={
          text === null
            ? undefined
            : `Expected whole working days from 0 to ${SLIP_MOST}. Still showing ${days}.`
        }
        onInput={read}
        onStep={(direction) => {
          setText(null);
          onDays(Math.max(0, Math.min(SLIP_MOST, days + direction)));
        }}
      />
      <Moved plan={plan} planned={planned.waves} slipped={slipped.waves} />
      <Cost gateId={gateId} days={days} waves={slipped.waves} />
    </div>
  );
}

function isDays(text: string): boolean {
  return /^\s*\d{1,3}\s*$/.test(text) && Number(text) <= SLIP_MOST;
}

interface MovedProps {
  plan: Plan;
  planned: readonly WaveReading[];
  slipped: readonly WaveReading[];
}

function Moved({ plan, planned, slipped }: MovedProps): VNode {
  const say = useSay();
  const moved = slipped.filter((wave, at) => wave.slipWeeks > (planned[at]?.slipWeeks ?? 0));
  if (moved.length === 0) return <p role="status">No opening moves any further: there is room for that.</p>;
  return (
    <div role="status">
      <ul class="ff-slip-moves">
        {moved.map((wave) => (
          <li key={`${wave.accountId}/${wave.waveId}`}>{movedWords(plan, wave, say)}</li>
        ))}
      </ul>
    </div>
  );
}

function movedWords(plan: Plan, wave: WaveReading, say: ScreenSay): string {
  const name = openingName(plan, `${wave.accountId}/${wave.waveId}`);
  const reset = wave.nextReset === null ? '' : ` The next reset is on ${say.date(wave.nextReset)}.`;
  return `${name}: ${weeksLater(wave.slipWeeks, say)} than planned, ${say.date(wave.earliest)}.${reset}`;
}

export function weeksLater(weeks: number, say: ScreenSay): string {
  return weeks === 1 ? '1 week later' : `${say.count(weeks)} weeks later`;
}

interface CostProps {
  gateId: string;
  days: number;
  waves: readonly WaveReading[];
}

function Cost({ gateId, days, waves }: CostProps): VNode | null {
  const plan = usePlan();
  const session = useSession();
  const say = useSay();
  const extraDays = useMemo(() => ({ [gateId]: days }), [gateId, days]);
  const followed = useSlipCosts(plan, extraDays);
  const late = waves.filter(({ slipWeeks }) => slipWeeks > 0);
  if (late.length === 0) return null;
  if (followed === null) return <p class="ff-quiet">Running the plan with it …</p>;
  if (!followed.answer.ok) return <p>{followed.answer.trouble}</p>;
  const older = followed.job.plan !== plan || followed.job.extraDays !== extraDays;
  const { all } = followed.answer.value;
  const move = (): void => {
    session.endStep();
    const moved = late.map(({ accountId, waveId, slipWeeks }) => ({ accountId, waveId, weeks: slipWeeks }));
    session.run(openLater, { moved }, 'readiness');
    session.endStep();
  };
  return (
    <>
      <p class={older ? 'ff-older' : undefined} role="status">
        {all === null ? 'The plan can’t be computed with openings so late.' : costWords(all, say)}
      </p>
      <ButtonRow>
        <Button onPress={move}>Open that late in the plan</Button>
      </ButtonRow>
      <Trouble path="readiness" />
    </>
  );
}

/** "Costs 1,200 of contribution in the first year, 600 a week; 3,400 more cash is needed." */
export function costWords(cost: SlipCost, say: ScreenSay): string {
  const { contribution, contributionPerWeek, cashNeed, lowestCash } = cost;
  const aWeek =
    contributionPerWeek === null || contributionPerWeek === 0
      ? ''
      : `, ${say.money(contributionPerWeek)} a week`;
  const first =
    contribution < 0
      ? `Against the plan: ${say.money(-contribution)} less contribution in the first year${aWeek}.`
      : 'Against the plan: no contribution lost in the first year.';
  const need =
    cashNeed === 0
      ? ''
      : ` ${say.money(Math.abs(cashNeed))} ${cashNeed > 0 ? 'more' : 'less'} cash is needed.`;
  const low =
    lowestCash === 0
      ? ''
      : ` Cash at its lowest is ${say.money(Math.abs(lowestCash))} ${lowestCash > 0 ? 'higher' : 'lower'}.`;
  return `${first}${need}${low}`;
}
