/**
 * A folding rule laid out flat: rods with their rivets, a solid length on it (what is likely), a thinner one (nearly
 * everything), a flag planted where something stands against it, and small pointers below. Everything on it is said as
 * text too, by whoever draws it. Worked figure: on a rule from 0 to 2,000 a flag at 1,900 stands 95 % along.
 */
import type { VNode } from 'preact';
import { classNames } from './class-names.ts';

export interface RuleLength {
  readonly low: number;
  readonly high: number;
}

export interface RulePointer {
  readonly at: number;
  readonly text: string;
  /** Filled or open, so that two can be told apart. */
  readonly filled: boolean;
}

export interface FoldingRuleProps {
  /** All that the picture shows, in a sentence or two. */
  readonly alt: string;
  /** The ends of the rods, from the beginning of the rule to its end: at least two, rising, evenly apart. */
  readonly ends: readonly { readonly at: number; readonly text: string }[];
  readonly solid: RuleLength | null;
  readonly thin: RuleLength | null;
  /** A cut across the solid length. */
  readonly middle: number | null;
  readonly flag: { readonly at: number; readonly text: string } | null;
  readonly pointers: readonly RulePointer[];
}

const LENGTH = 1000;
const ROD_HIGH = 26;
/** Every second rod lies a little lower, as rods of a folding rule do. */
const STEP_DOWN = 6;
const TICKS_A_ROD = 10;

/** The rule; it takes the width there is. */
export function FoldingRule(props: FoldingRuleProps): VNode {
  const { ends, flag, pointers } = props;
  const place = placer(ends);
  return (
    <figure class="ff-rule" role="img" aria-label={props.alt}>
      <div class="ff-rule-face" aria-hidden="true">
        {flag !== null && <FlagText text={flag.text} share={place(flag.at)} />}
        <svg class="ff-rule-rods" aria-hidden="true" viewBox={`0 0 ${LENGTH} 44`} preserveAspectRatio="none">
          <Rods {...props} place={place} />
        </svg>
        <div class="ff-rule-pointers">
          {pointers.map(({ at, filled }) => (
            <span key={at} style={{ left: `${100 * place(at)}%` }}>
              <Pointer filled={filled} />
            </span>
          ))}
        </div>
        <div class="ff-rule-ends ff-number">
          {ends.map(({ at, text }, index) => (
            <span
              key={at}
              class={classNames(index === 0 && 'ff-rule-first', index === ends.length - 1 && 'ff-rule-last')}
              style={{ left: `${100 * place(at)}%` }}
            >
              {text}
            </span>
          ))}
        </div>
      </div>
      {pointers.length > 0 && (
        <ul class="ff-rule-key ff-least" aria-hidden="true">
          {pointers.map(({ text, filled }) => (
            <li key={text}>
              <Pointer filled={filled} />
              {text}
            </li>
          ))}
        </ul>
      )}
    </figure>
  );
}

/** Shares of the way along, 0 to 1; what lies past an end is put there. */
function placer(ends: FoldingRuleProps['ends']): (at: number) => number {
  const least = ends[0]?.at ?? 0;
  const most = ends.at(-1)?.at ?? 1;
  return (at) => (most === least ? 0 : Math.max(0, Math.min(1, (at - least) / (most - least))));
}

/** The text stays over the rule, whichever end its pole is near. */
function FlagText({ text, share }: { text: string; share: number }): VNode {
  return (
    <div class="ff-rule-flag">
      <span class="ff-number" style={{ left: `${100 * share}%`, transform: `translateX(${-100 * share}%)` }}>
        {text}
      </span>
    </div>
  );
}

function Rods(props: FoldingRuleProps & { place: (at: number) => number }): VNode {
  const { ends, solid, thin, middle, flag, place } = props;
  const x = (at: number): number => LENGTH * place(at);
  const rods = ends.slice(1).map(({ at }, index) => ({
    from: x(ends[index]?.at ?? 0),
    to: x(at),
    top: index % 2 === 0 ? 6 : 6 + STEP_DOWN,
  }));
  return (
    <>
      {rods.map(({ from, to, top }) => (
        <g key={from}>
          <rect class="ff-rule-rod" x={from} y={top} width={to - from} height={ROD_HIGH} />
          <Length of={thin} within={{ from, to }} x={x} top={top + 15} high={5} name="ff-rule-thin" />
          <Length of={solid} within={{ from, to }} x={x} top={top + 8} high={18} name="ff-rule-solid" />
          <path class="ff-rule-tick" d={ticks(from, to, top)} />
        </g>
      ))}
      {rods.slice(1).map(({ from }) => (
        <path key={from} class="ff-rule-rivet" d={`M${from} ${6 + (ROD_HIGH + STEP_DOWN) / 2}h0`} />
      ))}
      {middle !== null && <path class="ff-rule-middle" d={`M${x(middle)} 12V38`} />}
      {flag !== null && <path class="ff-rule-pole" d={`M${x(flag.at)} 0V44`} />}
    </>
  );
}

interface LengthProps {
  of: RuleLength | null;
  within: { from: number; to: number };
  x: (at: number) => number;
  top: number;
  high: number;
  name: string;
}

/** The part of a length that lies on one rod. */
function Length({ of, within, x, top, high, name }: LengthProps): VNode | null {
  if (of === null) return null;
  const from = Math.max(within.from, x(of.low));
  const to = Math.min(within.to, Math.max(x(of.high), x(of.low) + 3));
  return to > from ? <rect class={name} x={from} y={top} width={to - from} height={high} /> : null;
}

function ticks(from: number, to: number, top: number): string {
  return Array.from({ length: TICKS_A_ROD - 1 }, (_, index) => {
    const at = from + ((index + 1) * (to - from)) / TICKS_A_ROD;
    return `M${at} ${top}v${index === 4 ? 7 : 4}`;
  }).join('');
}

function Pointer({ filled }: { filled: boolean }): VNode {
  return (
    <svg class="ff-rule-pointer" aria-hidden="true" viewBox="0 0 12 10">
      <path class={filled ? 'ff-rule-filled' : undefined} d="M1 9L6 1l5 8z" />
    </svg>
  );
}
