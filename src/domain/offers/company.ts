// Who owns the company, event by event: the offer's money for shares, later rounds, what turns into shares at them. Shares are
// counted so that all there are today make 1. Conventions, as the trade mostly has them (no one source):
// a part bought is of the company after all its money and after the pool made with it; tranches buy at one price. A round's
// price is its pre-money over all shares before its money, those that convert and its new pool counted in. A post-money cap
// gives money / cap of the shares before the round's money and pool; a pre-money cap prices on the shares before anything
// converts. A later round, and what converted, has its money first, once, non-participating.
// Worked figure: 400,000 before a round of 100,000 is 20 % for the round.
import type { Plan } from '../plan/index.ts';
import type { Stake } from './contract.ts';
import {
  addRow,
  addShares,
  type Company,
  type CompanyArgs,
  type Round,
  totalOf,
  type Unconverted,
  type World,
} from './owners.ts';
import { type Converting, roundPrice } from './round.ts';

const DAYS = 7;

export function companyOf(args: CompanyArgs): Company {
  const { founderRate, poolRate } = args;
  const world: World = {
    args,
    owners: [],
    classes: [],
    rows: [],
    flows: [],
    roundMoney: [],
    failedRounds: [],
    waiting: args.stakes.flatMap(({ part, name, stake }) =>
      stake.by === 'converts' ? [{ id: part.id, name, stake }] : [],
    ),
    sharesFor: new Map(),
    proRata: new Set(),
  };
  const others = Math.max(0, 1 - founderRate - poolRate);
  addShares(world, { ...PLAIN, id: 'founder', kind: 'founder', shares: founderRate });
  addShares(world, { ...PLAIN, id: 'others', kind: 'others', shares: others });
  addShares(world, { ...POOL, shares: poolRate });
  addRow(world, { week: 0, what: 'today', id: '', name: '', preMoney: null, postMoney: null });
  for (const event of eventsOf(args)) event.run(world);
  convertAtSale(world);
  const { owners, classes, rows, flows, roundMoney, failedRounds } = world;
  return { owners, classes, rows, flows, roundMoney, failedRounds };
}

const PLAIN = { name: '', of: 'plain' } as const;
const POOL = { ...PLAIN, id: 'pool', kind: 'pool' } as const;

/** Rounds dated past the plan's last week: no event of it, they count nowhere. */
export function roundsPastEnd({ ownership, horizonWeeks }: Pick<Plan, 'ownership' | 'horizonWeeks'>) {
  return ownership.rounds.filter(({ week }) => week >= horizonWeeks);
}

interface Event {
  week: number;
  run: (world: World) => void;
}

/** In order of weeks; in one week the offer's money first, then what is due back, then rounds. */
function eventsOf({ basis, stakes, rounds }: CompanyArgs): Event[] {
  const buys = stakes.flatMap(({ part, name, stake }) =>
    stake.by === 'shares'
      ? stake.buys.map(({ week, amount }) => ({
          week,
          run: (world: World) => buyShares(world, { id: part.id, name, stake, week, amount }),
        }))
      : [],
  );
  const due = stakes.flatMap(({ part, stake }) =>
    stake.by === 'converts' && stake.repaidWeek !== null
      ? [{ week: stake.repaidWeek, run: (world: World) => payBack(world, part.id) }]
      : [],
  );
  const later = rounds.map((round) => ({ week: round.week, run: (world: World) => runRound(world, round) }));
  return [...buys, ...due, ...later].filter(({ week }) => week < basis.weeks).sort((a, b) => a.week - b.week);
}

interface Buy {
  id: string;
  name: string;
  stake: Extract<Stake, { by: 'shares' }>;
  week: number;
  amount: number;
}

function buyShares(world: World, { id, name, stake, week, amount }: Buy): void {
  const before = totalOf(world);
  let all = world.sharesFor.get(id);
  if (all === undefined) {
    // A plan keeps part and pool below the whole; a counter may try more.
    const rest = Math.max(1 - stake.partRate - stake.poolRate, 1e-6);
    all = (before * stake.partRate) / rest;
    world.sharesFor.set(id, all);
    addShares(world, { ...POOL, shares: (before * stake.poolRate) / rest });
    if (stake.proRata) world.proRata.add(id);
  }
  const money = stake.preference === 'none' ? 0 : amount * stake.preferenceMultiple;
  addShares(world, {
    id,
    kind: 'part',
    name,
    of: 'the offer',
    shares: (all * amount) / stake.asked,
    preference: money,
    participates: stake.preference === 'participating',
  });
  const postMoney = stake.partRate > 0 ? stake.asked / stake.partRate : null;
  const preMoney = postMoney === null ? null : postMoney - stake.asked;
  addRow(world, { week, what: 'offer', id, name, preMoney, postMoney });
}

/** A note that no round came for is paid back with its interest; money of it that comes later waits for a round or the sale. */
function payBack(world: World, id: string): void {
  const note = world.waiting.find((each) => each.id === id);
  if (!note) return;
  const { stake } = note;
  const week = stake.repaidWeek ?? 0;
  const money = stake.buys.reduce((sum, buy) => sum + (buy.week <= week ? buy.amount : 0), 0);
  const interest = Math.round(grownBy(stake, week)) - money;
  world.waiting = world.waiting.flatMap((each) => (each === note ? stillToCome(each, week) : [each]));
  if (money > 0) world.flows.push({ week, amount: -money, what: 'principal', early: false, partId: id });
  if (interest > 0) world.flows.push({ week, amount: -interest, what: 'interest', early: false, partId: id });
}

function runRound(world: World, round: Round): void {
  const { week, amount, preMoney, poolRate } = round;
  const ready = world.waiting.filter(({ stake }) => (stake.buys[0]?.week ?? week + 1) <= week);
  const converting = ready.map(({ stake }) => convertingOf(stake, week));
  const before = totalOf(world);
  const priced = roundPrice({ shares: before, preMoney, amount, poolRate, converting });
  if (priced === null) {
    world.failedRounds.push(round.id);
    return;
  }
  const parts = world.owners.filter(({ kind }) => kind === 'part');
  const held = new Map(parts.map(({ id, shares }) => [id, shares / before]));
  ready.forEach(({ id, name }, at) => {
    const money = converting[at]?.amount ?? 0;
    const shares = priced.converts[at] ?? 0;
    addShares(world, { id, kind: 'part', name, of: round.id, shares, preference: money });
  });
  world.waiting = world.waiting.flatMap((each) => (ready.includes(each) ? stillToCome(each, week) : [each]));
  addShares(world, { ...POOL, shares: priced.pool });
  let left = amount;
  for (const id of world.proRata) {
    const pays = Math.min(left, Math.round(amount * (held.get(id) ?? 0)));
    left -= pays;
    if (pays === 0) continue;
    const bought = { shares: pays / priced.price, preference: pays };
    addShares(world, { id, kind: 'part', name: '', of: round.id, ...bought });
    world.flows.push({ week, amount: pays, what: 'moneyIn', early: true, partId: id });
  }
  addShares(world, {
    id: round.id,
    kind: 'round',
    name: round.label,
    of: round.id,
    shares: left / priced.price,
    preference: left,
  });
  world.roundMoney.push({ week, amount: left });
  addRow(world, {
    week,
    what: 'round',
    id: round.id,
    name: round.label,
    preMoney,
    postMoney: preMoney + amount,
  });
}

/** Money of it that comes after a week: that has turned into nothing yet. */
function stillToCome({ id, name, stake }: Unconverted, week: number): Unconverted[] {
  const buys = stake.buys.filter((buy) => buy.week > week);
  return buys.length === 0 ? [] : [{ id, name, stake: { ...stake, buys } }];
}

function convertingOf(stake: Unconverted['stake'], week: number): Converting {
  const { cap, capBase, discountRate } = stake;
  return { amount: grownBy(stake, week), cap, capBase, discountRate };
}

/** What waits still at the sale: its money back, or its shares at the cap, whichever is more. */
function convertAtSale(world: World): void {
  const before = totalOf(world);
  const weeks = world.args.basis.weeks;
  const grown = world.waiting.map(({ stake }) => grownBy(stake, weeks));
  const parts = world.waiting.map(({ stake }, at) =>
    stake.cap !== null && stake.capBase === 'postMoney' ? Math.min(0.99, (grown[at] ?? 0) / stake.cap) : 0,
  );
  const ofPostMoney = Math.min(
    0.99,
    parts.reduce((sum, part) => sum + part, 0),
  );
  const onPre = world.waiting.map(({ stake }, at) =>
    stake.cap !== null && stake.capBase === 'preMoney' ? ((grown[at] ?? 0) * before) / stake.cap : 0,
  );
  const all = (before + onPre.reduce((sum, shares) => sum + shares, 0)) / (1 - ofPostMoney);
  world.waiting.forEach(({ id, name, stake }, at) => {
    if (stake.buys.length === 0) return;
    const shares = (onPre[at] ?? 0) + (parts[at] ?? 0) * all;
    addShares(world, { id, kind: 'part', name, of: 'the sale', shares, preference: grown[at] ?? 0 });
  });
  addRow(world, { week: weeks, what: 'sale', id: '', name: '', preMoney: null, postMoney: null });
}

/** Money with its simple interest up to a week. */
function grownBy({ buys, yearlyRate }: Unconverted['stake'], week: number): number {
  return buys
    .filter((buy) => buy.week <= week)
    .reduce((sum, buy) => sum + buy.amount * (1 + (yearlyRate * DAYS * (week - buy.week)) / 365), 0);
}
