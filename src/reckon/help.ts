// What `reckon --help` prints: usage, exit codes, and every key of the answer. tests/worked/reckon.test.ts compares it
// with what is printed, so a new key must be named here.
import { BALANCE_NAMES, FLOW_NAMES, PROFIT_NAMES, UNIT_NAMES } from '../domain/rollout/types.ts';
import { STATEMENT_LINES } from '../domain/statements/index.ts';
import { TERM_NOTES } from '../domain/talks/index.ts';
import { MONEY_HELP } from './money-help.ts';
import { printedLine } from './statements.ts';

const UNITS = {
  share: 'share',
  price: 'amount',
  sum: 'amount',
  days: 'days',
  weeks: 'weeks',
  cases: 'cases',
  doors: 'doors',
} as const;

export const HELP = `reckon FILE [--weeks] [--journal] [--calendar] [--today DATE]
            [--deal ID [--ask TERM=VALUE]... [--target TARGET]] [--range DRAWS [--seed N]]
reads a plan file (- for standard input) and prints all its results as one JSON object.
Warnings go to standard error.

  --weeks    adds rollout.weeks, the weekly series, and rollout.statements
  --journal  adds rollout.journal, every posting of the weekly pass
  --calendar prints what has to be ready as a calendar file (iCalendar, RFC 5545), instead of results
  --today DATE  the day readiness is counted from, YYYY-MM-DD; else the plan's first day
  --deal ID  adds talks with one account: deal, counters, closest, withoutEffect, worth
  --ask TERM=VALUE  what it asks for, in the plan's units (a share also as 42%); once a term, as often as needed
  --target TARGET   firstYear, payback or presentValue=RATE a year; else what the account's talks are set to, or
                    firstYear
  --range DRAWS     adds range: the plan drawn so many times (100 to 20000) from its spreads and standings
  --seed N          0 to 4294967295, else 1: the same seed, the same range
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
                  sale; cash the lowest balance; promise the chance of the claim, or null
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
  items[]         itemId, unitsPerStoreWeek, riskPerUnit, deliveryPerUnit, contributionPerUnit,
                  contributionPerStoreWeek, firstYearUnits, breakEvenUnitsPerStoreWeek
                  riskPerUnit: bad debts, deductions not owed, returns and shrink the way of sale brings;
                  deliveryPerUnit: drops and pallets at the full rate of sale; both already off the contribution
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
    heldBack      by account id: units its credit limit held back
  statements      profit and loss, balance sheet, cash flow; lines carry the sign they add up with, costs are negative
    opening       the balance sheet before week 0
    weekly[], monthly[]   a week belongs to the month of its first day
      period      week, or month ("2026-03"); firstDate, fromWeek, toWeek
      profitAndLoss     ${wrapped(STATEMENT_LINES.profitAndLoss)}
                  result is before income tax; grossSales less tradeSpend is netSales, less costOfSales grossMargin
      balanceSheet      ${wrapped(STATEMENT_LINES.balanceSheet)}
                  accruedCosts and vatOwed are the balance accrued; vatOwed is below 0 when it is to come back
      cashFlowDirect    ${wrapped(STATEMENT_LINES.cashDirect.map(printedLine))}
      cashFlowIndirect  ${wrapped(STATEMENT_LINES.cashIndirect.map(printedLine))}
                  toChains: slotting, displays, fees, claims paid in cash; sellingPaid: freight out, picking, broker,
                  royalty; invested: equipment; fromLenders: loans and advances, less what goes back
                  both come to the same operating cash, to the last decimal; interest and loan fees are operating
  journal[]       week, event, amount, account, item
  binding[]       week, what: cash | capacity | stock | doors | demand, tight: cash under the buffer, not under zero;
                  items: whose capacity or stock; heldBack: units that wait for a credit limit.
                  src/domain/answers/ANSWERS.md says when each word is used
  lifts[]         changes tried, each with the whole model run again; what lifts the first limit best comes first
    change        in words; withoutItsCost: the change itself costs something that nobody has typed
    helps         cash | units | both | none
    cashNeedBefore, cashNeedAfter, unitsLostBefore, unitsLostAfter
    lowestCashBefore, lowestCashAfter   amount, week
    contributionBefore, contributionAfter   of the first 52 weeks: the result before overhead, depreciation, financing
  solves          as solves below, and
    latestOrders[]  itemId, plannedWeek, week: the latest an item's first order can go out with no fill later and no
                  unit more lost than planned; lateUnitsNext, lostUnitsNext a week later; confirmed, steady
    waveSpacing   plannedWeeks from the first opening to the last; weeks to spread them over, in the same proportions,
                  so that cash stays above the buffer (null: none up to triedTo does); lowestThere, bufferThere;
                  lowestNext, bufferNext one week less; confirmed, steady
    doorsAWeek    planned, doorsPerWeek: the fastest pace with cash above the buffer; the same figures one door on
    neverCloses   rates of sale times neverAt: cash is never back above its opening; times closesAt it is, in backWeek;
                  rateNever, rateCloses: the first listing's rates then; confirmed, steady
    fundsItself   week: nothing more has to be put in from then on; amount put in before; lowestThere with it,
                  lowestBelow with one minor unit less; confirmed
  lender          a lender's own terms decide; none of this is advice. Balances as of the week before cashFlow
    cashFlow      fromWeek, untilWeek: 13 weeks with the lowest cash in their middle; by week: opens, receipts,
                  payments, funding (each by flow), low, closes
    receivables, payables   week: at its end; lines[] of account | item | base | opening by days from invoice date:
                  to30, to60, to90, over90; unknown: from the opening books; sum; total over all lines
    collateral    receivables, tooOld (over 90 days, or unknown), claims open against them, eligibleReceivables, stock
                  in our own hands at landed cost; onReceivables, onStock at receivablesRate and stockRate; amount
    downside      a fifth less sold, paid 15 days later: cashNeed, lowestCash, unitsLost
    failure       accountId, week: who owes most at the end of that week fails; receivable: what it owes; and the same
    drops[]       accountId, week, reviewWeeks after its first opening it drops us; dealAmount: the deal up to there
                  with goods left on shelves; and the same
solves            figures are null where a solve outgrew exact sums (a warning says so)
  leastOpeningCash  amount, lowestThere, lowestBelow, confirmed
  mostDoors[]     accountId, planned, doors, lowestThere, lowestNext, atLeast, steady
promise           null without scans, standings, open doors or a claim
  rateOfSale      of the first item with scans, or null; otherRates[] the same of further ones
    itemId, mean, low80, high80, low95, high95   units a store and week, over all stores like those scanned;
                  (mean: as likely to be more as less); gamma-Poisson, weighed on a grid:
                  src/domain/promise/rate-of-sale.ts states the priors, CALIBRATION.md how well the ranges hold
    stores, storeWeeks, units   what counts; storeWeeks weighted by the season
    basis         plain | withDeals | withOpenings: which weeks had to be taken, for want of others
    leftOut       openings, deals, gaps: weeks
    prior         mean, spread; null: next to nothing was held before
    storesDiffer  standard deviation over mean; weeksScatter: variance over what counts have
    newStore      low80, high80, low95, high95 of one store more, in the long run
    newStores     the same for the mean of as many stores as are planned
    toHalve       stores, or weeks in the same stores, more to halve the 80 % range; null: no number does
    lifts[]       on: display | price | both; factor and ranges; stores, weeks
    trend         factor in four weeks and ranges, stores, weeks; null where too few weeks tell
    accounts[]    accountId, stores, mean and ranges of its stores alone
    warnings[]    sentences
  doors           open in the week of the claim's date (without one, the last); null where nobody said how far any
                  chain is agreed
    week, expected, planned   planned: with everything on time
    distribution[]  from, to, chance: exact; over 200 different counts are put together
    accounts[]    accountId, chance, expected, planned, openAlready
  claim           null without one; notPlaced: noClaim | noEvidence | beforeStart | pastEnd |
                  tooWide (rate of sale may be anything) | partMissing
    of, amount, byDate, who
    chance, percentile   of as much or more by the date; share of futures with less
    expected, low80, middle, high80, planned   in doors, units or the currency
    timesToday    over what runs today, per week for units and revenue
    binding       rateOfSale | doorsAWeek | capacity | cash: what evidence carries least of; null: all is enough
    wouldHaveToBeTrue[]   what, needed, shown (by the evidence), low80, high80, isEnough;
                  because: the rate reaches the claim (reaches) or pays the claim's doors back (paysBack)
    byAccount[]   accountId, chanceWithout, chanceWithIt: of a claim of doors, if it never comes, if it surely does
  leaning         accounts, routes (by the first hand after us), each
    parts[]       name, accountIds, revenueShare, unitsShare, doorsShare
    revenueIndex, unitsIndex, doorsIndex   Herfindahl-Hirschman, 0 to 10,000; band of revenue: low | moderate | high
    withoutLargest  name, week; plan, there: cashNeed, lowestCash, lowestWeek, endCash, unitsLost as planned, without it
readiness         what has to be ready before the shelf; dates YYYY-MM-DD, slack in working days
  today           see --today; state: none | ready | inTime | late; sentence
  next            the gate to work on first: id, name, owner, start; or null. late[]: ids
  gates[]         id, name, owner, state (notStarted | underWay | done), daysLeft: by the mean of its range; start,
                  finish as expected from today; latestStart, latestFinish for no opening to move; slack, late,
                  critical, criticalShare: how often on a longest chain; holds[]: ACCOUNT/WAVE
  critical[]      gates of the longest chain to the opening with least slack, first to last
  waves[]         accountId, waveId, name, openWeek, doors, shelfDate, shipDate, orderDate; earliest: the first week
                  that today's state allows, slipWeeks later; heldBy, critical[], nextReset; chance of its
                  shelfDate, and the dates kept in half and nineOfTen of the runs; slipCost of coming then, all else
                  as planned, or null: cashNeed, lowestCash, contribution (later less planned), contributionPerWeek
  slipCost        the same for all openings as late as they are
  resets[]        resetId, label, date, accountId, waveId, chance to be on the shelf by then
  holidaysUnknown[]  years whose holidays aren't known: counted as worked
  numberFindings[]   item and case numbers that don't fit: itemId, path, sentence
${MONEY_HELP}
defaults[]        what was not typed: path, kind, source, low, high

With --range; src/domain/promise/range/RANGE.md describes it
range             draws, seed; cash, doors, revenue: p10[], p50[], p90[] by week (a tenth of the draws is at most p10)
  lowestCash      p10, p50, p90 of the lowest cash within a week
  chanceCashOut   share of draws whose cash falls below 0, with the plan's funding
  need            p50, p80, p95 without new funding: 80 % of draws need no more than p80
  drivers[]       cause: shared | rateOfSale | doors | slip | ramp | lateness | goods | deductions | voids | opens
                  (then accountId), its rank correlation with the lowest cash, and 95 % limits: low, high
  monteCarloError chanceCashOut, lowestCash, need: low, high, between which more draws would put them (95 %)
  exactCheck      draws run by the weekly pass too: how far lowestCash, endCash and the worstWeek of cash were missed
                  (median, p90), beside swing, how far the lowest cash lies from the plan's in the middle of them

With --deal; values are decimal strings, terms go by name:
deal              accountId, objective (by, yearlyRate), target and walkAway in money, or in weeks for payback
  before, asked   the plan as it is, and with the asks
    terms         all of the account before; those asked for
    figures       firstYear, presentValue (at the target's yearlyRate, else 0.1), paybackWeeks, breakEvenRatio,
                  breakEvenRate (first item), moneyDownPerDoor, contributionPerUnit (first item),
                  droppedAtReview: what is made or lost when the chain drops us at the first review,
                  goods left on shelves counted
    standing      state (holds | tight | fails), value, gap: to the target, above 0 in our favour
counters[]        keep the target with the asks in; the least moved first, the mix last
  kind            alone | mix
  terms           those that move, and their new values
  target, reached, miss   miss: reached - target (payback: target - reached), above 0 in our favour
  holds           whether the target is kept
closest           where no counter keeps the target: the one that comes nearest, as in counters; or null
withoutEffect[]   terms that can't move the target
worth             at the deal with the asks in
  terms, steps    what one step of a term is
  effects         change of the target by one step against us: money, or weeks for payback
  cells[]         term, other, amount: so much of other makes up for one step of term; holdsFrom, holdsTo: values
                  of other between which that holds to a tenth (null: to its end)

Terms for --ask, by name:
${TERM_NOTES.map(({ name, unit, meaning }) => `${name.padEnd(17)} ${UNITS[unit]}: ${meaning}`).join('\n')}
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
