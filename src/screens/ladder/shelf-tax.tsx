// Tax on the shelf price, and whether the tag shows it. Worked example: 20 % shown in the price leaves 4.16 of 4.99.
import type { VNode } from 'preact';
import { ChoiceFor, FieldFor } from '../shared/field-for.tsx';

const SHOWN = [
  { value: 'inPrice', label: 'in the price' },
  { value: 'atTill', label: 'added at the till' },
];

export function ShelfTax(): VNode {
  return (
    <div>
      <FieldFor path="shelfTax/rate" label="Rate" kind="percent" step="margin" />
      <ChoiceFor
        path="shelfTax/shown"
        label="The tag shows it"
        choices={SHOWN}
        hint="Margins are always on the price before tax."
      />
    </div>
  );
}
