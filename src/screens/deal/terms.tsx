// Every term of one chain, in groups that say what stands in them and open to be typed over in place.
// Worked example: "Money down" closed says "180 a door, 1 free case"; opened it has slotting, fees, display and term.
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import { SECTION_TITLES, Section } from '../inputs/section.tsx';
import { sectionWords } from '../inputs/section-words.ts';
import type { ChainSection } from '../shared/input-places.ts';
import { Fold, Part } from '../shared/parts.tsx';
import { useSay } from '../shared/use-say.ts';
import type { ShownDeal } from './column.tsx';

const GROUPS: readonly ChainSection[] = [
  'openings',
  'listings',
  'moneyDown',
  'terms',
  'allowances',
  'hands',
  'promotions',
];

export function DealTerms({ at }: { at: ShownDeal }): VNode {
  const say = useSay();
  const { plan, results, account } = at;
  const ladder = hashOf({
    view: 'ladder',
    planId: plan.id,
    accountId: account.id,
    itemId: null,
    sheet: null,
  });
  return (
    <Part title="Terms">
      <div>
        {GROUPS.map((section) => {
          const place = { of: 'chain', section, id: account.id } as const;
          return (
            <Fold
              key={section}
              label={SECTION_TITLES[section]}
              value={sectionWords(place, { plan, results, say })}
            >
              <Section place={place} />
            </Fold>
          );
        })}
      </div>
      <p>
        <a class="ff-link" href={ladder}>
          {account.name} on the ladder
        </a>
      </p>
    </Part>
  );
}
