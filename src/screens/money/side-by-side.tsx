// All offers as columns, a figure a row, for a desk. Worked example: lowest cash 7,700, −2,300 and 12,000 beside each other.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import { Table, type TableColumn, type TableRow } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import { type MoneyModel, type ShownOffer, shownOffers } from './model.ts';
import { coverShort, kindWords, perUnitWords, returnWords, timesWords } from './words.ts';

type Line = readonly [label: string, write: (at: ShownOffer, say: ScreenSay, minorDigits: number) => string];

/** What all else comes down to. */
const KEPT = 'We keep at the end';

const LINES: readonly Line[] = [
  ['Kind', ({ offer }) => kindWords(offer.parts)],
  ['From', ({ offer }) => (offer.from === '' ? 'not said' : offer.from)],
  ['Money in', ({ result }, say) => say.money(result.moneyIn)],
  ['Lowest cash', ({ result }, say) => `${say.money(result.lowestCash)}, week ${result.lowestWeek}`],
  ['Covers', coverShort],
  ['Lasts', ({ result }, say) => lastsWords(result.carries.runsOutWeek, say)],
  ['Paid to them in total', ({ result }, say) => say.money(result.totalPaid)],
  ['They make', ({ result }, say) => returnWords(result, say).value],
  ['Of their money', ({ result }, say) => timesWords(result.multiple, say)],
  ['Costs a unit', ({ result }, say, minorDigits) => perUnitWords(result, minorDigits, say)],
  ['We hold at the end', ({ result }, say) => say.percent(result.founder.rate)],
  [KEPT, ({ result }, say) => say.money(result.founder.amount)],
];

export function SideBySide({ model }: { model: MoneyModel }): VNode {
  const say = useSay();
  const offers = shownOffers(model);
  const columns: TableColumn[] = [
    { key: 'figure', label: 'Figure', kind: 'text' },
    ...offers.map(({ offer }) => ({ key: offer.id, label: offer.name, kind: 'number' as const })),
  ];
  const rows = useMemo(
    (): TableRow[] =>
      LINES.map(([label, write]) => ({
        id: label,
        strong: label === KEPT,
        cells: [label, ...shownOffers(model).map((at) => write(at, say, model.money.basis.minorDigits))],
      })),
    [model, say],
  );
  return <Table caption="Offers side by side" captionHidden columns={columns} rows={rows} />;
}

function lastsWords(runsOutWeek: number | null, say: ScreenSay): string {
  return runsOutWeek === null ? 'to the end' : `runs out in ${say.week(runsOutWeek)}`;
}
