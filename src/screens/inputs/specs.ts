// The fields of the inputs as plain data, so that a section is a list of them. `field` is the path under the section's
// place. Worked example: { field: 'terms/paymentDays', label: 'Paid in', kind: 'whole', unit: 'days', step: 'days' }
import type { StepName } from '../shared/steps.ts';
import type { FieldKind } from '../shared/typed-kinds.ts';

export interface FieldSpec {
  field: string;
  label: string;
  kind: FieldKind | 'switch' | 'choice' | 'date' | 'week';
  unit?: string;
  /** A sum or price in the plan's currency: its sign stands before or after. */
  isMoney?: boolean;
  step?: StepName;
  /** null: may go below zero. */
  least?: number | null;
  hint?: string;
  placeholder?: string;
  choices?: readonly { value: string; label: string }[];
  asList?: boolean;
}

export const factor = (field: string, label: string, more: Partial<FieldSpec> = {}): FieldSpec => ({
  field,
  label,
  kind: 'factor',
  ...more,
});

export const money = (field: string, label: string, more: Partial<FieldSpec> = {}): FieldSpec => ({
  field,
  label,
  kind: 'amount',
  isMoney: true,
  ...more,
});
/** A week of the plan, with the day it begins below. */
export const week = (field: string, label: string, more: Partial<FieldSpec> = {}): FieldSpec => ({
  field,
  label,
  kind: 'week',
  ...more,
});
export const share = (field: string, label: string, more: Partial<FieldSpec> = {}): FieldSpec => ({
  field,
  label,
  kind: 'percent',
  ...more,
});
export const count = (
  field: string,
  label: string,
  unit: string,
  more: Partial<FieldSpec> = {},
): FieldSpec => ({
  field,
  label,
  kind: 'whole',
  unit,
  ...more,
});
export const text = (field: string, label: string): FieldSpec => ({ field, label, kind: 'text' });
export const onOff = (field: string, label: string, more: Partial<FieldSpec> = {}): FieldSpec => ({
  field,
  label,
  kind: 'switch',
  ...more,
});
export const choice = (
  field: string,
  label: string,
  choices: readonly { value: string; label: string }[],
  more: Partial<FieldSpec> = {},
): FieldSpec => ({ field, label, kind: 'choice', choices, ...more });

/** What an order is made in whole numbers of. */
export const ORDER_IN = [
  { value: 'case', label: 'cases' },
  { value: 'layer', label: 'layers' },
  { value: 'pallet', label: 'pallets' },
];

/** What a sum is asked for. */
export const PER = [
  { value: 'door', label: 'a store' },
  { value: 'item', label: 'a product' },
  { value: 'itemDoor', label: 'a product and store' },
  { value: 'chain', label: 'the chain' },
];
