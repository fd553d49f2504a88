// For a lender: 13 weeks of cash from any week, who owes us and whom we owe since when, what could stand behind a loan,
// and the plan with things going wrong. To be printed; a lender's own terms decide.
// Worked example: weeks 20 to 32 of the third-chain example: 60,948 owed to us, none of it over 90 days old.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import {
  balancesWeek,
  LENDER_WEEKS,
  ledgerOf,
  thirteenWeeks,
  weeksAroundLow,
} from '../../domain/lender/index.ts';
import { Button, ButtonRow, Caution } from '../../widgets/index.ts';
import { FieldFor } from '../shared/field-for.tsx';
import { isWeek, useKept } from '../shared/kept.ts';
import { Part, Whole } from '../shared/parts.tsx';
import { type Shown, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { View } from '../shared/view.tsx';
import { AgedTables } from './aged-tables.tsx';
import { CashTable } from './cash-table.tsx';
import { CollateralFigures } from './collateral.tsx';
import { Trials } from './trials.tsx';
import './lender.css';

export function LenderScreen(): VNode {
  const shown = useShown();
  return (
    <View title="For a lender" verdict={null}>
      {shown !== null && (
        <Whole older={shown.older}>
          <Lender shown={shown} />
        </Whole>
      )}
    </View>
  );
}

const STEP_WEEKS = 4;

function Lender({ shown }: { shown: Shown }): VNode {
  const say = useSay();
  const { plan, results } = shown;
  const { pass } = results;
  const [kept, setFrom] = useKept('lender-week', isWeek);
  const last = Math.max(0, pass.weeks - LENDER_WEEKS);
  const from = Math.min(kept ?? weeksAroundLow(results), last);
  const ledger = useMemo(() => ledgerOf(results), [results]);
  const weeks = useMemo(() => thirteenWeeks(pass, from), [pass, from]);
  const at = { plan, results, ledger, week: balancesWeek(from) };
  const step = (by: number, sign: string, label: string): VNode => (
    <Button
      label={label}
      disabled={by < 0 ? from === 0 : from === last}
      onPress={() => setFrom(Math.max(0, Math.min(last, from + by)))}
    >
      {sign}
    </Button>
  );
  return (
    <div class="ff-lender ff-stack">
      <Caution>Computed, not advice. A lender’s own terms decide what it lends on, and how much.</Caution>
      <div class="ff-lender-steps ff-no-print">
        {step(-STEP_WEEKS, '‹‹', 'Four weeks earlier')}
        {step(-1, '‹', 'A week earlier')}
        <p class="ff-number" aria-live="polite">
          <strong>
            Weeks {from} to {weeks.untilWeek - 1}
          </strong>
          <span class="ff-quiet ff-least"> from {say.weekDay(from)}</span>
        </p>
        {step(1, '›', 'A week later')}
        {step(STEP_WEEKS, '››', 'Four weeks later')}
      </div>
      <Part title="Cash, week by week">
        <CashTable weeks={weeks} currency={plan.currency} />
      </Part>
      <AgedTables {...at} />
      <Part title="What could stand behind a loan">
        <CollateralFigures {...at} older={shown.older} />
        <div class="ff-no-print ff-lender-rates">
          <FieldFor
            path="business/lender/receivablesRate"
            label="Lent on invoices not over 90 days old"
            kind="percent"
            step="depth"
            hint="80 % is common practice, no source."
          />
          <FieldFor
            path="business/lender/stockRate"
            label="Lent on finished goods at landed cost"
            kind="percent"
            step="depth"
            hint="50 % is common practice, no source."
          />
        </div>
      </Part>
      <Trials plan={plan} week={at.week} />
      <div class="ff-no-print">
        <ButtonRow>
          <Button onPress={() => window.print()}>Print these pages</Button>
        </ButtonRow>
      </div>
    </div>
  );
}
