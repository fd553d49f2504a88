// The rows of deals side by side, written as the Deal view writes them. A deal that can't be computed has dashes; why is
// said below the table. Worked figure: 48,300 needed in week 9 reads "48,300, week 9".
import type { ComparedDeal, ComparedFigures } from '../../domain/talks/compare.ts';
import type { TableRow } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

interface Line {
  label: string;
  write: (figures: ComparedFigures, say: ScreenSay) => string;
}

const LINES: readonly Line[] = [
  { label: 'Contribution a unit', write: (each, say) => say.price(each.contributionPerUnit) },
  { label: 'Contribution a store a week', write: (each, say) => say.price(each.contributionPerStoreWeek) },
  { label: 'Money down a door', write: (each, say) => say.sum(each.moneyDownPerDoor) },
  { label: 'First year', write: (each, say) => say.sum(each.firstYear) },
  { label: 'Cash need', write: needWords },
  { label: 'Pays back', write: paybackWords },
  { label: 'Break-even rate of sale', write: breakEvenWords },
];

export function figureRows(deals: readonly ComparedDeal[], say: ScreenSay): TableRow[] {
  return LINES.map(({ label, write }) => ({
    id: label,
    cells: [label, ...deals.map(({ figures }) => (figures === null ? '–' : write(figures, say)))],
  }));
}

function needWords({ cashNeed, cashNeedWeek }: ComparedFigures, say: ScreenSay): string {
  return cashNeedWeek === null ? 'none' : `${say.sum(cashNeed)}, week ${cashNeedWeek}`;
}

function paybackWords({ paybackWeeks, nothingDown, termWeeks }: ComparedFigures, say: ScreenSay): string {
  if (nothingDown) return 'nothing down';
  return paybackWeeks === null ? `not in ${termWeeks} weeks` : `week ${say.number(paybackWeeks.ceil())}`;
}

/** A single product's rate a store and week; of several, the part of all planned rates that is enough. */
function breakEvenWords(figures: ComparedFigures, say: ScreenSay): string {
  const { breakEvenRate, breakEvenRatio, items, nothingDown } = figures;
  if (items === 1) return breakEvenRate === null ? 'none does' : say.number(breakEvenRate);
  if (nothingDown) return `${say.percent(0)} of plan`;
  return breakEvenRatio === null ? 'none does' : `${say.percent(breakEvenRatio.pow(-1))} of plan`;
}
