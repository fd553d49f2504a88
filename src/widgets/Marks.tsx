/**
 * The marks and fills that carry meaning without colour: four verdict marks (a carton on a level, tilted, snapped
 * or empty shelf), four owner marks (carton, shelf tag, two wheels under a bed, plumb bob) and the SVG fills.
 * Every picture and row takes its marks from here, so a mark means one thing everywhere.
 */
import type { VNode } from 'preact';
import { classNames } from './class-names.ts';

export type Verdict = 'holds' | 'tight' | 'fails' | 'unknown';
export type Owner = 'ours' | 'theirs' | 'between' | 'atRisk' | 'tax';
export type MarkSize = 'small' | 'row' | 'large';

const carton = 'M9 3h10v9H9z';
const shelves: Record<Verdict, string> = {
  holds: 'M1 14H27M6 14v6M22 14v6',
  tight: 'M1 10L27 17M6 11v9',
  fails: 'M1 7H10M18 7H27M4 7v6M24 7v6',
  unknown: 'M1 14H27M6 14v6M22 14v6',
};
const cartonTurns: Record<Verdict, string | undefined> = {
  holds: '',
  tight: 'rotate(15 14 12) translate(2 -1)',
  fails: 'translate(0 9) rotate(30 14 8)',
  unknown: undefined,
};

export interface VerdictMarkProps {
  readonly verdict: Verdict;
  /** Spoken name; an empty string where the word stands beside the mark. */
  readonly label: string;
  readonly size?: MarkSize | undefined;
  /** Ink on paper, no hue: for a screen that others can see. */
  readonly inkOnly?: boolean | undefined;
}

/** A carton on its shelf, or what became of it. */
export function VerdictMark({ verdict, label, size = 'row', inkOnly = false }: VerdictMarkProps): VNode {
  const turn = cartonTurns[verdict];
  return (
    <svg
      class={classNames(
        'ff-mark ff-mark-verdict',
        size !== 'row' && `ff-mark-${size}`,
        `ff-hue-${inkOnly ? 'ink' : verdict}`,
      )}
      viewBox="0 0 28 22"
      stroke-width="2.5"
      role="img"
      aria-label={label}
      aria-hidden={label === ''}
    >
      <path d={shelves[verdict]} />
      {turn !== undefined && <path d={carton} transform={turn} />}
    </svg>
  );
}

export interface OwnerMarkProps {
  readonly owner: Owner;
  /** Spoken name; an empty string where the word stands beside the mark. */
  readonly label: string;
}

/** Whose money: carton, shelf tag, two wheels under a bed, plumb bob. Tax travels with "between". */
export function OwnerMark({ owner, label }: OwnerMarkProps): VNode {
  return (
    <svg
      class={`ff-mark ff-mark-owner ff-hue-${owner}`}
      viewBox="0 0 20 20"
      stroke-width="2"
      role="img"
      aria-label={label}
      aria-hidden={label === ''}
    >
      {ownerDrawings[owner]}
    </svg>
  );
}

const wheels = (
  <>
    <path d="M1 12.5H19M3 12.5V7" />
    <circle cx="6" cy="15.5" r="2" />
    <circle cx="14" cy="15.5" r="2" />
  </>
);
const ownerDrawings: Record<Owner, VNode> = {
  ours: (
    <>
      <path d="M2 5.5h16v11H2z" fill="currentColor" />
      <path d="M10 5.5v5" stroke="var(--ff-paper)" />
    </>
  ),
  theirs: (
    <>
      <path d="M2 4.5h12l4 4v7H2z" />
      <path d="M5 9h6M5 12.2h9" stroke-width="1.5" />
    </>
  ),
  between: wheels,
  tax: wheels,
  atRisk: <path d="M10 1v8M5.5 9h9L10 18.5z" />,
};

/** A patch of the owner's fill, for keys and table rows. */
export function OwnerSwatch({ owner }: { readonly owner: Owner }): VNode {
  return <span class={`ff-swatch ff-hue-${owner}`} aria-hidden="true" />;
}

/** Mark and word together: what a key to the fills is made of. */
export function OwnerName({ owner, name }: { readonly owner: Owner; readonly name: string }): VNode {
  return (
    <span class={`ff-owner-name ff-label ff-hue-${owner}`}>
      <OwnerMark owner={owner} label="" />
      <OwnerSwatch owner={owner} />
      <span>{name}</span>
    </span>
  );
}

/** The `fill` of an SVG shape in an owner's pattern. Needs one PatternDefs on the page. */
export function patternFill(owner: Owner): string {
  return owner === 'ours' ? 'var(--ff-ours)' : `url(#ff-pattern-${owner === 'tax' ? 'between' : owner})`;
}

/** The SVG fills, once a page: level stripes 1.5 in 6, hatch 2 in 8, dots on open paper. */
export function PatternDefs(): VNode {
  return (
    <svg class="ff-pattern-defs" aria-hidden="true">
      <defs>
        <pattern id="ff-pattern-theirs" width="6" height="6" patternUnits="userSpaceOnUse">
          <rect width="6" height="6" fill="var(--ff-paper)" />
          <rect width="6" height="1.5" fill="var(--ff-theirs)" />
        </pattern>
        <pattern
          id="ff-pattern-between"
          width="8"
          height="8"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect width="8" height="8" fill="var(--ff-paper)" />
          <rect width="2" height="8" fill="var(--ff-between)" />
        </pattern>
        <pattern id="ff-pattern-atRisk" width="6" height="6" patternUnits="userSpaceOnUse">
          <rect width="6" height="6" fill="var(--ff-paper)" />
          <circle cx="3" cy="3" r="1.4" fill="var(--ff-at-risk)" />
        </pattern>
      </defs>
    </svg>
  );
}
