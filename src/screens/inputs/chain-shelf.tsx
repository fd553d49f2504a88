// Inputs of one chain that are about its shelf: the hands between us and it, what it lists at which price, and the
// allowances it takes. Which rung of a ladder gives way is chosen in the ladder itself.
// Worked example: a hand with a margin of 42 % that pays 2.89 sells at 4.99.
import type { VNode } from 'preact';
import {
  addAllowance,
  addHand,
  addListing,
  removeAllowance,
  removeHand,
  removeListing,
} from '../../app/commands/accounts.ts';
import { movePlace } from '../../app/commands/field.ts';
import { hashOf } from '../../app/route.ts';
import type { FieldNote } from '../../domain/allowances/contract.ts';
import { ALLOWANCE_KINDS, kindOf } from '../../domain/allowances/index.ts';
import type { Account, Hand, Listing } from '../../domain/plan/index.ts';
import { Button, ButtonRow, LinkButton, SelectField } from '../../widgets/index.ts';
import { FieldFor, PartFor } from '../shared/field-for.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { EndingsField } from './endings-field.tsx';
import { Fields, Trouble } from './fields.tsx';
import { choice, count, type FieldSpec, money, onOff, share } from './specs.ts';

export function HandsSection({ base, account }: { base: string; account: Account }): VNode {
  const session = useSession();
  const add = () => {
    const hand: Hand = {
      id: session.newId(),
      name: 'Distributor',
      rule: { by: 'margin', rate: '0.2' },
      requiredMarginRate: null,
    };
    session.run(addHand, { accountId: account.id, hand, index: account.hands.length - 1 }, `${base}/hands`);
  };
  return (
    <>
      {account.hands.map((hand, index) => (
        <HandFields
          key={hand.id}
          base={base}
          account={account}
          hand={hand}
          isShelf={index === account.hands.length - 1}
        />
      ))}
      <Trouble path={`${base}/hands`} />
      <Button onPress={add}>Add a hand before the shelf</Button>
      <PartFor
        path={`${base}/pricePoints`}
        label="Shelf price lands on price points"
        blank={() => ({
          endings: ['0.99', '0.49'],
          listOfPrices: false,
          move: 'nearest',
          absorbedBy: 'lastHand',
        })}
      />
      {account.pricePoints !== null && (
        <>
          <EndingsField path={`${base}/pricePoints`} />
          <Fields base={`${base}/pricePoints`} specs={POINTS} />
        </>
      )}
    </>
  );
}

const POINTS: readonly FieldSpec[] = [
  choice('move', 'Moves', [
    { value: 'nearest', label: 'nearest' },
    { value: 'up', label: 'up' },
    { value: 'down', label: 'down' },
  ]),
  choice('absorbedBy', 'The difference is', [
    { value: 'lastHand', label: 'the shelf’s' },
    { value: 'us', label: 'ours' },
  ]),
];

const RULES: Record<'margin' | 'markup' | 'fixed', Hand['rule']> = {
  margin: { by: 'margin', rate: '0.2' },
  markup: { by: 'markup', rate: '0.25' },
  fixed: { by: 'fixed', amount: '0', per: 'unit' },
};

interface HandProps {
  base: string;
  account: Account;
  hand: Hand;
  isShelf: boolean;
}

function HandFields({ base, account, hand, isShelf }: HandProps): VNode {
  const session = useSession();
  const path = `${base}/hands/${hand.id}`;
  const { rule } = hand;
  return (
    <fieldset class="ff-place">
      <legend class="ff-label">{isShelf ? `The shelf: ${hand.name}` : hand.name}</legend>
      <FieldFor path={`${path}/name`} label="Name" kind="text" />
      {rule.by === 'solved' ? (
        <p class="ff-least ff-quiet">
          Takes what the others leave. Which rung gives way is chosen in the ladder.
        </p>
      ) : (
        <SelectField
          label="Takes"
          value={rule.by}
          choices={[
            { value: 'margin', label: 'a margin on its selling price' },
            { value: 'markup', label: 'a markup on what it pays' },
            { value: 'fixed', label: 'a fixed amount' },
          ]}
          onChoose={(by) => session.setField(`${path}/rule`, RULES[by as keyof typeof RULES])}
        />
      )}
      {rule.by === 'margin' && (
        <Fields base={path} specs={[share('rule/rate', 'Margin', { step: 'margin' })]} />
      )}
      {rule.by === 'markup' && (
        <Fields base={path} specs={[share('rule/rate', 'Markup', { step: 'margin' })]} />
      )}
      {rule.by === 'fixed' && (
        <Fields
          base={path}
          specs={[
            money('rule/amount', 'Amount', { step: 'sum' }),
            choice('rule/per', 'for', [
              { value: 'unit', label: 'a unit' },
              { value: 'case', label: 'a case' },
            ]),
          ]}
        />
      )}
      <Fields
        base={path}
        specs={[{ ...share('requiredMarginRate', 'Says it needs a margin of'), placeholder: 'said nothing' }]}
      />
      {!isShelf && rule.by !== 'solved' && (
        <Button
          kind="quiet"
          label={`Take out ${hand.name}`}
          onPress={() => session.run(removeHand, { accountId: account.id, handId: hand.id }, `${base}/hands`)}
        >
          Take out
        </Button>
      )}
    </fieldset>
  );
}

const LISTING: readonly FieldSpec[] = [
  { field: 'unitsPerStoreWeek', label: 'Sold per store per week', kind: 'rateOfSale', step: 'rate' },
  count('facings', 'Facings', '', { step: 'one', least: 1 }),
  count('depthUnits', 'Units behind a facing', '', { step: 'one', least: 1 }),
  count('backStockUnits', 'Units in the back', '', { step: 'one' }),
  count('coverWeeks', 'The store orders up to', 'weeks', {
    step: 'one',
    hint: 'Weeks of supply, where that is more than its fill.',
  }),
  count('freeCasesPerDoor', 'Free cases a store', '', { step: 'one' }),
];

export function ListingsSection({ base, account }: { base: string; account: Account }): VNode {
  const session = useSession();
  const plan = usePlan();
  const listed = new Set(account.listings.map(({ itemId }) => itemId));
  const others = plan.items.filter(({ id }) => !listed.has(id));
  const [first] = account.listings;
  const list = (itemId: string) => {
    if (first)
      session.run(
        addListing,
        { accountId: account.id, listing: { ...first, itemId, lockedRungs: [], replaces: null } },
        `${base}/listings`,
      );
  };
  return (
    <>
      {account.listings.map((listing) => (
        <ListingFields key={listing.itemId} base={base} account={account} listing={listing} />
      ))}
      <Trouble path={`${base}/listings`} />
      {others.map(({ id, name }) => (
        <Button key={id} onPress={() => list(id)}>
          List {name} too
        </Button>
      ))}
      <fieldset class="ff-place">
        <legend class="ff-label">How sales start</legend>
        <Fields
          base={base}
          specs={[
            share('ramp/startRate', 'First week, of the full rate', { step: 'depth' }),
            count('ramp/weeks', 'Full rate after', 'weeks', { step: 'one' }),
          ]}
        />
      </fieldset>
    </>
  );
}

function ListingFields({
  base,
  account,
  listing,
}: {
  base: string;
  account: Account;
  listing: Listing;
}): VNode {
  const session = useSession();
  const plan = usePlan();
  const path = `${base}/listings/${listing.itemId}`;
  const name = plan.items.find(({ id }) => id === listing.itemId)?.name ?? listing.itemId;
  const ladder = hashOf({
    view: 'ladder',
    planId: plan.id,
    accountId: account.id,
    itemId: listing.itemId,
    sheet: null,
  });
  return (
    <fieldset class="ff-place">
      <legend class="ff-label">{name}</legend>
      <Fields base={path} specs={[...priceFields(listing), ...LISTING]} />
      <PartFor
        path={`${path}/replaces`}
        label="It takes the place of another product"
        blank={() => ({ unitsPerStoreWeek: '1', shelfBeforeTaxAmount: '0', buyingAmount: '0' })}
      />
      {listing.replaces !== null && (
        <Fields
          base={`${path}/replaces`}
          specs={[
            { field: 'unitsPerStoreWeek', label: 'Which sells per store per week', kind: 'rateOfSale' },
            money('shelfBeforeTaxAmount', 'At a shelf price, before tax, of'),
            money('buyingAmount', 'Which the chain buys at'),
          ]}
        />
      )}
      <ButtonRow>
        <LinkButton href={ladder}>Its ladder</LinkButton>
        {account.listings.length > 1 && (
          <Button
            kind="quiet"
            label={`Take out ${name}`}
            onPress={() =>
              session.run(
                removeListing,
                { accountId: account.id, itemId: listing.itemId },
                `${base}/listings`,
              )
            }
          >
            Take out
          </Button>
        )}
      </ButtonRow>
    </fieldset>
  );
}

/** The price that was typed, or both; the one that gives way is the ladder's. */
function priceFields(listing: Listing): FieldSpec[] {
  const fields: FieldSpec[] = [];
  if (listing.shelf.by === 'price') fields.push(money('shelf/amount', 'Shelf price', { step: 'tag' }));
  if (listing.list.by === 'price') fields.push(money('list/amount', 'List price', { step: 'sum' }));
  if (listing.list.by === 'margin') fields.push(share('list/rate', 'Our margin on list', { step: 'margin' }));
  return fields;
}

export function AllowancesSection({ base, account }: { base: string; account: Account }): VNode {
  const session = useSession();
  const at = `${base}/allowances`;
  const add = (kind: string) => {
    if (kind !== '')
      session.run(
        addAllowance,
        { accountId: account.id, allowance: kindOf({ kind }).blank(session.newId()) },
        at,
      );
  };
  return (
    <>
      {account.allowances.map((terms, index) => {
        const kind = kindOf(terms);
        return (
          <fieldset key={terms.id} class="ff-place">
            <legend class="ff-label">{kind.label}</legend>
            <p class="ff-least ff-quiet">{kind.meaning}</p>
            <Fields base={`${at}/${terms.id}`} specs={kind.fields.map(specOf)} />
            <ButtonRow>
              {index > 0 && (
                <Button
                  kind="quiet"
                  label={`Take ${kind.label} earlier`}
                  onPress={() =>
                    session.run(movePlace, { path: `${at}/${terms.id}`, toIndex: index - 1 }, at)
                  }
                >
                  Earlier
                </Button>
              )}
              <Button
                kind="quiet"
                label={`Take out ${kind.label}`}
                onPress={() =>
                  session.run(removeAllowance, { accountId: account.id, allowanceId: terms.id }, at)
                }
              >
                Take out
              </Button>
            </ButtonRow>
          </fieldset>
        );
      })}
      <Trouble path={at} />
      <SelectField
        label="Add an allowance"
        value=""
        choices={[
          { value: '', label: 'Choose …' },
          ...ALLOWANCE_KINDS.map(({ kind, label }) => ({ value: kind, label })),
        ]}
        onChoose={add}
      />
    </>
  );
}

/** A kind's own field, as the inputs draw it. */
function specOf(note: FieldNote): FieldSpec {
  const { key, label, unit } = note;
  switch (unit) {
    case 'share':
      return share(key, label, { step: 'slowShare' });
    case 'perUnit':
      return money(key, label, { unit: 'a unit' });
    case 'perCase':
      return money(key, label);
    case 'weeks':
      return count(key, label, 'weeks', { step: 'one' });
    case 'days':
      return count(key, label, 'days', { step: 'days' });
    case 'switch':
      return onOff(key, label);
    case 'choice':
      return choice(key, label, note.choices ?? [], { asList: true });
  }
}
