// A line of a statement taken apart: a total into its lines, a line into the kinds of documents behind it (or its cash
// flows), a kind into its weeks, a week into its documents. Worked figure: trade spend of March −3,360.00 is deductions
// −310.00, free goods −650.00 and slotting −2,400.00; slotting is weeks 10 and 11; week 10 is Corner's 45 doors.
import type { EventName } from '../rollout/events.ts';
import type { BalanceName } from '../rollout/types.ts';
import { amountOfLine, cashSignOf, type Weeks } from '../statements/amounts.ts';
import {
  EVENT_NAMES,
  effectOf,
  entryOf,
  type Ledger,
  ledgerOf,
  sumOfWeeks,
  VAT_EVENT_NAMES,
} from '../statements/ledger.ts';
import { LINES, type LineName } from '../statements/lines.ts';
import { openingCash } from './cash.ts';
import { EVENT_WORDS } from './event-words.ts';
import { BALANCE_WORDS, FLOW_WORDS } from './flow-words.ts';
import { entriesOf, entryLines } from './posting-lines.ts';
import { journalOf, sumSeries } from './runs.ts';
import { LINE_WORDS } from './statement-words.ts';
import type { ExplanationLine, FigureKey } from './types.ts';
import { amountOf, type Draft, moneyPart, type Scene, sumFormula } from './write.ts';

type StatementKey = Extract<FigureKey, { of: 'statement' }>;
type EventKey = Extract<FigureKey, { of: 'event' }>;

/** The key that opens a line of a statement: a balance and a single flow have keys of their own. */
export function keyOfLine(ledger: Ledger, line: LineName, weeks: Weeks): FigureKey {
  const source = LINES[line];
  const { fromWeek, toWeek } = weeks;
  if (source.by === 'balance' && (source.at === 'end' || fromWeek > 0)) {
    const week = source.at === 'end' ? toWeek : fromWeek - 1;
    return { of: 'week', run: 'plan', week, figure: source.balance };
  }
  const [flow, ...others] =
    source.by === 'flows'
      ? source.flows.filter((each) => sumSeries(ledger.pass.flows[each], fromWeek, toWeek) !== 0)
      : [];
  if (flow !== undefined && others.length === 0) return { of: 'flow', run: 'plan', flow, fromWeek, toWeek };
  return { of: 'statement', line, fromWeek, toWeek };
}

/** Null when a week lies beyond the plan's horizon. */
export function statementFigure(scene: Scene, key: StatementKey): Draft | null {
  const { fromWeek, toWeek, line } = key;
  const ledger = ledgerOf(scene.results);
  if (toWeek >= ledger.pass.weeks || fromWeek > toWeek) return null;
  const { label, meaning } = LINE_WORDS[line];
  return draft(scene, key, {
    label,
    meaning,
    amount: amountOfLine(ledger, line, key),
    lines: linesOf(scene, ledger, key),
  });
}

/** Null when a week lies beyond the plan's horizon, or the event does not move that balance. */
export function eventFigure(scene: Scene, key: EventKey): Draft | null {
  const { event, on, fromWeek, toWeek } = key;
  const ledger = ledgerOf(scene.results);
  const sign = effectOf(event, on);
  if (toWeek >= ledger.pass.weeks || fromWeek > toWeek || sign === 0) return null;
  const [label, reason] = EVENT_WORDS[event];
  return draft(scene, key, {
    label,
    meaning: `${label}: ${reason}.`,
    amount: sign * sumOfWeeks(ledger.events[event], fromWeek, toWeek),
    lines:
      fromWeek === toWeek
        ? documentLines(scene, toWeek, [event], () => sign)
        : weekLines(scene, key, (week) => ({
            amount: sign * (ledger.events[event][week] ?? 0),
            explains: { ...key, fromWeek: week, toWeek: week },
          })),
  });
}

interface Made {
  label: string;
  meaning: string;
  amount: number;
  lines: ExplanationLine[];
}

function draft(scene: Scene, { fromWeek, toWeek }: Weeks, made: Made): Draft {
  const { week } = scene.say;
  const total = amountOf(scene, made.amount);
  const when = fromWeek === toWeek ? week(toWeek) : `${week(fromWeek)} to ${week(toWeek)}`;
  return {
    title: `${made.label}, ${when}`,
    value: scene.say.money(made.amount),
    exact: total.toFixed(),
    meaning: made.meaning,
    formula: made.lines.length === 0 ? 'nothing moves' : sumFormula(scene, made.lines, total),
    lines: made.lines,
    caution: null,
  };
}

function linesOf(scene: Scene, ledger: Ledger, key: StatementKey): ExplanationLine[] {
  const source = LINES[key.line];
  switch (source.by) {
    case 'sum':
      return source.lines.flatMap((line) => lineLines(scene, ledger, line, key));
    case 'flows':
      return source.flows.flatMap((flow) => {
        const amount = sumSeries(ledger.pass.flows[flow], key.fromWeek, key.toWeek);
        if (amount === 0) return [];
        const { label, owner } = FLOW_WORDS[flow];
        const { fromWeek, toWeek } = key;
        const explains = { of: 'flow', run: 'plan', flow, fromWeek, toWeek } as const;
        return [moneyPart(scene, amount, { label, owner, explains })];
      });
    case 'profit': {
      const events = EVENT_NAMES.filter((event) => entryOf(event).profit === source.profit);
      return eventLines(scene, ledger, { weeks: key, events, on: 'retained', sign: source.sign });
    }
    case 'change': {
      const { balance } = source;
      const events = EVENT_NAMES.filter((event) => effectOf(event, balance) !== 0);
      return eventLines(scene, ledger, { weeks: key, events, on: balance, sign: cashSignOf(balance) });
    }
    case 'balance':
      return balanceLines(scene, ledger, key);
    case 'accrued':
      return source.part === 'vat' ? vatLines(scene, ledger, key) : restLines(scene, ledger, key);
  }
}

/** A line of a total; nothing where it is nothing. */
function lineLines(scene: Scene, ledger: Ledger, line: LineName, weeks: Weeks): ExplanationLine[] {
  const amount = amountOfLine(ledger, line, weeks);
  if (amount === 0) return [];
  const { label, owner } = LINE_WORDS[line];
  return [moneyPart(scene, amount, { label, owner, explains: keyOfLine(ledger, line, weeks) })];
}

interface OfEvents {
  weeks: Weeks;
  events: readonly EventName[];
  on: BalanceName;
  /** What the balance's own sign is turned by. */
  sign: 1 | -1;
}

/** In one week the documents; over weeks the kinds of them, or the weeks where there is one kind. */
function eventLines(scene: Scene, ledger: Ledger, of: OfEvents): ExplanationLine[] {
  const { fromWeek, toWeek } = of.weeks;
  const signOf = (event: EventName) => (of.sign * effectOf(event, of.on)) as 1 | -1;
  if (fromWeek === toWeek) return documentLines(scene, toWeek, of.events, signOf);
  return of.events.flatMap((event) => {
    const amount = signOf(event) * sumOfWeeks(ledger.events[event], fromWeek, toWeek);
    if (amount === 0) return [];
    const [label] = EVENT_WORDS[event];
    const explains = { of: 'event', event, on: of.on, fromWeek, toWeek } as const;
    return [moneyPart(scene, amount, { label, explains })];
  });
}

function documentLines(
  scene: Scene,
  week: number,
  events: readonly EventName[],
  signOf: (event: EventName) => 1 | -1,
): ExplanationLine[] {
  const journal = journalOf(scene, 'plan');
  const at = { scene, compiled: scene.results.compiled, week, journal };
  return entriesOf(journal, week, (event) => events.includes(event)).flatMap((entry) =>
    entryLines(at, entry, signOf(entry.event)),
  );
}

function weekLines(
  scene: Scene,
  { fromWeek, toWeek }: Weeks,
  at: (week: number) => { amount: number; explains: FigureKey },
): ExplanationLine[] {
  const lines: ExplanationLine[] = [];
  for (let week = fromWeek; week <= toWeek; week++) {
    const { amount, explains } = at(week);
    if (amount !== 0) lines.push(moneyPart(scene, amount, { label: scene.say.week(week), explains }));
  }
  return lines;
}

/** A balance leads to its own figure; before week 0 to what was typed. */
function balanceLines(scene: Scene, ledger: Ledger, key: StatementKey): ExplanationLine[] {
  const explains = keyOfLine(ledger, key.line, key);
  if (explains.of === 'statement') return [openingCash(scene, 'plan')];
  const amount = amountOfLine(ledger, key.line, key);
  const { label, owner } = LINE_WORDS[key.line];
  return amount === 0 ? [] : [moneyPart(scene, amount, { label, owner, explains })];
}

/** Tax owed is all that was charged and paid of it since the plan began. */
function vatLines(scene: Scene, ledger: Ledger, { toWeek }: Weeks): ExplanationLine[] {
  const weeks = { fromWeek: 0, toWeek };
  return eventLines(scene, ledger, { weeks, events: VAT_EVENT_NAMES, on: 'accrued', sign: 1 });
}

function restLines(scene: Scene, ledger: Ledger, { toWeek }: Weeks): ExplanationLine[] {
  const accrued = ledger.pass.balances.accrued[toWeek] ?? 0;
  const tax = amountOfLine(ledger, 'vatOwed', { fromWeek: 0, toWeek });
  const { label, owner } = BALANCE_WORDS.accrued;
  const explains = { of: 'week', run: 'plan', week: toWeek, figure: 'accrued' } as const;
  const all = moneyPart(scene, accrued, { label, owner, explains });
  if (tax === 0) return accrued === 0 ? [] : [all];
  const less = moneyPart(scene, -tax, {
    label: LINE_WORDS.vatOwed.label,
    reason: 'Shown apart',
    owner: 'tax',
    explains: { of: 'statement', line: 'vatOwed', fromWeek: 0, toWeek },
  });
  return [all, less];
}
