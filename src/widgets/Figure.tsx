/**
 * Figures as the product shows them: large tabular numerals, a price as it hangs on the shelf, a figure that opens
 * where it comes from, and the row of one verdict. Text comes in ready; nothing is computed or rounded here.
 * Worked figure: PriceTag text "4.99" shows 4 with raised 99 and is spoken "4.99".
 */
import type { ComponentChildren, VNode } from 'preact';
import { classNames } from './class-names.ts';
import { type Verdict, VerdictMark } from './Marks.tsx';
import { words } from './words.ts';

export type FigureSize = 'row' | 'term' | 'hero' | 'side';

/** An address to go to, or something to do. */
export type Opening = string | (() => void);

export interface FigureProps {
  readonly value: string;
  readonly label?: string | undefined;
  /** After the number, smaller. */
  readonly unit?: string | undefined;
  /** A quiet line below. */
  readonly note?: ComponentChildren | undefined;
  readonly size?: FigureSize | undefined;
  /** Belongs to an earlier input: dotted underline and "…". */
  readonly older?: boolean | undefined;
  /** Opens the lines that made it. */
  readonly whereFrom?: Opening | undefined;
}

/** A label above a large number. */
export function Figure({
  value,
  label,
  unit,
  note,
  size = 'term',
  older = false,
  whereFrom,
}: FigureProps): VNode {
  const number = (
    <>
      {value}
      {unit !== undefined && <span class="ff-figure-unit"> {unit}</span>}
    </>
  );
  return (
    <div class={`ff-figure ff-figure-${size}`}>
      {label !== undefined && <span class="ff-figure-label ff-label">{label}</span>}
      <span class={classNames('ff-figure-value ff-number', older && 'ff-older')}>
        {whereFrom === undefined ? number : <WhereFrom open={whereFrom}>{number}</WhereFrom>}
        {older && <Older />}
      </span>
      {note !== undefined && <span class="ff-figure-note ff-least">{note}</span>}
    </div>
  );
}

export interface WhereFromProps {
  readonly open: Opening;
  readonly children: ComponentChildren;
  /** Spoken name, where the number alone would not say enough. */
  readonly label?: string | undefined;
}

/** Makes any figure answer "where from?". */
export function WhereFrom({ open, children, label }: WhereFromProps): VNode {
  if (typeof open === 'string') {
    return (
      <a class="ff-where ff-number" href={open} aria-label={label}>
        {children}
      </a>
    );
  }
  return (
    <button type="button" class="ff-where ff-number" onClick={open} aria-label={label}>
      {children}
    </button>
  );
}

function Older(): VNode {
  return (
    <>
      <span aria-hidden="true"> …</span>
      <span class="ff-spoken">, {words.notReady}</span>
    </>
  );
}

export interface PriceTagProps {
  /** e.g. "4.99" or "4,99". */
  readonly text: string;
  /** e.g. "$", before the number; spoken with it. */
  readonly currency?: string | undefined;
  /** Small print on the tag. */
  readonly label?: string | undefined;
  readonly size?: 'row' | 'term' | 'hero' | undefined;
}

/** A price as on the shelf: cut corner, raised cents; read out plainly. */
export function PriceTag({ text, currency, label, size = 'term' }: PriceTagProps): VNode {
  const parts = /^(.*)[.,](\d{2})$/.exec(text);
  return (
    <span class={`ff-price ff-price-${size} ff-number`}>
      <span class="ff-spoken">{`${label === undefined ? '' : `${label} `}${currency ?? ''}${text}`}</span>
      <span aria-hidden="true" class="ff-price-face">
        {label !== undefined && <span class="ff-price-label">{label}</span>}
        <span class="ff-price-number">
          {currency !== undefined && <span class="ff-price-currency">{currency}</span>}
          {parts?.[1] ?? text}
          {parts !== null && <span class="ff-price-cents">{parts[2]}</span>}
        </span>
      </span>
    </span>
  );
}

export interface VerdictRowProps {
  readonly verdict: Verdict;
  /** The question, e.g. a view's name. */
  readonly name: string;
  /** The verdict as a word, e.g. "Fails". */
  readonly word: string;
  /** The one figure; empty when there is none. */
  readonly figure: string;
  /** The one reason that binds. */
  readonly reason: string;
  /** The guess it leans on; undefined when it leans on none. */
  readonly leansOn?: string | undefined;
  readonly href: string;
  readonly older?: boolean | undefined;
}

/** One verdict in 84 px: mark, word, figure, reason, what it leans on. The whole row is the link. */
export function VerdictRow(props: VerdictRowProps): VNode {
  return (
    <a class="ff-verdict-row" href={props.href}>
      <VerdictMark verdict={props.verdict} label="" />
      <span class="ff-verdict-top">
        <span class="ff-verdict-head">
          <span class="ff-label ff-quiet">{props.name}</span>
          <span class={`ff-verdict-word ff-hue-${props.verdict}`}>{props.word}</span>
        </span>
        <span class={classNames('ff-verdict-figure ff-number', props.older === true && 'ff-older')}>
          {props.figure}
          {props.older === true && <Older />}
        </span>
      </span>
      <span class="ff-verdict-reason">
        <span>{props.reason}</span>
        {props.leansOn !== undefined && <span class="ff-quiet"> {props.leansOn}</span>}
      </span>
    </a>
  );
}

export interface VerdictLineProps {
  readonly verdict: Verdict;
  /** The page's first heading, where no other stands above it. */
  readonly heading?: boolean | undefined;
  /** "Holds." and the sentence, as one text. */
  readonly text: string;
  readonly inkOnly?: boolean | undefined;
}

/** Mark and sentence: the verdict at the head of a view, 56 px. */
export function VerdictLine({ verdict, text, heading = false, inkOnly = false }: VerdictLineProps): VNode {
  const Line = heading ? 'h1' : 'p';
  return (
    <Line class="ff-verdict-line">
      <VerdictMark verdict={verdict} label="" inkOnly={inkOnly} />
      <span>{text}</span>
    </Line>
  );
}
