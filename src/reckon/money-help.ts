// What `reckon --help` says of `money`; part of help.ts.
// Worked figure: the line of turningPoints[] names its keys between, on, at, units, below and above.
export const MONEY_HELP = `money             rival offers, each on the plan without new funding; not securities, tax or legal advice
  offers[]        id, name, from, kind (its parts' kinds)
    moneyIn, never[]  what comes; partId, trancheId, amount of what waits for something the plan never reaches
    lowestCash    amount, week: with its flows laid over the plan's cash
    covers[]      name (plan, p50, p80, p95), need, left, covers: whether it covers the cash need, on the plan and of
                  draws: cash lasts in so many of 100; left: the lowest cash so many don't fall below
    carriesWeeks, runsOutWeek   weeks until cash is first below zero
    paidByYear[]  year, amount of its dated payments; paid: their sum; settles: running royalties
                  counted at the sale; payout: what its shares get of the sale; totalPaid: the three
    irr, irrReason  the funder's yearly return (365 days) on the dates, or why there is none; multiple
    perUnit       fees, interest, royalties, shares of the horizon for each unit sold
    founderShare, founderMoney, salePrice   at the end of the horizon
    owners[]      id, kind (founder | others | pool | part | round), rate, amount of the sale
    implied[]     partId, by (price | cap: the most it comes to), preMoney, postMoney, timesRunRate, timesPlanRevenue,
                  timesPlanProfit, wantedYearlyRate, salePriceNeeded: for that return
  turningPoints[] between (two ids), on (units | exit | growth), at, units (sold there; null on exit),
                  below, above: the better one on either side;
                  units sold, by what is paid on them; exit: price of the business, growth: times the rates of
                  sale, by the founder's money
  futures[]       name (p10, p50, p90: the draws at those places in order of net sales), draw, netSales, best,
                  bestLasts (its cash lasts), founderMoney[] (id, amount)
  wins[]          how often each is the best, over 200 draws of the range (seed 1) run exactly without new funding:
                  id, wins (draws it leaves the founder most and cash lasts), share, low95, high95,
                  lasts (draws in which cash lasts), founderMoney (p10, p50, p90 of all draws)
  draws           run, tooLarge (not computed), noneLasts (cash runs out under all: nobody's), ties (nobody's)`;
