// What one term is worth in another at the present deal: a row a term with one step of it, a column for each other, the
// amount that makes up for it, and beneath it the values between which that proportion holds to a tenth.
// Worked example: "1 margin point = 61 of slotting, 9 days, 1.3 promo weeks".
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Term, Worth, WorthCell } from '../../domain/talks/types.ts';
import { Table, type TableColumn, type TableRow } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import type { TalksModel } from './model.ts';
import { countedWords, lower, upper, valueText } from './term-words.ts';
import { money, objectiveUnit } from './verdict-words.ts';
import type { Work } from './work.ts';

export interface WorthProps {
  model: TalksModel;
  work: Work;
}

export function WorthTable({ model, work }: WorthProps): VNode {
  const say = useSay();
  const names = model.inPlay.map(({ name }) => name);
  const [told, setTold] = useState<{ key: string; worth: Worth | null; trouble: string } | null>(null);
  const key = `${work.key} ${names.join(' ')}`;
  useEffect(() => {
    let gone = false;
    const args = {
      plan: model.drafted,
      accountId: model.account.id,
      objective: model.table.objective,
      names,
    };
    void work.computer.run({ kind: 'worth', args }).answer.then((answer) => {
      if (gone || answer === null) return;
      setTold(
        answer.ok ? { key, worth: answer.value, trouble: '' } : { key, worth: null, trouble: answer.trouble },
      );
    });
    return () => {
      gone = true;
    };
  }, [key]);
  if (told === null) return <p class="ff-quiet">Working it out …</p>;
  if (told.worth === null) return <p>{told.trouble}</p>;
  return <Shown model={model} worth={told.worth} older={told.key !== key} say={say} />;
}

interface ShownProps {
  model: TalksModel;
  worth: Worth;
  older: boolean;
  say: ScreenSay;
}

function Shown({ model, worth, older, say }: ShownProps): VNode {
  const terms = worth.terms.flatMap((name) => model.terms.find((term) => term.name === name) ?? []);
  if (terms.length < 2) {
    return (
      <p>
        Of the terms in play {terms.length === 0 ? 'none moves' : 'only one moves'} the target: nothing to
        weigh.
      </p>
    );
  }
  const cell = (term: Term, other: Term): WorthCell | undefined =>
    worth.cells.find((each) => each.term === term.name && each.other === other.name);
  const columns: TableColumn[] = [
    { key: 'term', label: 'Of this', kind: 'text' },
    ...terms.map(({ name, label }) => ({ key: name, label, kind: 'number' as const })),
  ];
  const rows: TableRow[] = terms.map((term) => ({
    id: term.name,
    cells: [
      <span key="term">
        {stepWords(term, worth.steps[term.name] ?? 1, say)}
        <span class="ff-talks-range ff-least ff-quiet">
          {effectWords(model, worth.effects[term.name] ?? 0, say)}
        </span>
      </span>,
      ...terms.map((other) => (other === term ? '·' : amountCell(cell(term, other), other, say))),
    ],
  }));
  const idle = model.inPlay.filter(({ name }) => !worth.terms.includes(name));
  const [first, ...others] = terms;
  return (
    <div class={older ? 'ff-stack ff-is-older' : 'ff-stack'}>
      {first !== undefined && (
        <p>
          {stepWords(first, worth.steps[first.name] ?? 1, say)}
          {others.map((other) => sentencePart(cell(first, other), other, say)).join('')}.
        </p>
      )}
      <Table
        caption="Worth in each other, at what is on the table"
        captionHidden
        columns={columns}
        rows={rows}
      />
      {idle.length > 0 && (
        <p class="ff-least">
          {upper(idle.map(({ label }) => lower(label)).join(', '))}: no part in this target.
        </p>
      )}
      <p class="ff-least ff-quiet">
        Each row: one step of a term against us, and how much of the other makes up for it. Beneath: between
        which values of the other that holds to a tenth.
      </p>
    </div>
  );
}

/** "1 point of margin", "1 of slotting", "1 day". */
function stepWords(term: Term, step: number, say: ScreenSay): string {
  if (term.unit === 'share') {
    const points = say.number(Number((step * 100).toFixed(4)));
    return `${points} ${points === '1' ? 'point' : 'points'} of ${lower(term.label)}`;
  }
  if (term.unit === 'price' || term.unit === 'sum') return `${say.number(step)} of ${lower(term.label)}`;
  return `${say.number(step)} ${countedWords(term, step === 1) ?? `of ${lower(term.label)}`}`;
}

function amountText(amount: number, { unit }: Term, say: ScreenSay): string {
  if (unit === 'share') {
    const text = say.number(rounded(amount * 100));
    return `${text} ${text === '1' ? 'point' : 'points'}`;
  }
  return say.number(rounded(amount));
}

/** Three figures that count: 61.3, 9.04, 1,340. */
function rounded(amount: number): number {
  return Math.abs(amount) >= 100 ? Math.round(amount) : Number(amount.toPrecision(3));
}

function amountCell(cell: WorthCell | undefined, other: Term, say: ScreenSay): VNode | string {
  if (cell === undefined || cell.amount === null) return 'none does';
  const range = rangeText(cell, other, say);
  return (
    <span>
      {amountText(cell.amount, other, say)}
      {range !== '' && <span class="ff-talks-range ff-least ff-quiet">{range}</span>}
    </span>
  );
}

function rangeText({ holdsFrom, holdsTo }: WorthCell, other: Term, say: ScreenSay): string {
  const from = holdsFrom === null ? '' : valueText(other, Number(rounded4(holdsFrom)), say);
  const to = holdsTo === null ? '' : valueText(other, Number(rounded4(holdsTo)), say);
  if (from === '' && to === '') return '';
  return from === '' ? `up to ${to}` : to === '' ? `from ${from}` : `${from} to ${to}`;
}

function rounded4(value: number): string {
  return value.toFixed(4);
}

function sentencePart(cell: WorthCell | undefined, other: Term, say: ScreenSay): string {
  if (cell === undefined || cell.amount === null) return '';
  const amount = say.number(rounded(other.unit === 'share' ? cell.amount * 100 : cell.amount));
  const point = amount === '1' ? 'point' : 'points';
  const unit = other.unit === 'share' ? ` ${point} of ${lower(other.label)}` : wordsAfter(other, amount);
  return ` = ${amount}${unit}`;
}

function wordsAfter(term: Term, amount: string): string {
  return ` ${countedWords(term, amount === '1') ?? `of ${lower(term.label)}`}`;
}

function effectWords({ table }: TalksModel, effect: number, say: ScreenSay): string {
  if (table.objective.by === 'payback') return `${say.number(rounded(effect))} weeks`;
  return `${money(effect, say)} ${objectiveUnit(table.objective)}`;
}
