// One week read out: what cash opens with, each flow by its name, the lowest moment, what it closes with; and the documents
// behind it. Each amount opens where it comes from. Worked example: week 26 opens at −20,040 and pays 8,075 to suppliers.
import type { VNode } from 'preact';
import { documentsFigure } from '../../domain/explain/document.ts';
import { FLOW_WORDS } from '../../domain/explain/flow-words.ts';
import type { ExplanationLine, FigureKey } from '../../domain/explain/types.ts';
import { OwnerMark, Table, type TableColumn, type TableRow, WhereFrom } from '../../widgets/index.ts';
import { OWNER_NAMES } from '../ladder/picture-rungs.ts';
import { Fold, Part } from '../shared/parts.tsx';
import type { Shown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import { weekCash } from './week-rows.ts';

const COLUMNS: readonly TableColumn[] = [
  { key: 'flow', label: 'Cash', kind: 'text' },
  { key: 'amount', label: 'Amount', kind: 'number' },
];

export function WeekRead({ shown, week }: { shown: Shown; week: number }): VNode {
  const say = useSay();
  const why = useWhy();
  const { opening, low, close, flows, cameIn, wentOut } = weekCash(shown.results.pass, week);
  const amount = (label: string, value: number, key: FigureKey | null) => {
    const text = say.moneyExact(value);
    if (key === null) return text;
    return (
      <WhereFrom key={label} open={why(key)} label={`${label}, ${say.week(week)}: ${text}. Where from?`}>
        {text}
      </WhereFrom>
    );
  };
  const ofWeek = (at: number, figure: 'cash' | 'low'): FigureKey => ({
    of: 'week',
    run: 'plan',
    week: at,
    figure,
  });
  const rows: TableRow[] = [
    {
      id: 'opening',
      strong: true,
      cells: ['Opens with', amount('Opens with', opening, week === 0 ? null : ofWeek(week - 1, 'cash'))],
    },
    ...flows.map(({ name, amount: value }) => ({
      id: name,
      cells: [
        <FlowName key="flow" name={name} />,
        amount(FLOW_WORDS[name].label, value, {
          of: 'flow',
          run: 'plan',
          flow: name,
          fromWeek: week,
          toWeek: week,
        }),
      ],
    })),
    { id: 'low', cells: ['Lowest within the week', amount('Lowest', low, ofWeek(week, 'low'))] },
    { id: 'close', strong: true, cells: ['Closes with', amount('Closes with', close, ofWeek(week, 'cash'))] },
  ];
  const words =
    flows.length === 0 ? 'Nothing moves.' : `${say.money(cameIn)} in, ${say.money(-wentOut)} out.`;
  return (
    <Part title={capital(say.week(week))}>
      <p aria-live="polite" class={shown.older ? 'ff-older' : 'ff-quiet'}>
        {words}
      </p>
      <div class="ff-steps">
        <Table caption={`Cash in ${say.week(week)}`} captionHidden columns={COLUMNS} rows={rows} />
      </div>
      <Fold label="Documents of this week">
        <Documents shown={shown} week={week} />
      </Fold>
    </Part>
  );
}

function FlowName({ name }: { name: keyof typeof FLOW_WORDS }): VNode {
  const { label, owner, meaning } = FLOW_WORDS[name];
  return (
    <span class="ff-step-name">
      {owner !== null && <OwnerMark owner={owner} label={OWNER_NAMES[owner]} />}
      <span>
        {label}
        <span class="ff-step-reason ff-least">{meaning}</span>
      </span>
    </span>
  );
}

const DOCUMENT_COLUMNS: readonly TableColumn[] = [
  { key: 'document', label: 'Document', kind: 'text' },
  { key: 'amount', label: 'Amount', kind: 'number' },
];

/** What is dated in the week: each document with what it does to cash, opening its own lines. */
function Documents({ shown, week }: { shown: Shown; week: number }): VNode {
  const say = useSay();
  const lines = documentsFigure({ ...shown, say }, week)?.lines ?? [];
  if (lines.length === 0) return <p class="ff-quiet">No document is dated in this week.</p>;
  return <Lines caption="What each does to cash" lines={lines} />;
}

function Lines({ caption, lines }: { caption: string; lines: readonly ExplanationLine[] }): VNode | null {
  const why = useWhy();
  if (lines.length === 0) return null;
  const rows = lines.map((line, index) => ({
    id: `${index} ${line.label}`,
    cells: [
      <span key="document" class="ff-step-name">
        {line.owner !== null && <OwnerMark owner={line.owner} label={OWNER_NAMES[line.owner]} />}
        <span>
          {line.label}
          <span class="ff-step-reason ff-least">{line.reason}</span>
        </span>
      </span>,
      line.explains === null ? (
        line.value
      ) : (
        <WhereFrom key="amount" open={why(line.explains)} label={`${line.label}: ${line.value}. Where from?`}>
          {line.value}
        </WhereFrom>
      ),
    ],
  }));
  return (
    <div class="ff-steps">
      <Table caption={caption} columns={DOCUMENT_COLUMNS} rows={rows} />
    </div>
  );
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
