// STAND-IN

import type { ScreenSay } from '../shared/screen-say.ts';
import type { Shown } from '../shared/session-context.ts';
import type { MustRow } from './must-be-true.tsx';
import type { RulerFigures } from './ruler.tsx';

export interface Placed {
  ruler: RulerFigures;
  sentence: string;
  rows: MustRow[];
  warnings: string[];
}

export function placedOf(shown: Shown, say: ScreenSay): Placed | null {
  const claim = shown.plan.promise.claim;
  if (claim === null) return null;
  return {
    ruler: {
      of: claim.of,
      low80: 340,
      high80: 1120,
      low95: 180,
      high95: 1400,
      middle: 720,
      claimed: Number(claim.amount),
      planned: 1950,
      today: 450,
    },
    sentence: 'The claim is above 95 % of what the evidence supports, and 4.2 times today’s 450.',
    rows: [
      {
        id: 'doors',
        label: 'Doors a week',
        needed: '61',
        seen: 'planned 24 at most',
        bindsFirst: true,
        isEnough: false,
      },
      {
        id: 'rate',
        label: 'Rate of sale',
        needed: '9.4',
        seen: 'seen 6.2 (5.1 to 7.6 in 8 of 10)',
        bindsFirst: false,
        isEnough: false,
      },
      {
        id: 'capacity',
        label: 'Capacity a week',
        needed: '4,100 units',
        seen: 'has 5,000',
        bindsFirst: false,
        isEnough: true,
      },
      { id: 'cash', label: 'Cash', needed: '91,000', seen: 'has 36,000', bindsFirst: false, isEnough: false },
    ],
    warnings: ['All stores are of Corner: shoppers of other chains may buy more, or less.'],
  };
}
