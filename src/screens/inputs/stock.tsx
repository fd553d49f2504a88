// Inputs of one product: what of it is there on the first day, what is under way, and what will leave without being sold.
// Worked example: 1,200 units on order that land in week 2, half of them paid.
import type { VNode } from 'preact';
import { Fields, Places } from './fields.tsx';
import { choice, count, money } from './specs.ts';

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
