// Inputs of one product: how it is packed, how it is made, how it sells by season, and what is there already.
// Worked example: half down with the order and six weeks to make put money out long before a store opens.
import type { VNode } from 'preact';
import { getAt } from '../../domain/plan/path.ts';
import { Disclosure } from '../../widgets/index.ts';
import { FieldFor, PartFor } from '../shared/field-for.tsx';
import { usePlan } from '../shared/session-context.ts';
import { Fields, Places } from './fields.tsx';
import { choice, count, type FieldSpec, money, share } from './specs.ts';

const PACK: readonly FieldSpec[] = [
  count('caseUnits', 'Units in a case', '', { step: 'one', least: 1 }),
  count('palletCases', 'Cases on a pallet', '', { least: 1 }),
  count('shipmentUnits', 'Units in a standard shipment', '', {
    hint: 'Costs stated for a shipment are shared out over these.',
  }),
];

export function PackSection({ base }: { base: string }): VNode {
  return (
    <>
      <FieldFor path={`${base}/name`} label="Product" kind="text" />
      <Fields base={base} specs={PACK} />
    </>
  );
}

const SUPPLY: readonly FieldSpec[] = [
  count('leadWeeks', 'Takes to make', 'weeks', { step: 'one' }),
  count('coverWeeks', 'Made ahead for', 'weeks', { step: 'one' }),
  count('minimumOrderUnits', 'Smallest order', 'units'),
  count('batchUnits', 'Made in batches of', 'units'),
  { ...count('capacityUnitsPerWeek', 'At most a week', 'units'), placeholder: 'no lid' },
  share('depositRate', 'Down with the order', { step: 'depth' }),
  count('supplierDays', 'Rest paid after landing', 'days', { step: 'days' }),
];

export function SupplySection({ base }: { base: string }): VNode {
  const season = getAt(usePlan(), `${base}/seasonFactors`);
  return (
    <>
      <Fields base={`${base}/supply`} specs={SUPPLY} />
      <Places
        listPath={`${base}/supply/capacitySteps`}
        nameOf={(_, index) => `More capacity ${index + 1}`}
        addLabel="Add capacity later on"
        blank={(id) => ({
          id,
          fromWeek: 26,
          unitsPerWeek: 1000,
          capitalAmount: '0',
          leadWeeks: 0,
          lifeWeeks: 260,
        })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[
              count('fromWeek', 'From week', ''),
              count('unitsPerWeek', 'At most a week then', 'units'),
              money('capitalAmount', 'Costs', { step: 'sum' }),
              count('leadWeeks', 'Set up in', 'weeks'),
              count('lifeWeeks', 'Lasts', 'weeks'),
            ]}
          />
        )}
      </Places>
      <PartFor
        path={`${base}/seasonFactors`}
        label="Sells by season"
        blank={() => Array.from({ length: 52 }, () => '1')}
      />
      {Array.isArray(season) && <SeasonFields base={`${base}/seasonFactors`} />}
    </>
  );
}

/** 52 factors by ISO week; drawn when opened. */
function SeasonFields({ base }: { base: string }): VNode {
  return (
    <Disclosure summary="Factor for each week of the year (1 is usual)">
      <Fields
        base={base}
        specs={Array.from(
          { length: 52 },
          (_, index): FieldSpec => ({ field: String(index), label: `Week ${index + 1}`, kind: 'factor' }),
        )}
      />
    </Disclosure>
  );
}

export function StockSection({ base }: { base: string }): VNode {
  return (
    <>
      <Fields
        base={`${base}/opening`}
        specs={[count('units', 'Units we hold today', ''), money('stockAmount', 'Their value in the books')]}
      />
      <Places
        listPath={`${base}/opening/onOrder`}
        nameOf={(_, index) => `On order ${index + 1}`}
        addLabel="Add an order under way"
        blank={(id) => ({ id, landsWeek: 2, units: 1000, depositPaidAmount: '0' })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[
              count('landsWeek', 'Lands in week', ''),
              count('units', 'Units', ''),
              money('depositPaidAmount', 'Already paid on it'),
            ]}
          />
        )}
      </Places>
      <Places
        listPath={`${base}/removals`}
        nameOf={(_, index) => `Not sold ${index + 1}`}
        addLabel="Add samples or a write-off"
        blank={(id) => ({ id, week: 1, units: 12, reason: 'samples' })}
      >
        {(path) => (
          <Fields
            base={path}
            specs={[
              count('week', 'In week', ''),
              count('units', 'Units', ''),
              choice('reason', 'As', [
                { value: 'samples', label: 'samples' },
                { value: 'writeOff', label: 'a write-off' },
              ]),
            ]}
          />
        )}
      </Places>
    </>
  );
}
