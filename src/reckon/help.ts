// What `reckon --help` prints: usage, exit codes, and every key of the answer. tests/worked/reckon.test.ts compares it
// with what is printed, so a new key must be named here.
import { BALANCE_NAMES, FLOW_NAMES, PROFIT_NAMES, UNIT_NAMES } from '../domain/rollout/types.ts';

export const HELP = `reckon FILE [--weeks] [--journal]
reads a plan file (- for standard input) and prints all its results as one JSON object.
Warnings go to standard error.

  --weeks    adds rollout.weeks, the weekly series
  --journal  adds rollout.journal, every posting of the weekly pass
  --help     prints this

A plan file is JSON in UTF-8: {"format": "firstfill-plan", "plan": {...}}, as the app exports it. Amounts and rates
in it may be decimal texts or JSON numbers; src/plan-format/plan.schema.json describes every field.

Exit: 0 computed; 1 the plan can't be computed (sentences name the offending fields); 2 bad usage, or the file
can't be read or the answer written.
Money and rates are decimal strings in the plan's currency; units and weeks are numbers. Sums of rollout, solves and
cumulated have exactly the currency's decimals; prices and what is made of them up to 4, rates up to 6. Weeks count
from 0, week 0 starts on startDate. Rates are shares: 0.42 is 42 %. null means: there is no such figure.

plan              id, name, version, lesson
currency          ISO 4217 code; minorDigits: its decimal places
verdicts          ladder, deal, cash, promise, each with
  state           holds | tight | fails | unknown
  figure, reason  in words
  value           the figure as a decimal: ladder contribution / net price; deal planned / break-even rate of
                  sale; cash the lowest balance; promise null until evidence can be entered
  accountId, itemId  what it is about
  leansOn         the guess it leans on most: path, label, flips, end, stateThere; or null
ladders[]         one an account and item
  accountId, itemId
  landed          lines[] (id, label, family, amount, reason), lossRate, unit, goods, freightAndDuty
  list, invoice, net, contribution            per unit
  contributionRate, ladderMarginRate, tradeRate   contribution / net; (list - landed) / list; (list - net) / list
  hands[]         id, name, owner, buys, sells, keeps, marginRate, markupRate, requiredMarginRate, short, solved
  shelfBeforeTax, tax, shelf, shelfUnmoved    shelfUnmoved: before it moved to a price point
  steps[]         list to contribution: id, label, stage, isLevel, amount, owner, reason
  bands[]         add up to shelf: id, label, owner, amount, shareOfShelf
  solvedRung, miss   what gave way; how far a solved price is off its exact value
deals[]           one an account
  accountId, doors, contributionPerStoreWeek, fixedAmount, moneyDownPerDoor
  fixedLines[]    id, label, amount, reason, owner
  firstYearContribution, firstYearAfterFixed, fullyLoadedNetPerUnit, fillMargin
  cumulated[]     contribution less fixed money at each week-end from the first opening
  paybackWeeks, termWeeks, breakEvenRatio, nothingDown
  items[]         itemId, unitsPerStoreWeek, riskPerUnit, contributionPerUnit, contributionPerStoreWeek,
                  firstYearUnits, breakEvenUnitsPerStoreWeek
                  riskPerUnit: bad debts, returns and shrink the way of sale brings; already off the contribution
  items[].retailer  buying, pennyProfit, pennyProfitAllIn, frontMarginRate, allInMarginRate, perStoreWeek,
                  perFacingWeek, averageStockPerStore, turnsPerYear, gmroi, weeksOfSupply, againstReplacedPerStoreWeek
rollout           src/domain/rollout/PASS.md describes the pass in words
  startDate, horizonWeeks, openingCash
  cashNeed        amount, week: without new funding, opening cash counted in
  depthFromZero   the same from zero cash
  lowestCash      amount, week: with the funding the plan counts on
  endCash, buffer, floorNotSeen, backAboveOpeningWeek, firstOpeningWeek, firstPaymentWeek
  mostSpentOn     stock | opening | shipping | overhead | funding, up to the lowest week
  days            inventory, receivable, payable, cashCycle (last 91 days)
  units           demand, sold, lost, fillRate, firstLostWeek, mostStockWeeks
  weeks[]         week, date,
    flows         ${wrapped(FLOW_NAMES)}
    balances      ${wrapped(BALANCE_NAMES)}
                  cash + receivables + stock + deposits + equipment = payables + accrued + loans + paidIn + retained
    low           lowest cash within the week
    profit        ${wrapped(PROFIT_NAMES)}
    units         by item id: ${wrapped(UNIT_NAMES)}
    doors         by account id
  journal[]       week, event, amount, account, item
solves            figures are null where a solve outgrew exact sums (a warning says so)
  leastOpeningCash  amount, lowestThere, lowestBelow, confirmed
  mostDoors[]     accountId, planned, doors, lowestThere, lowestNext, atLeast, steady
defaults[]        what was not typed: path, kind, source, low, high
`;

function wrapped(names: readonly string[]): string {
  const lines: string[] = [];
  let line = '';
  for (const name of names) {
    if (line.length + name.length > 84) {
      lines.push(line.trimEnd());
      line = '';
    }
    line += `${name}, `;
  }
  lines.push(line.replace(/, $/, ''));
  return lines.join('\n                  ');
}
