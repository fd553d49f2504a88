// Statements: profit and loss, balance sheet and cash flow (direct and indirect), by week, month, quarter, 4-5-4 period or
// over the whole plan. On a phone one period at a time, wider a table of them; every amount opens into its parts, down to
// documents and what was typed. Worked example: July's trade spend opens to slotting, slotting to week 19 and its doors.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { STATEMENT_WORDS } from '../../domain/explain/statement-words.ts';
import {
  assertAgree,
  ledgerOf,
  PERIOD_KINDS,
  type PeriodKind,
  periodsOf,
  STATEMENT_NAMES,
} from '../../domain/statements/index.ts';
import { Button, ButtonRow, Segmented, SelectField, SwitchField, useWide } from '../../widgets/index.ts';
import { CautionsFor } from '../shared/cautions-for.tsx';
import { isText, isWeek, useKept } from '../shared/kept.ts';
import { Whole } from '../shared/parts.tsx';
import { type Shown, useShown } from '../shared/session-context.ts';
import { View } from '../shared/view.tsx';
import { PeriodSteps } from './period-steps.tsx';
import { KIND_CHOICES, KIND_NOTES } from './period-words.ts';
import { StatementTable } from './statement-table.tsx';
import './statements.css';

export function StatementsScreen(): VNode {
  const shown = useShown();
  return (
    <View title="Statements" verdict={null}>
      {shown !== null && (
        <Whole older={shown.older}>
          <Statements shown={shown} />
        </Whole>
      )}
    </View>
  );
}

/** Periods beside each other where there is room: a year of months, a quarter of weeks, two years of quarters. */
const ACROSS: Record<PeriodKind, number> = { week: 13, month: 12, quarter: 8, retail: 12, plan: 1 };

const ALL = 'all';
const CHOICES = [
  ...STATEMENT_NAMES.map((name) => ({ value: name, label: STATEMENT_WORDS[name] })),
  { value: ALL, label: 'All four' },
];

function Statements({ shown }: { shown: Shown }): VNode {
  const wide = useWide();
  const { pass, compiled, reading } = shown.results;
  const [choice, setChoice] = useKept('statement', isText);
  const [keptKind, setKind] = useKept('statement-period', isText);
  const [parts, setParts] = useKept('statement-parts', isYesNo);
  const [keptWeek, setWeek] = useKept('week', isWeek);
  const kind = PERIOD_KINDS.find((each) => each === keptKind) ?? 'month';
  const statements =
    choice === ALL ? STATEMENT_NAMES : [STATEMENT_NAMES.find((name) => name === choice) ?? 'profitAndLoss'];
  const periods = periodsOf({ kind, startDay: compiled.startDay, weeks: pass.weeks });
  const week = Math.min(keptWeek ?? reading.lowestWeek, pass.weeks - 1);
  const at = periods.findIndex(({ toWeek }) => week <= toWeek);
  const across = wide ? ACROSS[kind] : 1;
  const first = Math.floor(at / across) * across;
  // Five side by side take two rows of a phone.
  const Periods = wide ? Segmented : SelectField;
  const inSight = periods.slice(first, first + across);
  useMemo(() => {
    for (const period of inSight) assertAgree(ledgerOf(shown.results), period);
  }, [shown.results, kind, first, across]);
  return (
    <div class="ff-statements ff-stack">
      <div class="ff-statement-choices ff-no-print">
        <SelectField
          label="Statement"
          value={choice ?? 'profitAndLoss'}
          choices={CHOICES}
          onChoose={setChoice}
        />
        <Periods label="Periods" value={kind} choices={KIND_CHOICES} onChoose={setKind} />
        <SwitchField label="With the parts of each line" on={parts === true} onChange={setParts} />
      </div>
      {inSight.length < periods.length && (
        <PeriodSteps periods={periods} first={first} across={across} onWeek={setWeek} />
      )}
      {statements.map((statement) => (
        <StatementTable
          key={statement}
          shown={shown}
          statement={statement}
          periods={inSight}
          withOpening={statement === 'balanceSheet' && first === 0}
          withWhole={wide && statement !== 'balanceSheet' && kind !== 'plan'}
          parts={parts === true}
        />
      ))}
      <Notes kind={kind} />
      <div class="ff-no-print">
        <ButtonRow>
          <Button onPress={() => window.print()}>Print what is shown</Button>
        </ButtonRow>
      </div>
      <CautionsFor place="front" accountId={null} />
    </div>
  );
}

function isYesNo(value: unknown): value is boolean {
  return typeof value === 'boolean';
}

function Notes({ kind }: { kind: PeriodKind }): VNode {
  return (
    <ul class="ff-said ff-least ff-quiet" aria-label="How to read it">
      {KIND_NOTES[kind] !== '' && <li>{KIND_NOTES[kind]}</li>}
      <li>
        Costs and money out are below zero, so that every total is the plain sum of its lines. Each amount is
        a sum of whole documents.
      </li>
      <li>
        Direct and indirect cash from operations are the same to the last minor unit. Interest and loan fees
        count as operating, since they lower the result.
      </li>
      <li>Income tax and sales tax are outside the plan.</li>
    </ul>
  );
}
