/**
 * The shelf's price-tag rail, the way from view to view, and the line above the page. On a phone the rail is fixed
 * at the bottom, 64 px with five 72 px tags; from 900 px it sits under the header with a tag for every view.
 * Worked figure: five tags of 72 px fill 360 px; at 320 px each is 64 px.
 */
import type { ComponentChildren, VNode } from 'preact';
import { classNames } from './class-names.ts';
import { type Verdict, VerdictMark } from './Marks.tsx';

export interface RailTag {
  readonly id: string;
  readonly label: string;
  readonly href: string;
  /** The verdict of that view, if it has one, and its word for those who can't see the mark. */
  readonly verdict?: Verdict | undefined;
  readonly verdictWord?: string | undefined;
  /** Shown on a phone too; at most five. */
  readonly onPhone: boolean;
}

export interface RailProps {
  /** Spoken name of the navigation. */
  readonly label: string;
  readonly tags: readonly RailTag[];
  readonly currentId: string;
}

/** The only navigation. */
export function Rail({ label, tags, currentId }: RailProps): VNode {
  return (
    <nav class="ff-rail" aria-label={label}>
      <ul class="ff-rail-tags">
        {tags.map((tag) => (
          <li key={tag.id} class={classNames('ff-rail-slot', !tag.onPhone && 'ff-rail-wide-only')}>
            <a class="ff-rail-tag" href={tag.href} aria-current={tag.id === currentId ? 'page' : undefined}>
              {tag.verdict !== undefined && <VerdictMark verdict={tag.verdict} label="" size="small" />}
              <span class="ff-rail-label">{tag.label}</span>
              {tag.verdictWord !== undefined && <span class="ff-spoken">, {tag.verdictWord}</span>}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

export interface HeaderProps {
  /** What is open, e.g. the plan's name. */
  readonly name: string;
  /** Where a tap on the name goes. */
  readonly href: string;
  /** Buttons at the right: undo, more. */
  readonly children?: ComponentChildren | undefined;
}

/** 44 px above every page. */
export function Header({ name, href, children }: HeaderProps): VNode {
  return (
    <header class="ff-header">
      <a class="ff-header-name" href={href} title={name}>
        <span>{name}</span>
      </a>
      <div class="ff-header-side">{children}</div>
    </header>
  );
}
