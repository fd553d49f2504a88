/**
 * A table of ready texts: caption, first column that stays, numbers at the right, an optional footer. Wider than
 * the screen, it scrolls sideways inside its own region and says so. Rows are built in blocks, the first at once and
 * the others right after it has been painted; blocks of an unchanged rows array are never built again.
 * Worked figure: 520 weeks are 9 blocks of 60 rows, the first of them in the first frame.
 */
import type { ComponentChildren, VNode } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { classNames } from './class-names.ts';
import { words } from './words.ts';

const blockRows = 60;

export interface TableColumn {
  readonly key: string;
  readonly label: string;
  /** number: at the right, tabular. */
  readonly kind: 'text' | 'number';
}

export interface TableRow {
  readonly id: string;
  /** In the order of the columns; the first names the row. */
  readonly cells: readonly ComponentChildren[];
  /** Stands out: a total, the lowest week. */
  readonly strong?: boolean | undefined;
  /** The one looked at elsewhere too. */
  readonly current?: boolean | undefined;
}

export interface TableProps {
  readonly caption: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
  readonly footer?: TableRow | undefined;
  /** Small type and 28 px rows, for many weeks. */
  readonly compact?: boolean | undefined;
  /** Caption only for screen readers, where a heading already stands above. */
  readonly captionHidden?: boolean | undefined;
  /** Scrolls within its own height instead of lengthening the page. */
  readonly bounded?: boolean | undefined;
}

/** Rows and columns. Keep `rows` the same array while it is unchanged. */
export function Table(props: TableProps): VNode {
  const { columns, rows, footer, caption } = props;
  const region = useRef<HTMLElement>(null);
  const overflows = useOverflow(region);
  const blocks = useBlocks(rows.length);
  return (
    <div class={classNames('ff-table-frame', props.compact === true && 'ff-table-compact')}>
      {overflows && <p class="ff-table-note ff-least">{words.scrolls}</p>}
      <section
        class={classNames('ff-table-region', props.bounded === true && 'ff-table-bounded')}
        ref={region}
        aria-label={caption}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key
        tabIndex={0}
      >
        <table class="ff-table">
          <caption class={props.captionHidden === true ? 'ff-spoken' : 'ff-table-caption'}>{caption}</caption>
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column.key} scope="col" class={`ff-cell-${column.kind}`}>
                  {column.label}
                </th>
              ))}
            </tr>
          </thead>
          {Array.from({ length: blocks }, (_, block) => (
            <Block key={block} rows={rows} columns={columns} from={block * blockRows} />
          ))}
          {footer !== undefined && <tfoot>{bodyRow(footer, columns)}</tfoot>}
        </table>
      </section>
    </div>
  );
}

interface BlockProps {
  readonly rows: readonly TableRow[];
  readonly columns: readonly TableColumn[];
  readonly from: number;
}

function Block({ rows, columns, from }: BlockProps): VNode {
  return useMemo(
    () => <tbody>{rows.slice(from, from + blockRows).map((row) => bodyRow(row, columns))}</tbody>,
    [rows, columns, from],
  );
}

/** How many blocks to build now: one in the first frame, then all (one by one would lay the table out each time). */
function useBlocks(rowCount: number): number {
  const all = Math.ceil(rowCount / blockRows);
  const [built, setBuilt] = useState(1);
  useEffect(() => {
    if (built >= all) return undefined;
    const timer = setTimeout(() => setBuilt(all), 16);
    return () => clearTimeout(timer);
  }, [built, all]);
  return Math.min(built, all);
}

function bodyRow(row: TableRow, columns: readonly TableColumn[]): VNode {
  return (
    <tr
      key={row.id}
      class={classNames(row.strong === true && 'ff-tr-strong', row.current === true && 'ff-tr-current')}
      aria-current={row.current === true ? 'true' : undefined}
    >
      {columns.map((column, index) =>
        index === 0 ? (
          <th key={column.key} scope="row" class={`ff-cell-${column.kind}`}>
            {row.cells[index]}
          </th>
        ) : (
          <td key={column.key} class={`ff-cell-${column.kind}`}>
            {row.cells[index]}
          </td>
        ),
      )}
    </tr>
  );
}

/** Whether the region's content is wider than the region. */
function useOverflow(region: { readonly current: HTMLElement | null }): boolean {
  const [overflows, setOverflows] = useState(false);
  useLayoutEffect(() => {
    const element = region.current;
    if (element === null) return undefined;
    const measure = (): void => setOverflows(element.scrollWidth > element.clientWidth + 1);
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    if (element.firstElementChild !== null) observer.observe(element.firstElementChild);
    return () => observer.disconnect();
  }, []);
  return overflows;
}
