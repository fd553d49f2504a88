// What could stand behind a loan at a week's end, beside what the plan is short of then.
// Worked figure: 59,943 of invoices at 80 % and 20,565 of goods at 50 %: 58,237.
import type { VNode } from 'preact';
import { collateralAt } from '../../domain/lender/index.ts';
import { dec } from '../../domain/money/decimal.ts';
import type { Results } from '../../domain/results.ts';
import { Figure } from '../../widgets/index.ts';
import { Figures } from '../shared/parts.tsx';
import { useSay } from '../shared/use-say.ts';

type CollateralProps = Parameters<typeof collateralAt>[0] & { results: Results; older: boolean };

export function CollateralFigures({ older, ...args }: CollateralProps): VNode {
  const say = useSay();
  const found = collateralAt(args);
  const { receivablesRate, stockRate } = args.plan.business.lender;
  const { cashNeed, cashNeedWeek } = args.results.reading;
  return (
    <>
      <Figures>
        <Figure
          label="Receivables"
          value={say.money(found.receivables)}
          note={`${say.money(found.tooOld)} over 90 days or of unknown date, ${say.money(found.claims)} of claims against them`}
          older={older}
        />
        <Figure
          label="Of them eligible"
          value={say.money(found.eligibleReceivables)}
          note={`lent on at ${say.percent(dec(receivablesRate))}: ${say.money(found.onReceivables)}`}
          older={older}
        />
        <Figure
          label="Finished goods, ours"
          value={say.money(found.stock)}
          note={`at landed cost, lent on at ${say.percent(dec(stockRate))}: ${say.money(found.onStock)}`}
          older={older}
        />
        <Figure
          label="Together"
          value={say.money(found.amount)}
          note={`at the end of week ${found.week}`}
          older={older}
        />
      </Figures>
      <p>
        {cashNeed === 0 || cashNeedWeek === null
          ? 'The plan needs no cash beside its own.'
          : `The plan is short of ${say.money(cashNeed)} in ${say.week(cashNeedWeek)}, without new funding.`}
      </p>
    </>
  );
}
