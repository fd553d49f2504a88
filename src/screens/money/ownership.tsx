// Who owns the company now, later rounds that come whichever offer is taken, what it might be sold for at the end of the plan,
// and how far the founder would go. Worked example: a sale at 1.5 times the last year's net sales.
import type { VNode } from 'preact';
import { roundsPastEnd } from '../../domain/offers/index.ts';
import type { Ownership } from '../../domain/plan/offer-terms.ts';
import { SelectField } from '../../widgets/index.ts';
import { Fields, nameIn, Places, Trouble } from '../inputs/fields.tsx';
import { factor, money, share, text, week } from '../inputs/specs.ts';
import { Fold, Part } from '../shared/parts.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';

const EXIT_BY = [
  { value: 'revenue', label: 'Times the last year’s net sales' },
  { value: 'profit', label: 'Times the last year’s profit' },
  { value: 'price', label: 'A price' },
];

const ROUND = [
  text('label', 'Name'),
  week('week', 'In'),
  money('amount', 'Money', { step: 'sum' }),
  money('preMoneyAmount', 'Company worth before it', { step: 'sum' }),
  share('poolRate', 'Option pool made with it', { step: 'margin' }),
];

const LIMITS = [
  share('leastFounderRate', 'We keep at least', { step: 'margin', placeholder: 'not said' }),
  money('mostPaidAmount', 'We pay at most, without what shares get', {
    step: 'sum',
    placeholder: 'not said',
  }),
];

export function OwnershipPart(): VNode {
  const plan = usePlan();
  const { ownership, horizonWeeks } = plan;
  const say = useSay();
  return (
    <Part title="Who owns it, and what it might be sold for">
      <div>
        <Fold label="Sold at the end of the plan" value={exitWords(ownership.exit, say)}>
          <ExitFields exit={ownership.exit} />
          <Fields
            base="ownership"
            specs={[
              factor('royaltyYears', 'A royalty without an end counts for', { unit: 'years', step: 'one' }),
              share('wantedYearlyRate', 'Investors want, a year', { step: 'margin' }),
            ]}
          />
          <p class="ff-least ff-quiet">A judgement, no forecast: set it to what you believe.</p>
        </Fold>
        <Fold label="Ours today" value={say.percent(Number(ownership.founderRate))}>
          <Fields
            base="ownership"
            specs={[
              share('founderRate', 'Our part', { step: 'margin' }),
              share('poolRate', 'Option pool', { step: 'margin' }),
            ]}
          />
        </Fold>
        <Fold label="Later rounds" value={roundsWords(ownership.rounds.length)}>
          <Places
            listPath="ownership/rounds"
            nameOf={(place, index) => nameIn(place, 'label') ?? `Round ${index + 1}`}
            addLabel="Add a later round"
            blank={(id) => blankRound(id, ownership.rounds.length, horizonWeeks)}
          >
            {(path) => <Fields base={path} specs={ROUND} />}
          </Places>
        </Fold>
        <Fold label="How far we would go" value={limitWords(ownership, say)}>
          <Fields base="ownership" specs={LIMITS} />
        </Fold>
      </div>
      {roundsPastEnd(plan).map(({ id, label }) => (
        <p key={id}>{label} comes after the plan’s last week: it counts nowhere.</p>
      ))}
    </Part>
  );
}

function ExitFields({ exit }: { exit: Ownership['exit'] }): VNode {
  const session = useSession();
  const choose = (by: string): void => {
    const fresh = by === 'price' ? { by, amount: '0' } : { by, multiple: '1' };
    session.setField('ownership/exit', fresh);
    session.endStep();
  };
  return (
    <>
      <SelectField label="Sold for" value={exit.by} choices={EXIT_BY} onChoose={choose} />
      {exit.by === 'price' ? (
        <Fields
          base="ownership/exit"
          specs={[money('amount', 'Price, without cash and debts', { step: 'sum' })]}
        />
      ) : (
        <Fields
          base="ownership/exit"
          specs={[factor('multiple', 'Multiple', { unit: 'times', step: 'rate' })]}
        />
      )}
      <Trouble path="ownership/exit" />
    </>
  );
}

/** A round is worth something before it: zero would be no round. */
function blankRound(id: string, count: number, horizonWeeks: number): Ownership['rounds'][number] {
  return {
    id,
    label: `Round ${count + 1}`,
    week: Math.min(52, horizonWeeks - 1),
    amount: '0',
    preMoneyAmount: '1000000',
    poolRate: '0',
  };
}

function exitWords(exit: Ownership['exit'], say: ScreenSay): string {
  if (exit.by === 'price') return say.sum(exit.amount);
  return `${say.number(Number(exit.multiple))} × ${exit.by === 'revenue' ? 'net sales' : 'profit'}`;
}

function roundsWords(count: number): string {
  return count === 0 ? 'none' : String(count);
}

function limitWords({ leastFounderRate, mostPaidAmount }: Ownership, say: ScreenSay): string {
  const parts = [
    leastFounderRate === null ? null : `keep ${say.percent(Number(leastFounderRate))}`,
    mostPaidAmount === null ? null : `pay ${say.sum(mostPaidAmount)}`,
  ].filter((each) => each !== null);
  return parts.length === 0 ? 'not said' : parts.join(', ');
}
