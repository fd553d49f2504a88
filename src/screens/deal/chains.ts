// Adding, copying and removing a chain. A new one takes nothing and opens no doors until that is typed; what can't be
// nothing stands in as a guess, tagged so. Worked example: a copy of "Fernmarket" is "Fernmarket, copy", with all its terms.
import { addAccount, removeAccount } from '../../app/commands/accounts.ts';
import type { Session } from '../../app/session.ts';
import type { Account, BasisNote, Plan } from '../../domain/plan/index.ts';
import { askingNothing, DEFAULTS } from '../../domain/quick/index.ts';

/** Adds a chain that lists the plan's first product, and goes to its deal; its id, or null when it was refused. */
export function addBlankChain(session: Session): string | null {
  const plan = session.plan.value;
  if (plan === null) return null;
  const id = session.newId();
  const account = blankChain(plan, id, session.newId());
  return put(session, plan, account, notesFor(account));
}

/** Adds a copy with every term of it, defaults and all. */
export function duplicateChain(session: Session, accountId: string): string | null {
  const plan = session.plan.value;
  const account = plan?.accounts.find((each) => each.id === accountId);
  if (!plan || !account) return null;
  const id = session.newId();
  const name = `${account.name.slice(0, 112)}, copy`;
  const from = `accounts/${accountId}/`;
  const notes = plan.basis
    .filter(({ path }) => path.startsWith(from))
    .map((note) => ({ ...note, path: `accounts/${id}/${note.path.slice(from.length)}` }));
  return put(session, plan, { ...account, id, name }, notes);
}

/** True when it was removed; undo brings it back. */
export function removeChain(session: Session, accountId: string): boolean {
  return session.run(removeAccount, { accountId }, 'accounts');
}

function put(session: Session, plan: Plan, account: Account, notes: readonly BasisNote[]): string | null {
  session.endStep();
  const accepted = session.run(addAccount, { account, notes }, 'accounts');
  session.endStep();
  if (!accepted) return null;
  session.go({ view: 'deal', planId: plan.id, accountId: account.id, sheet: null });
  scrollTo(0, 0);
  return account.id;
}

function blankChain(plan: Plan, id: string, shopId: string): Account {
  const [item] = plan.items;
  if (!item) throw new Error('a plan has at least one item');
  return askingNothing({
    id,
    name: 'New chain',
    hands: [{ id: shopId, name: 'New chain', rule: { by: 'margin', rate: '0.4' }, requiredMarginRate: null }],
    listings: [blankListing(item.id, item.caseUnits)],
  });
}

/** A listing that gives nothing away: our margin on landed cost is a stand-in, and one case stands on the shelf. */
export function blankListing(itemId: string, caseUnits: number): Account['listings'][number] {
  return {
    itemId,
    list: { by: 'margin', rate: '0.5' },
    shelf: { by: 'solved' },
    lockedRungs: [],
    unitsPerStoreWeek: '1',
    facings: 1,
    depthUnits: Math.min(caseUnits, 1000),
    backStockUnits: 0,
    coverWeeks: DEFAULTS.shelfCoverWeeks,
    freeCasesPerDoor: 0,
    replaces: null,
  };
}

/** Where the stand-ins come from; guesses have plausible ends, so that the verdicts can say which one they lean on. */
function notesFor({ id, hands, listings }: Account): BasisNote[] {
  const at = `accounts/${id}`;
  const guess = (path: string, source: string, low: string, high: string): BasisNote => ({
    path: `${at}/${path}`,
    kind: 'guess',
    source,
    low,
    high,
  });
  const listing = `listings/${listings[0]?.itemId ?? ''}`;
  return [
    guess(
      `hands/${hands[0]?.id ?? ''}/rule/rate`,
      'Stands in until the chain says its margin',
      '0.25',
      '0.5',
    ),
    guess(`${listing}/list/rate`, 'Stands in until a price is typed', '0.3', '0.7'),
    guess(`${listing}/unitsPerStoreWeek`, 'Stands in until a rate of sale is typed', '0.5', '6'),
    guess('ramp/startRate', 'The rate of sale starts at half', '0.25', '1'),
    guess('ramp/weeks', 'It is full in week 8', '0', '26'),
    guess('terms/paymentDays', 'Paid in 30 days', '14', '60'),
    guess('terms/latenessDays', 'Paid 10 days late', '0', '30'),
    guess('terms/transitWeeks', 'A week on the way to the store', '0', '3'),
    {
      path: `${at}/deal/termWeeks`,
      kind: 'practice',
      source: 'A year. Common practice, no source',
      low: null,
      high: null,
    },
  ];
}
