// Inputs of one chain: what it lists, at which typed price, how fast it sells and how its sales start.
// Worked example: two facings of 6 units and a rate of 4.5 are 2.7 weeks of supply on the shelf.
import type { VNode } from 'preact';
import { addListing, removeListing } from '../../app/commands/accounts.ts';
import { hashOf } from '../../app/route.ts';
import type { Account, Listing } from '../../domain/plan/index.ts';
import { Button, ButtonRow, LinkButton } from '../../widgets/index.ts';
import { PartFor } from '../shared/field-for.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useBulkHash } from './bulk-hash.ts';
import { Fields, Trouble } from './fields.tsx';
import { count, type FieldSpec, money, share } from './specs.ts';

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
  const bulkHash = useBulkHash();
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
      <p>
        <LinkButton kind="quiet" href={bulkHash('prices')}>
          Paste a price list
        </LinkButton>
      </p>
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
