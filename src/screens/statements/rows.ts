// A statement as rows and columns of amounts, before anything is written: its lines, with their parts where they are asked
// for, over the periods shown. Worked figure: trade spend of −3,360.00 has the parts deductions, free goods and slotting.
import { EVENT_WORDS } from '../../domain/explain/event-words.ts';
import { FLOW_WORDS } from '../../domain/explain/flow-words.ts';
import { keyOfLine } from '../../domain/explain/statement.ts';
import { LINE_WORDS } from '../../domain/explain/statement-words.ts';
import type { FigureKey } from '../../domain/explain/types.ts';
import type { EventName } from '../../domain/rollout/events.ts';
import type { FlowName } from '../../domain/rollout/types.ts';
import {
  amountOfLine,
  type Ledger,
  LINES,
  type LineName,
  STATEMENT_LINES,
  type StatementName,
} from '../../domain/statements/index.ts';
import {
  EVENT_NAMES,
  effectOf,
  entryOf,
  sumOfWeeks,
  VAT_EVENT_NAMES,
} from '../../domain/statements/ledger.ts';

/** Weeks of the plan, both counted in; from week 0 to week −1 is its first morning. */
export interface Weeks {
  fromWeek: number;
  toWeek: number;
}

export interface StatementRow {
  id: string;
  label: string;
  level: 'total' | 'line' | 'part';
  cells: readonly { amount: number; key: FigureKey | null }[];
}

interface Asked {
  ledger: Ledger;
  statement: StatementName;
  columns: readonly Weeks[];
  parts: boolean;
}

/** Lines that are nothing over the whole plan are left out; totals stay. */
export function rowsOf({ ledger, statement, columns, parts }: Asked): StatementRow[] {
  return STATEMENT_LINES[statement].flatMap((line) => {
    if (!isEver(ledger, line)) return [];
    const row: StatementRow = {
      id: line,
      label: LINE_WORDS[line].label,
      level: isTotal(line) ? 'total' : 'line',
      cells: columns.map((weeks) => ({
        amount: amountOfLine(ledger, line, weeks),
        key: weeks.toWeek < 0 ? null : keyOfLine(ledger, line, weeks),
      })),
    };
    const below = parts ? partsOf(ledger, line, columns) : [];
    return below.length > 1 ? [row, ...below] : [row];
  });
}

function isTotal(line: LineName): boolean {
  return LINES[line].by === 'sum' || line === 'openingCash';
}

const some = (series: Float64Array) => series.some((amount) => amount !== 0);

function isEver({ pass, opening, events }: Ledger, line: LineName): boolean {
  const source = LINES[line];
  switch (source.by) {
    case 'profit':
      return some(pass.profit[source.profit]);
    case 'flows':
      return source.flows.some((flow) => some(pass.flows[flow]));
    case 'balance':
    case 'change':
      return line === 'openingCash' || opening[source.balance] !== 0 || some(pass.balances[source.balance]);
    case 'accrued':
      return source.part === 'vat'
        ? VAT_EVENT_NAMES.some((event) => some(events[event]))
        : opening.accrued !== 0 || some(pass.balances.accrued);
    case 'sum':
      return true;
  }
}

/** The kinds of documents behind a part of the result, or the cash flows behind a line of them. */
function partsOf(ledger: Ledger, line: LineName, columns: readonly Weeks[]): StatementRow[] {
  const source = LINES[line];
  if (source.by === 'flows') {
    return source.flows
      .filter((flow) => some(ledger.pass.flows[flow]))
      .map((flow) => flowPart(ledger, flow, columns));
  }
  if (source.by !== 'profit' || source.sign < 0) return [];
  return EVENT_NAMES.filter(
    (event) => entryOf(event).profit === source.profit && some(ledger.events[event]),
  ).map((event) => eventPart(ledger, event, columns));
}

function flowPart(ledger: Ledger, flow: FlowName, columns: readonly Weeks[]): StatementRow {
  return {
    id: `flow ${flow}`,
    label: FLOW_WORDS[flow].label,
    level: 'part',
    cells: columns.map(({ fromWeek, toWeek }) => ({
      amount: sumOfWeeks(ledger.pass.flows[flow], fromWeek, toWeek),
      key: { of: 'flow', run: 'plan', flow, fromWeek, toWeek },
    })),
  };
}

function eventPart(ledger: Ledger, event: EventName, columns: readonly Weeks[]): StatementRow {
  const sign = effectOf(event, 'retained');
  return {
    id: `event ${event}`,
    label: EVENT_WORDS[event][0],
    level: 'part',
    cells: columns.map(({ fromWeek, toWeek }) => ({
      amount: sign * sumOfWeeks(ledger.events[event], fromWeek, toWeek) || 0,
      key: { of: 'event', event, on: 'retained', fromWeek, toWeek },
    })),
  };
}
