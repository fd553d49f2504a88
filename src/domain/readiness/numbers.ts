// Numbers of one product from the unit to the pallet, held against how it is packed: what each level is, how many it holds,
// and what doesn't fit together. Check digits are refused before (plan/rules/readiness.ts).
// Worked figure: 12 units in a case, 50 cases on a pallet: 600 units under one SSCC.
import type { Item, Plan } from '../plan/index.ts';
import { asGtin14, caseGtinOf, ssccOf } from './gs1.ts';

export interface PackLevel {
  level: 'unit' | 'inner' | 'case' | 'pallet';
  /** Units of the product in one. */
  units: number;
  /** Of the level below. */
  holds: number;
  /** As typed; for a pallet the SSCC with serial 1, an example. null while not known. */
  number: string | null;
  /** The number it could have, made from the unit's; null where that isn't known or it has one. */
  proposed: string | null;
}

export interface NumberFinding {
  itemId: string;
  /** Field of the plan it is about. */
  path: string;
  sentence: string;
}

/** Unit, inner pack (where there is one), case, pallet. */
export function packLevels(item: Item): PackLevel[] {
  const { numbers, caseUnits, palletCases } = item;
  const inner = innerUnitsOf(item);
  const unit = numbers?.unit ?? null;
  const proposed = (own: string | null | undefined, indicator: number) =>
    unit === null || own || asGtin14(unit)[0] !== '0' ? null : caseGtinOf(unit, indicator);
  const prefix = numbers?.companyPrefix ?? null;
  const levels: PackLevel[] = [{ level: 'unit', units: 1, holds: 1, number: unit, proposed: null }];
  if (inner !== null) {
    const number = numbers?.inner ?? null;
    levels.push({ level: 'inner', units: inner, holds: inner, number, proposed: proposed(number, 1) });
  }
  const number = numbers?.case ?? null;
  levels.push({
    level: 'case',
    units: caseUnits,
    holds: inner === null ? caseUnits : Math.floor(caseUnits / inner),
    number,
    proposed: proposed(number, inner === null ? 1 : 2),
  });
  const sscc = prefix === null ? null : ssccOf({ extension: 0, companyPrefix: prefix, serial: 1 });
  levels.push({
    level: 'pallet',
    units: caseUnits * palletCases,
    holds: palletCases,
    number: sscc,
    proposed: null,
  });
  return levels;
}

/** An inner pack of one unit, or of the whole case, is none. */
function innerUnitsOf({ pack, caseUnits }: Item): number | null {
  const units = pack?.innerUnits ?? 1;
  return units > 1 && units < caseUnits ? units : null;
}

/** What doesn't fit together, in sentences; empty when all does. */
export function numberFindings(plan: Plan): NumberFinding[] {
  return [...plan.items.flatMap(ownFindings), ...sharedNumbers(plan)];
}

function ownFindings(item: Item): NumberFinding[] {
  const { id, numbers, caseUnits, pack } = item;
  const found = (field: string, sentence: string) => ({ itemId: id, path: `items/${id}/${field}`, sentence });
  const inner = innerUnitsOf(item);
  const findings: NumberFinding[] = [];
  if (inner !== null && caseUnits % inner !== 0) {
    findings.push(
      found(
        'pack/innerUnits',
        `${item.name}: ${caseUnits} units in a case are no whole inner packs of ${inner}.`,
      ),
    );
  }
  if (numbers === null) return findings;
  const { unit, case: caseNumber, inner: innerNumber, companyPrefix } = numbers;
  if (innerNumber !== null && inner === null) {
    const why = pack === null ? 'its sizes aren’t known' : 'it is packed without one';
    findings.push(found('numbers/inner', `${item.name}: a number for an inner pack, and ${why}.`));
  }
  if (unit !== null && caseUnits > 1 && caseNumber !== null && asGtin14(unit) === asGtin14(caseNumber)) {
    findings.push(
      found(
        'numbers/case',
        `${item.name}: case and unit have one number; a case of ${caseUnits} needs its own.`,
      ),
    );
  }
  if (unit !== null && companyPrefix !== null && !hasPrefix(unit, companyPrefix)) {
    findings.push(
      found(
        'numbers/companyPrefix',
        `${item.name}: its unit’s number doesn’t begin with the prefix ${companyPrefix}.`,
      ),
    );
  }
  return findings;
}

/** A prefix stands behind the indicator digit; one written for 12 digits has a zero before it in 13. */
function hasPrefix(unit: string, prefix: string): boolean {
  if (unit.length === 8) return true;
  const digits = asGtin14(unit).slice(1);
  return digits.startsWith(prefix) || digits.startsWith(`0${prefix}`);
}

function sharedNumbers(plan: Plan): NumberFinding[] {
  const seen = new Map<string, string>();
  return plan.items.flatMap(({ id, name, numbers }) =>
    (['unit', 'inner', 'case'] as const).flatMap((key): NumberFinding[] => {
      const number = numbers?.[key];
      if (!number) return [];
      const other = seen.get(asGtin14(number));
      if (other === undefined || other === id) {
        seen.set(asGtin14(number), id);
        return [];
      }
      const otherName = plan.items.find((item) => item.id === other)?.name ?? other;
      const sentence = `${name} and ${otherName} have the number ${number}; each needs its own.`;
      return [{ itemId: id, path: `items/${id}/numbers/${key}`, sentence }];
    }),
  );
}
