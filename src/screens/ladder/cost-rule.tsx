// How a cost line is stated, and the fields of that way. Another way of stating it keeps what it comes to a unit.
// Worked example: 0.25 a unit becomes 1,500 a shipment of 6,000 units.
import type { VNode } from 'preact';
import { landedOf } from '../../domain/ladder/landed.ts';
import { type Decimal, dec, ZERO } from '../../domain/money/decimal.ts';
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
  const ways = (Object.keys(WAYS) as Rule['by'][]).filter((by) => by !== 'share' || index > 0);
  const { rule } = line;
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
      />
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
          prefix={say.look.money.before.trim() || undefined}
          unit={`a ${rule.by}`}
          hint={unitsWords(rule.by, item)}
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
    const amount = each.times(unitsIn(by, item)).toDecimalPlaces(4).toFixed();
    return { by, amount };
  }
  const [base] = item.costLines.slice(index - 1, index);
  const before = landedOf(item);
  const amount = before.ok ? before.value.lines.find(({ id }) => id === base?.id)?.amount : undefined;
  const rate = amount?.gt(0) ? each.div(amount) : dec(0);
  return { by, rate: rate.toDecimalPlaces(6).toFixed(), of: base && line.id !== base.id ? [base.id] : [] };
}

function unitsIn(by: Exclude<Rule['by'], 'share'>, item: Item): number {
  if (by === 'case') return item.caseUnits;
  if (by === 'pallet') return item.caseUnits * item.palletCases;
  return by === 'shipment' ? item.shipmentUnits : 1;
}

function unitsWords(by: Exclude<Rule['by'], 'share'>, item: Item): string | undefined {
  return by === 'unit' ? undefined : `of ${unitsIn(by, item)} units`;
}
