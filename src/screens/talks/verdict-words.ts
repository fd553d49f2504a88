// The verdict across the table in words: how far from the target, and what weighs most. Nothing here names a cost of
// ours, our margin, or the line we would not cross. Worked example: "−4,210", "a year to target", and
// "Margin 42 % costs 6,120 a year; slotting 97 brings 3,000."
import type { Objective } from '../../domain/talks/types.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import type { TalksModel } from './model.ts';
import { moneyOf } from './moves.ts';
import { termWords, upper } from './term-words.ts';

/** The gap to the target as a figure and its unit. */
export function gapWords({ standing, table }: TalksModel, say: ScreenSay): { figure: string; unit: string } {
  const { gap, value } = standing;
  if (table.objective.by !== 'payback') {
    const unit = table.objective.by === 'firstYear' ? 'a year to target' : 'today, to target';
    return { figure: moneySigned(gap, say), unit };
  }
  if (value === null) return { figure: 'not back', unit: 'within the term' };
  const weeks = Math.abs(gap);
  const text = say.number(Math.round(weeks * 10) / 10);
  if (gap === 0) return { figure: text, unit: 'weeks to target' };
  return { figure: `${gap > 0 ? '+' : '−'}${text}`, unit: gap > 0 ? 'weeks to spare' : 'weeks late' };
}

/** What costs most of what is on the table, and what brings most. */
export function reasonWords(model: TalksModel, say: ScreenSay): string {
  const names = Object.keys(model.draft);
  if (names.length === 0) return 'As the plan has it: nothing asked yet.';
  const weights = weigh(model);
  const costs = weights.reduce((least, each) => (each.worth < least.worth ? each : least), NOTHING);
  const brings = weights.reduce((most, each) => (each.worth > most.worth ? each : most), NOTHING);
  const a = objectiveUnit(model.table.objective);
  const cost =
    costs.name === '' ? '' : `${said(model, costs.name, say)} costs ${money(-costs.worth, say)} ${a}`;
  const gain =
    brings.name === '' ? '' : `${said(model, brings.name, say)} brings ${money(brings.worth, say)}`;
  if (cost === '' && gain === '') return 'What is on the table moves nothing here.';
  if (cost === '') return `${upper(gain)} ${a}.`;
  return `${upper(cost)}${gain === '' ? '' : `; ${gain}`}.`;
}

/** "a year", or "today" for a present value. */
export function objectiveUnit({ by }: Objective): string {
  return by === 'presentValue' ? 'today' : 'a year';
}

export function moneySigned(amount: number, say: ScreenSay): string {
  const text = money(Math.abs(amount), say);
  return isNothing(amount) ? text : `${amount < 0 ? '−' : '+'}${text}`;
}

/** From 100 on without decimals: across a table they are noise. */
export function money(amount: number, say: ScreenSay): string {
  const sign = amount < 0 && !isNothing(amount) ? '−' : '';
  const size = Math.abs(amount);
  return `${sign}${size >= 100 || isNothing(size) ? say.count(Math.round(size)) : say.sum(size.toFixed(2))}`;
}

function isNothing(amount: number): boolean {
  return Math.abs(amount) < 0.005;
}

interface Weight {
  name: string;
  worth: number;
}

const NOTHING: Weight = { name: '', worth: 0 };

/** What each drafted term does, taken by itself out of the draft. */
function weigh({ plan, account, table, draft, figures }: TalksModel): Weight[] {
  const { objective } = table;
  const now = objective.by === 'presentValue' ? figures.presentValue : figures.firstYear;
  return Object.keys(draft).flatMap((name) => {
    const { [name]: _, ...rest } = draft;
    const without = moneyOf({ plan, accountId: account.id, objective, terms: rest });
    return without === null ? [] : [{ name, worth: now - without }];
  });
}

function said(model: TalksModel, name: string, say: ScreenSay): string {
  const term = model.terms.find((each) => each.name === name);
  return term === undefined ? name : termWords(term, model.draft[name] ?? term.value, say);
}
