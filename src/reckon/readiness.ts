// Readiness for machines: gates by date, openings with their earliest believable date and what the slip costs, chances as
// texts. Worked figure: { "shelfDate": "2026-04-06", "earliest": "2026-04-20", "slipWeeks": 2, "slipCost": { ... } }.
import { isoDateOf } from '../domain/calendar.ts';
import type { Plan } from '../domain/plan/index.ts';
import {
  calendarOf,
  chancesFor,
  numberFindings,
  readinessFor,
  readinessLine,
  type SlipCost,
  slipCostsOf,
} from '../domain/readiness/index.ts';
import type { Results } from '../domain/results.ts';
import { sayFor } from './say.ts';
import { moneyText } from './weeks.ts';

/** `today`: YYYY-MM-DD, or null for the plan's first day. */
export function readinessText(plan: Plan, results: Results, today: string | null): object {
  const { currency, minorDigits, compiled } = results;
  const readiness = readinessFor(plan, today ?? plan.startDate);
  const chances = chancesFor(plan, readiness.today);
  const costs = slipCostsOf(plan, results, readiness);
  const say = sayFor({ currency, minorDigits, startDay: compiled.startDay });
  const line = readinessLine({ plan, readiness, cost: costs.all, say });
  return {
    today: readiness.today,
    state: line.state,
    sentence: line.sentence,
    next: line.next,
    late: readiness.late,
    gates: readiness.gates.map((gate, at) => ({
      ...gate,
      criticalShare: chances.gates[at]?.criticalShare.toFixed(4) ?? null,
    })),
    critical: readiness.critical,
    waves: readiness.waves.map((wave, at) => ({
      ...wave,
      slipCost: costText(costs.waves[at]?.cost ?? null, minorDigits),
      chance: chances.waves[at]?.chance.toFixed(4) ?? null,
      half: chances.waves[at]?.half ?? null,
      nineOfTen: chances.waves[at]?.nineOfTen ?? null,
    })),
    slipCost: costText(costs.all, minorDigits),
    resets: chances.resets.map((reset) => ({ ...reset, chance: reset.chance.toFixed(4) })),
    holidaysUnknown: readiness.holidaysUnknown,
    numberFindings: numberFindings(plan),
  };
}

/** The calendar file of a day: made at its first minute, so that the same day gives the same file. */
export function calendarText(plan: Plan, today: string | null): string {
  const readiness = readinessFor(plan, today ?? plan.startDate);
  return calendarOf({ plan, readiness, stamp: `${readiness.today}T00:00:00Z`, owner: null });
}

/** Whether a text is a date that exists, from 2020 on (calendar files count from there). */
export function isDay(text: string): boolean {
  if (!/^20[2-9]\d-\d{2}-\d{2}$|^21\d{2}-\d{2}-\d{2}$/.test(text)) return false;
  const [year, month, day] = text.split('-').map(Number);
  const time = Date.UTC(year ?? 0, (month ?? 0) - 1, day);
  return isoDateOf(time / 86_400_000) === text;
}

function costText(cost: SlipCost | null, minorDigits: number) {
  if (cost === null) return null;
  const money = (amount: number) => moneyText(amount, minorDigits);
  return {
    cashNeed: money(cost.cashNeed),
    lowestCash: money(cost.lowestCash),
    contribution: money(cost.contribution),
    contributionPerWeek: cost.contributionPerWeek === null ? null : money(cost.contributionPerWeek),
  };
}
