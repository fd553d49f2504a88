// The rows under the big figure. What isn't known of the item it would replace stays empty, and is said as not known.
// Worked figure: bought at 2.60 and sold at 4.00, the rows read 2.60, 35 %, 1.40.
import type { VNode } from 'preact';
import type { Earned } from './figures.ts';
import type { Writer } from './format.ts';

interface Row {
  label: string;
  figure: keyof Earned;
  write: (value: number) => string;
}

export function Figures({
  now,
  replaced,
  write,
  isMoved,
}: {
  now: Earned;
  replaced: Earned | null;
  write: Writer;
  isMoved: boolean;
}): VNode {
  const rows: Row[] = [
    { label: 'You buy at', figure: 'buying', write: write.price },
    { label: 'Penny profit, a unit', figure: 'pennyProfit', write: write.price },
    { label: 'Your margin', figure: 'marginRate', write: write.share },
    ...(replaced ? [{ label: 'A store a week', figure: 'perStoreWeek', write: write.price } as const] : []),
    { label: 'A facing a week', figure: 'perFacingWeek', write: write.price },
    { label: 'Turns a year', figure: 'turnsPerYear', write: write.tenth },
    { label: 'GMROI', figure: 'gmroi', write: write.number },
  ];
  return (
    <div>
      <table class="ts-table">
        <caption class="ts-spoken">What a store earns</caption>
        {replaced && (
          <thead>
            <tr>
              <td />
              <th scope="col">This item</th>
              <th scope="col">Replaced</th>
            </tr>
          </thead>
        )}
        <tbody>
          {rows.map(({ label, figure, write: text }) => (
            <tr key={figure}>
              <th scope="row">{label}</th>
              <Cell value={now[figure]} text={text} />
              {replaced && <Cell value={replaced[figure]} text={text} />}
            </tr>
          ))}
        </tbody>
      </table>
      {isMoved && now.turnsPerYear !== null && (
        <p class="ts-note">Turns and GMROI: with the same stock in a store.</p>
      )}
    </div>
  );
}

function Cell({ value, text }: { value: number | null; text: (value: number) => string }): VNode {
  if (value !== null) return <td>{text(value)}</td>;
  return (
    <td>
      <span aria-hidden="true">–</span>
      <span class="ts-spoken">not known</span>
    </td>
  );
}
