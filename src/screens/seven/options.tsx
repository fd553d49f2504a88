// What stands below the seven rows: the route, the region, two names, and the way to keep the plan. For a plan that is
// there already, the route, the names and the way on.
// Worked example: choosing Germany makes the currency EUR and puts 19 % tax into the tag's price.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { hashOf } from '../../app/route.ts';
import { CURRENCY_CODES } from '../../domain/money/currency.ts';
import { missingFor, REGIONS } from '../../domain/quick/index.ts';
import { Button, ButtonRow, LinkButton, SelectField, SwitchField, TextField } from '../../widgets/index.ts';
import { ImportTrouble } from '../plans/import-trouble.tsx';
import { screenSay } from '../shared/screen-say.ts';
import { useSession } from '../shared/session-context.ts';
import type { SevenModel } from './model.ts';
import type { NewSeven } from './new-model.ts';
import { rowOf } from './rows.ts';

const REGION_CHOICES = [
  ...REGIONS.map(({ id, name }) => ({ value: id, label: name })),
  { value: 'other', label: 'Elsewhere' },
];
const CURRENCY_CHOICES = CURRENCY_CODES.map((code) => ({ value: code, label: code }));

export function NewOptions({ model }: { model: NewSeven }): VNode {
  const { draft, region } = model;
  return (
    <div class="ff-stack">
      <div>
        <RouteAndNames model={model} />
        <SelectField
          label="Sold in"
          value={draft.regionId}
          choices={REGION_CHOICES}
          hint={regionWords(model)}
          onChoose={(regionId) => {
            const chosen = REGIONS.find(({ id }) => id === regionId);
            model.setRegion({ regionId, currency: chosen?.currency ?? draft.currency });
          }}
        />
        {draft.regionId === 'other' && (
          <SelectField
            label="Currency"
            value={region.currency}
            choices={CURRENCY_CHOICES}
            onChoose={(currency) => model.setRegion({ regionId: 'other', currency })}
          />
        )}
      </div>
      <Keep model={model} />
    </div>
  );
}

function Keep({ model }: { model: NewSeven }): VNode {
  const session = useSession();
  const missing = missingFor('deal', model.seven);
  const isReady = missing.length === 0 && model.results !== null;
  return (
    <div class="ff-stack">
      <ImportTrouble />
      {missing.length > 0 && (
        <p class="ff-least ff-quiet">
          To keep it as a plan: {missing.map((key) => rowOf(key).label.toLowerCase()).join('; ')}
          {session.storage.value === null ? '. What you typed is kept meanwhile.' : '.'}
        </p>
      )}
      <ButtonRow>
        <Button kind="primary" disabled={!isReady} onPress={() => model.keep()}>
          Keep this plan
        </Button>
        <Button kind="quiet" onPress={() => model.clear()}>
          Clear all
        </Button>
      </ButtonRow>
    </div>
  );
}

export function PlanOptions({ model, planId }: { model: SevenModel; planId: string }): VNode {
  return (
    <div class="ff-stack">
      <div>
        <RouteAndNames model={model} />
      </div>
      <ButtonRow>
        <LinkButton kind="primary" href={hashOf({ view: 'front', planId, sheet: null })}>
          Verdicts
        </LinkButton>
        <LinkButton href={hashOf({ view: 'inputs', planId, sheet: null })}>All inputs</LinkButton>
      </ButtonRow>
    </div>
  );
}

function RouteAndNames({ model }: { model: SevenModel }): VNode {
  const { distributor, productName, chainName } = model.seven;
  return (
    <>
      <SwitchField
        label="Through a distributor"
        hint={
          distributor
            ? 'At a margin of 20.4 % (published: US Census Bureau, 2023, United States).'
            : undefined
        }
        on={distributor}
        onChange={(on) => model.set({ distributor: on })}
      />
      <NameField
        label="Product"
        empty="Our product"
        value={productName}
        onName={(name) => model.set({ productName: name })}
        onLeave={model.leave}
      />
      <NameField
        label="Chain"
        empty="The chain"
        value={chainName}
        onName={(name) => model.set({ chainName: name })}
        onLeave={model.leave}
      />
    </>
  );
}

interface NameFieldProps {
  label: string;
  empty: string;
  value: string;
  onName: (name: string) => void;
  onLeave: () => void;
}

/** The text stays as typed, spaces and all, while it is being typed. */
function NameField({ label, empty, value, onName, onLeave }: NameFieldProps): VNode {
  const [typed, setTyped] = useState<string | null>(null);
  return (
    <TextField
      label={label}
      placeholder={empty}
      value={typed ?? value}
      maxLength={60}
      onInput={(text) => {
        setTyped(text);
        onName(text);
      }}
      onCommit={() => {
        setTyped(null);
        onLeave();
      }}
    />
  );
}

function regionWords({ region }: NewSeven): string {
  const { tax, currency } = region;
  if (tax.shown === 'atTill') return `${currency}; sales tax comes on top at the till.`;
  const rate = screenSay({ currency, startDay: 0 }).percent(Number(tax.rate));
  return `${currency}; ${rate} tax is in the price on the tag (standard rate, 2025; some goods pay less).`;
}
