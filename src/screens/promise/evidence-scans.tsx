// The scans themselves: all stores by week in one compact table, and each store's weeks to edit: units, what the week was
// on, its first day, whether it opened then.
// Worked example: "Hill Street · 18 weeks, 52 units" opens to 18 rows of units.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { addScanWeek, dropScanWeek, removeScan, setWeekOn } from '../../app/commands/evidence.ts';
import { addDays } from '../../domain/calendar.ts';
import type { Plan, Scan } from '../../domain/plan/index.ts';
import type { WeekOn } from '../../domain/promise/scans.ts';
import { Button, SelectField, Table, type TableColumn } from '../../widgets/index.ts';
import { Trouble } from '../inputs/fields.tsx';
import { ChoiceFor, DateFor, FieldFor, SwitchFor } from '../shared/field-for.tsx';
import { Fold, Keys, useRemoval } from '../shared/parts.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { counted, scanText } from './evidence-words.ts';

/** A store just added stands open. */
export function StoreScans({ added }: { added: string | null }): VNode | null {
  const { promise } = usePlan();
  const say = useSay();
  const removal = useRemoval();
  const session = useSession();
  if (promise.scans.length === 0) return removal.note;
  return (
    <>
      <Fold label="Every week" value={counted(promise.scans.length, 'store', 'stores', say)}>
        <WeeksTable />
      </Fold>
      <Fold label="Store by store" open={promise.scans.length <= FEW_STORES || added !== null}>
        {promise.scans.map((scan) => (
          <Fold key={scan.id} label={scan.store} open={scan.id === added} value={scanText(scan, say)}>
            <StoreFields
              scan={scan}
              onRemove={() =>
                removal.remove(scan.store, () =>
                  session.run(removeScan, { scanId: scan.id }, 'promise/scans'),
                )
              }
            />
          </Fold>
        ))}
      </Fold>
      <Trouble path="promise/scans" />
      {removal.note}
    </>
  );
}

/** As many stand open at first. */
const FEW_STORES = 3;

/** Stores down, weeks across by their first day; a dash is a week not seen, marks say what a week was on. */
function WeeksTable(): VNode {
  const { promise, items } = usePlan();
  const say = useSay();
  const { scans } = promise;
  const days = useMemo(() => {
    const all = scans.flatMap(({ firstDate, units }) => units.map((_, week) => addDays(firstDate, 7 * week)));
    return [...new Set(all)].sort();
  }, [scans]);
  const columns: readonly TableColumn[] = [
    { key: 'store', label: 'Store', kind: 'text' },
    ...days.map((day) => ({ key: day, label: say.date(day), kind: 'number' as const })),
  ];
  const rows = scans.map((scan) => {
    const item = items.length > 1 ? items.find(({ id }) => id === scan.itemId)?.name : undefined;
    const at = new Map(scan.units.map((_, week) => [addDays(scan.firstDate, 7 * week), week]));
    const cell = (day: string): string => {
      const week = at.get(day);
      return week === undefined ? '' : `${scan.units[week] ?? '–'}${markOf(scan, week)}`;
    };
    return {
      id: scan.id,
      cells: [item === undefined ? scan.store : `${scan.store}, ${item}`, ...days.map(cell)],
    };
  });
  return (
    <>
      <Table caption="Units by store and week" captionHidden columns={columns} rows={rows} compact bounded />
      <p class="ff-least ff-quiet">
        – not seen; d on display, p at a lower price, o an opening week that is left out.
      </p>
    </>
  );

  function markOf(scan: Scan, week: number): string {
    const opening = scan.opened && week < promise.openingWeeks ? ' o' : '';
    const display = scan.displayWeeks.includes(week) ? ' d' : '';
    return `${opening}${display}${scan.priceWeeks.includes(week) ? ' p' : ''}`;
  }
}

const ON_CHOICES: readonly { value: WeekOn; label: string }[] = [
  { value: 'plain', label: 'as usual' },
  { value: 'display', label: 'on display' },
  { value: 'price', label: 'lower price' },
  { value: 'both', label: 'display, lower price' },
];

function StoreFields({ scan, onRemove }: { scan: Scan; onRemove: () => void }): VNode {
  const session = useSession();
  const plan = usePlan();
  const say = useSay();
  const path = `promise/scans/${scan.id}`;
  const run = (command: typeof addScanWeek): void => {
    session.endStep();
    session.run(command, { scanId: scan.id }, path);
    session.endStep();
  };
  return (
    <div class="ff-stack">
      <FieldFor path={`${path}/store`} label="Store" kind="text" />
      <Of plan={plan} scan={scan} path={path} />
      <DateFor path={`${path}/firstDate`} label="First day of its first week" />
      <SwitchFor path={`${path}/opened`} label="It opened in that week" />
      <div class="ff-evidence-weeks">
        {scan.units.map((_, week) => {
          const day = say.date(addDays(scan.firstDate, 7 * week));
          return (
            <div key={week}>
              <FieldFor
                path={`${path}/units/${week}`}
                label={`Week of ${day}`}
                kind="whole"
                unit="units"
                placeholder="not seen"
              />
              <SelectField
                label={`${day} was`}
                value={onOf(scan, week)}
                choices={[...ON_CHOICES]}
                onChoose={(value) => {
                  const on = ON_CHOICES.find((each) => each.value === value)?.value ?? 'plain';
                  session.run(setWeekOn, { scanId: scan.id, week, on }, path);
                }}
              />
            </div>
          );
        })}
      </div>
      <Trouble path={path} />
      <Keys>
        <Button onPress={() => run(addScanWeek)}>Add a week</Button>
        {scan.units.length > 1 && (
          <Button kind="quiet" onPress={() => run(dropScanWeek)}>
            Take the last week out
          </Button>
        )}
        <Button kind="quiet" label={`Take out ${scan.store}`} onPress={onRemove}>
          Take out
        </Button>
      </Keys>
    </div>
  );
}

/** Product and chain, where there is a choice. */
function Of({ plan, scan, path }: { plan: Plan; scan: Scan; path: string }): VNode {
  const session = useSession();
  const chains = plan.accounts.map(({ id, name }) => ({ value: id, label: name }));
  return (
    <>
      {plan.items.length > 1 && (
        <ChoiceFor
          path={`${path}/itemId`}
          label="Product"
          choices={plan.items.map(({ id, name }) => ({ value: id, label: name }))}
          asList
        />
      )}
      {chains.length > 0 && (
        <SelectField
          label="Of the chain"
          value={scan.accountId ?? ''}
          choices={[{ value: '', label: 'none of this plan' }, ...chains]}
          onChoose={(value) => session.setField(`${path}/accountId`, value === '' ? null : value)}
        />
      )}
    </>
  );
}

function onOf({ displayWeeks, priceWeeks }: Scan, week: number): WeekOn {
  const [display, price] = [displayWeeks.includes(week), priceWeeks.includes(week)];
  return display && price ? 'both' : display ? 'display' : price ? 'price' : 'plain';
}
