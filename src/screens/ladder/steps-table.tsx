// From the list price to what we keep: every step with its amount, whose money it becomes and the reason in words, then
// what deals take in their own weeks. Worked figure: list 2.8942 less 0.2315 off invoice is the invoice price 2.6627.
import type { VNode } from 'preact';
import { dealTakes } from '../../domain/deals/unit-money.ts';
import type { FigureKey } from '../../domain/explain/types.ts';
import { stepsInDealWeeks } from '../../domain/ladder/deal-week.ts';
import type { Step } from '../../domain/ladder/types.ts';
import { dec } from '../../domain/money/decimal.ts';
import { Figure, OwnerMark, Table, type TableColumn, WhereFrom } from '../../widgets/index.ts';
import { Figures } from '../shared/parts.tsx';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import { OWNER_NAMES } from './picture-rungs.ts';
import type { ShownLadder } from './place.ts';

const COLUMNS: readonly TableColumn[] = [
  { key: 'step', label: 'Step', kind: 'text' },
  { key: 'amount', label: 'A unit', kind: 'number' },
];

export function StepsTable({ shown }: { shown: ShownLadder }): VNode {
  const say = useSay();
  const why = useWhy();
  const { ladder, account, item, older } = shown;
  const ids = { accountId: account.id, itemId: item.id };
  const fig = (
    label: string,
    value: string,
    figure: 'contribution' | 'contributionRate' | 'tradeRate' | 'ladderMarginRate',
  ) => (
    <Figure
      size="row"
      label={label}
      value={value}
      older={older}
      whereFrom={why({ of: 'listing', ...ids, figure })}
    />
  );
  const rate = ladder.contributionRate;
  return (
    <>
      <Figures>
        {fig('We keep, a unit', say.price(ladder.contribution), 'contribution')}
        {fig('We keep, of net price', rate === null ? 'not known' : say.percent(rate), 'contributionRate')}
        {fig('Trade rate', say.percent(ladder.tradeRate), 'tradeRate')}
        {fig('Ladder margin', say.percent(ladder.ladderMarginRate), 'ladderMarginRate')}
      </Figures>
      <div class="ff-steps">
        <Table
          caption={`Steps of ${item.name} at ${account.name}`}
          captionHidden
          columns={COLUMNS}
          rows={ladder.steps.map((step) => ({
            id: step.id,
            strong: step.isLevel,
            cells: [
              <StepName key="step" step={step} />,
              <StepAmount key="amount" step={step} open={why(keyOf(step, ids))} />,
            ],
          }))}
        />
      </div>
      <DealWeeks shown={shown} />
    </>
  );
}

function StepName({ step }: { step: Step }): VNode {
  return (
    <span class="ff-step-name">
      {!step.isLevel && <OwnerMark owner={step.owner} label={OWNER_NAMES[step.owner]} />}
      <span>
        {step.label}
        <span class="ff-step-reason ff-least">{step.reason}</span>
      </span>
    </span>
  );
}

function StepAmount({ step, open }: { step: Step; open: () => void }): VNode {
  const say = useSay();
  const text = say.priceExact(step.isLevel ? step.amount : step.amount.negated());
  return (
    <WhereFrom open={open} label={`${step.label}: ${text}. Where from?`}>
      {text}
    </WhereFrom>
  );
}

/** Levels, and what isn't a step of its own, are figures of the listing. */
function keyOf(step: Step, ids: { accountId: string; itemId: string }): FigureKey {
  const { id } = step;
  if (id === 'list' || id === 'invoice' || id === 'net' || id === 'landed' || id === 'contribution') {
    return { of: 'listing', ...ids, figure: id };
  }
  return { of: 'step', ...ids, stepId: id };
}

const DEAL_COLUMNS: readonly TableColumn[] = [
  { key: 'deal', label: 'Deal', kind: 'text' },
  { key: 'taken', label: 'Takes', kind: 'number' },
  { key: 'net', label: 'Net then', kind: 'number' },
  { key: 'keep', label: 'We keep', kind: 'number' },
];

/** What a unit scanned in a deal's weeks brings. Nothing where no deal runs. */
function DealWeeks({ shown }: { shown: ShownLadder }): VNode | null {
  const say = useSay();
  const { account, ladder } = shown;
  const promotions = account.promotions.map((promo, index) => ({
    id: promo.id,
    label: promo.label,
    weeks: weeksWords(promo.fromWeek, promo.fromWeek + promo.weeks),
    amount: dec(dealTakes(account, ladder).slice(-account.promotions.length)[index]?.amount ?? 0),
  }));
  const claims = stepsInDealWeeks(ladder).map(({ id, label, amount, reason }) => ({
    id,
    label,
    weeks: reason.replace(/^.* in (?=weeks)/, ''),
    amount,
  }));
  const deals = [...claims, ...promotions];
  if (deals.length === 0) return null;
  return (
    <Table
      caption="In the weeks of a deal, a unit"
      columns={DEAL_COLUMNS}
      rows={deals.map(({ id, label, weeks, amount }) => ({
        id,
        cells: [
          <span key="deal">
            {label}
            <span class="ff-step-reason ff-least">{weeks}</span>
          </span>,
          say.priceExact(amount.negated()),
          say.priceExact(ladder.net.minus(amount)),
          say.priceExact(ladder.contribution.minus(amount)),
        ],
      }))}
    />
  );
}

function weeksWords(fromWeek: number, untilWeek: number): string {
  return untilWeek - fromWeek === 1 ? `week ${fromWeek}` : `weeks ${fromWeek} to ${untilWeek - 1}`;
}
