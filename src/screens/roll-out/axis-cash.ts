// The cash curve at the foot of the time axis, with its lowest week named.
// Worked figure: −28,115 in week 26 is a plumb line from the water at week 26, "−28,115 · week 26".
import type { Results } from '../../domain/results.ts';
import type { AxisGraph } from '../../widgets/index.ts';
import { altOf, tagOf } from '../cash/cash-words.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

export function cashGraph(results: Results, say: ScreenSay): AxisGraph {
  const { pass, reading } = results;
  return {
    id: 'cash',
    label: 'Cash at the week’s end',
    alt: altOf(results, say),
    heightRem: 5,
    shapes: [
      { by: 'step', values: pass.balances.cash, colour: 'ours' },
      { by: 'plumb', index: reading.lowestWeek, value: reading.lowestCash },
    ],
    notes: [{ index: reading.lowestWeek, text: tagOf(results, say) }],
  };
}
