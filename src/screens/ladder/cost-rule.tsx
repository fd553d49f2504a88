// How a cost line is stated, and the fields of that way. Another way of stating it keeps what it comes to a unit.
// Worked example: 0.25 a unit becomes 1,500 a shipment of 6,000 units.
import type { VNode } from 'preact';
import { boughtIn, landedOf } from '../../domain/ladder/landed.ts';
import { type Decimal, dec, ZERO } from '../../domain/money/decimal.ts';
import { loadOf } from '../../domain/pack/load.ts';
import { LOAD_NAMES, LOADS, type LoadName } from '../../domain/pack/loads.ts';
import type { Item } from '../../domain/plan/index.ts';
import { SelectField, SwitchField } from '../../widgets/index.ts';
import { FieldFor } from '../shared/field-for.tsx';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import type { CostLine } from './cost-lines.tsx';

type Rule = CostLine['rule'];

const WAYS: Record<Rule['by'], string> = {
  unit: 'so much a unit',
  case: 'so much a case',
  pallet: 'so much a pallet',
  shipment: 'so much a shipment',
  load: 'so much a full load',
  share: 'a share of earlier lines',
};

export interface CostRuleProps {
  item: Item;
  line: CostLine;
  index: number;
  /** What it comes to now; null when it can't be worked out. */
  perUnit: Decimal | null;
}

export function CostRule({ item, line, index, perUnit }: CostRuleProps): VNode {
  const session = useSession();
  const say = useSay();
  const path = `items/${item.id}/costLines/${line.id}/rule`;
  const { rule } = line;
  const loads = LOAD_NAMES.filter((load) => unitsOfLoad(load, item) > 0);
  const isOffered: Partial<Record<Rule['by'], boolean>> = { share: index > 0, load: loads.length > 0 };
  const ways = (Object.keys(WAYS) as Rule['by'][]).filter((by) => by === rule.by || isOffered[by] !== false);
  const choose = (by: string): void => {
    const next = ruleBy(by as Rule['by'], { item, line, index, perUnit });
    session.endStep();
    session.setField(path, next);
    session.endStep();
  };
  return (
    <>
      <SelectField
        label="Stated as"
        value={rule.by}
        choices={ways.map((by) => ({ value: by, label: WAYS[by] }))}
        onChoose={choose}
        hint={
          item.pack === null ? 'By trailer or container: once the pack is known (Name and pack).' : undefined
        }
      />
      {rule.by === 'load' && (
        <SelectField
          label="Which"
          value={rule.load}
          choices={loads.map((load) => ({ value: load, label: LOADS[load].words }))}
          onChoose={(load) => {
            session.setField(`${path}/load`, load);
            session.endStep();
          }}
        />
      )}
      {rule.by === 'share' ? (
        <>
          <FieldFor path={`${path}/rate`} label="Share" kind="percent" step="slowShare" />
          <Bases item={item} index={index} rule={rule} path={path} />
        </>
      ) : (
        <FieldFor
          path={`${path}/amount`}
          label="Amount"
          kind="amount"
          step="sum"
          prefix={(boughtIn(line, item)?.code ?? say.look.money.before.trim()) || undefined}
          unit={rule.by === 'load' ? 'a load' : `a ${rule.by}`}
          hint={unitsWords(rule, item)}
        />
      )}
    </>
  );
}

/** The earlier lines that a share is taken of. */
function Bases(props: {
  item: Item;
  index: number;
  rule: Extract<Rule, { by: 'share' }>;
  path: string;
}): VNode {
  const session = useSession();
  const { item, index, rule, path } = props;
  return (
    <>
      {item.costLines.slice(0, index).map(({ id, label }) => (
        <SwitchField
          key={id}
          label={`of ${label}`}
          on={rule.of.includes(id)}
          onChange={(on) => {
            const without = rule.of.filter((each) => each !== id);
            session.setField(`${path}/of`, on ? [...without, id] : without);
            session.endStep();
          }}
        />
      ))}
    </>
  );
}

/** The rule stated the other way, at what the line comes to now. */
function ruleBy(by: Rule['by'], { item, line, index, perUnit }: CostRuleProps): Rule {
  const each = perUnit ?? ZERO;
  if (by !== 'share') {
    const load = LOAD_NAMES.findLast((one) => unitsOfLoad(one, item) > 0) ?? 'container40';
    const units = by === 'load' ? unitsOfLoad(load, item) : unitsIn(by, item);
    // Where goods are typed in the supplier's currency, they are turned back into it.
    const { purchaseCurrency } = item.supply;
    const typed = line.family === 'goods' && purchaseCurrency ? each.div(purchaseCurrency.rate) : each;
    const amount = typed.times(units).toDecimalPlaces(4).toFixed();
    return by === 'load' ? { by, amount, load } : { by, amount };
  }
  const [base] = item.costLines.slice(index - 1, index);
  const before = landedOf(item);
  const amount = before.ok ? before.value.lines.find(({ id }) => id === base?.id)?.amount : undefined;
  const rate = amount?.gt(0) ? each.div(amount) : dec(0);
  return { by, rate: rate.toDecimalPlaces(6).toFixed(), of: base && line.id !== base.id ? [base.id] : [] };
}

function unitsOfLoad(load: LoadName, item: Item): number {
  return item.pack === null ? 0 : loadOf(item, item.pack, load).units;
}

function unitsIn(by: Exclude<Rule['by'], 'share' | 'load'>, item: Item): number {
  if (by === 'case') return item.caseUnits;
  if (by === 'pallet') return item.caseUnits * item.palletCases;
  return by === 'shipment' ? item.shipmentUnits : 1;
}

function unitsWords(rule: Exclude<Rule, { by: 'share' }>, item: Item): string | undefined {
  if (rule.by === 'unit') return undefined;
  return `of ${rule.by === 'load' ? unitsOfLoad(rule.load, item) : unitsIn(rule.by, item)} units`;
}
