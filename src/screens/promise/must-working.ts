// How each row of what would have to be true was worked out, in words: the formula with this plan's numbers, and the lines
// that went into it. The figures come with the answer of the worker, which ran the plan for them.
// Worked example: "(170 doors − 0 open already) ÷ 8 weeks from week 10 on = 21.3" over the claim and every account's doors.
import { line, typed } from '../../domain/explain/write.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { evidenceOf } from '../../domain/promise/evidence.ts';
import type { HaveToBe } from '../../domain/promise/have-to-be-true.ts';
import type { MustFrom } from '../../domain/promise/must-from.ts';
import { placeClaim } from '../../domain/promise/place-claim.ts';
import type { Results } from '../../domain/results.ts';
import { claimedWords } from '../../domain/verdicts/promise.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import type { Worked } from '../shared/working.tsx';
import { counted } from './evidence-words.ts';
import { figureOf, labelOf, neededOf } from './must-words.ts';
import { rateText } from './words.ts';

type Lines = Worked['lines'];

interface Args {
  plan: Plan;
  results: Results;
  say: ScreenSay;
}

/** Null where nothing was worked out. */
export function mustWorked(args: Args, row: HaveToBe): Worked | null {
  if (row.from === null) return null;
  const { formula, lines } = partsOf(args, row, row.from);
  return {
    title: labelOf(row),
    value: neededOf(row, args.say),
    meaning: MEANINGS[row.from.by],
    formula,
    lines,
    caution:
      row.needed === null
        ? 'Up to 40 times what the evidence shows was tried, and nothing came to the claim.'
        : null,
  };
}

const MEANINGS: Record<MustFrom['by'], string> = {
  rate: 'What every store would have to sell in a week for the claim, with the doors that may be expected.',
  breakEven:
    'What a store has to sell in a week so that what is put down for the claim’s doors comes back within the deal’s term; a mean of all accounts, weighed by doors.',
  pace: 'How many doors would have to open every week, from the plan’s first opening up to the claim’s date.',
  lid: 'How many units a week would have to be had, so that the claim’s doors find on the shelf what they sell by the claim’s date.',
  hole: 'What has to be there on the first day, or to come in by the claim’s date, so that the claim’s doors never draw cash below zero up to then.',
};

function partsOf(args: Args, row: HaveToBe, from: MustFrom): { formula: string; lines: Lines } {
  const { plan, say } = args;
  const figure = (value: number) => figureOf(row.what, value, say);
  const shown = row.shown === null ? '' : figure(row.shown);
  switch (from.by) {
    case 'rate':
      return {
        formula:
          from.times === null
            ? ''
            : `${shown} as the evidence has it × ${say.number(Math.round(from.times * 100) / 100)} = ${neededOf(row, say)}: the whole plan was run at higher rates until it came to the claim`,
        lines: [...claimLines(args), ...rateLines(args), ...doorLines(args)],
      };
    case 'breakEven':
      return {
        formula: 'each account’s own × its doors, added up, ÷ all doors',
        lines: from.accounts.map(({ accountId, itemId, doors, rate }) =>
          line({
            label: nameOf(plan, accountId, itemId),
            value: rate === null ? 'none' : rateText(rate, say),
            reason: `with ${counted(doors, 'door', 'doors', say)}; the plan’s own doors have their own figure`,
            explains: { of: 'dealItem', accountId, itemId, figure: 'breakEvenUnitsPerStoreWeek' },
          }),
        ),
      };
    case 'pace': {
      const weeks = `${say.count(from.weeks)} ${from.weeks === 1 ? 'week' : 'weeks'}`;
      const open = say.count(Math.round(from.running));
      const pace = (doors: number, is: string) =>
        `(${say.number(tenths(doors))} − ${open}) ÷ ${weeks} = ${is}`;
      const needed = from.doors === null ? '' : `${pace(from.doors, neededOf(row, say))}; `;
      return {
        formula: `(doors then − open already) ÷ weeks from ${say.week(from.firstWeek)} on: ${needed}expected ${pace(from.expected, shown)}`,
        lines: [...claimLines(args), ...doorLines(args)],
      };
    }
    case 'lid':
      return ofLid(args, row, from);
    case 'hole':
      return ofHole(args, row, from);
  }
}

type From<By extends MustFrom['by']> = Extract<MustFrom, { by: By }>;

function ofLid(
  { plan, results, say }: Args,
  row: HaveToBe,
  from: From<'lid'>,
): { formula: string; lines: Lines } {
  const shown = figureOf(row.what, row.shown ?? 0, say);
  const lidded = plan.items.flatMap(({ id, name, supply: { capacityUnitsPerWeek: lid } }) =>
    lid === null ? [] : [{ id, name, lid }],
  );
  return {
    formula:
      from.times === null
        ? ''
        : `${shown} in ${say.week(from.week)} × ${say.percent(from.times)} = ${neededOf(row, say)}: as low as all lids may be while 99.5 % is sold of what would be without any`,
    lines: lidded.map(({ id, name, lid }) =>
      typed({ plan, results, say }, `items/${id}/supply/capacityUnitsPerWeek`, {
        label: `Most a week, ${name}`,
        value: say.count(lid),
      }),
    ),
  };
}

function ofHole(
  { plan, results, say }: Args,
  row: HaveToBe,
  { opening, lowest, lowestWeek, week }: From<'hole'>,
): { formula: string; lines: Lines } {
  const there = row.shown === null ? [] : [row.shown];
  return {
    formula: `${say.money(opening)} − (${say.money(lowest)}) = ${neededOf(row, say)}: cash to open with less the lowest of a run with the claim’s doors and no new funding`,
    lines: [
      typed({ plan, results, say }, 'business/openingCashAmount', {
        label: 'Cash to open with',
        value: say.money(opening),
      }),
      line({
        label: 'Lowest cash of that run',
        value: say.money(lowest),
        reason: `In ${say.week(lowestWeek)}, when most is missing of the weeks up to ${say.week(week)}`,
      }),
      ...there.map((amount) =>
        line({
          label: 'There by then',
          value: say.money(amount),
          reason: 'Cash to open with, and new funding up to then',
        }),
      ),
    ],
  };
}

function claimLines({ plan, results, say }: Args): Lines {
  const { claim } = plan.promise;
  if (claim === null) return [];
  const value = claimedWords(plan, claim, say);
  return [typed({ plan, results, say }, 'promise/claim/amount', { label: 'Claimed', value })];
}

function rateLines({ plan, say }: Args): Lines {
  if (plan.promise.spreads.rateOfSaleRate !== null) return [];
  return evidenceOf(plan).map(({ itemId, rate }) =>
    line({
      label: `Rate of sale by scans, ${plan.items.find(({ id }) => id === itemId)?.name ?? ''}`,
      value: rateText(rate.mean, say),
      explains: { of: 'evidence', itemId },
    }),
  );
}

function doorLines({ plan, results, say }: Args): Lines {
  const { placed } = placeClaim(plan, results.pass);
  const names = new Map(plan.accounts.map(({ id, name }) => [id, name]));
  return (placed?.doors.accounts ?? []).map(({ accountId, expected }) =>
    line({
      label: `Doors expected, ${names.get(accountId) ?? ''}`,
      value: say.number(tenths(expected)),
      explains: { of: 'claimDoors', accountId },
    }),
  );
}

function nameOf({ accounts, items }: Plan, accountId: string, itemId: string): string {
  const account = accounts.find(({ id }) => id === accountId)?.name ?? '';
  return items.length < 2 ? account : `${account}, ${items.find(({ id }) => id === itemId)?.name ?? ''}`;
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}
