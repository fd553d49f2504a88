// What a table would do, before anything is done: how its columns were taken, every bad row with its line and column, every
// value old and new. Worked example: row "Corner, week 9" goes from 10 to 12; the first 60 rows are drawn at once.
import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import type { BulkReading, BulkTable } from '../../domain/bulk/types.ts';
import { Button, Caution, Disclosure, ProblemNote, Table, type TableColumn } from '../../widgets/index.ts';
import { usePlan } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { changeWords, columnWords, problemText, twoWayWords } from './words.ts';

/** More bad rows than these are counted. */
const PROBLEMS_SHOWN = 50;
const CHANGES_SHOWN = 300;

const COLUMNS: readonly TableColumn[] = [
  { key: 'where', label: 'Where', kind: 'text' },
  { key: 'what', label: 'What', kind: 'text' },
  { key: 'before', label: 'Now', kind: 'number' },
  { key: 'after', label: 'Then', kind: 'number' },
];

export function Preview({ reading, table }: { reading: BulkReading; table: BulkTable }): VNode {
  const say = useSay();
  const twoWays = twoWayWords(reading);
  const isBad = reading.problems.length > 0;
  return (
    <section class="ff-stack" aria-label="What it would change">
      <p class="ff-least ff-quiet">
        Columns: {columnWords(reading).join(', ')}.{' '}
        {reading.rows === 1 ? '1 row' : `${say.count(reading.rows)} rows`}.
      </p>
      {isBad ? <Problems reading={reading} /> : <Summary lines={changeWords(reading, table, say)} />}
      {twoWays !== null && <Caution>{twoWays}</Caution>}
      {!isBad && reading.notes.length > 0 && <Notes notes={reading.notes} table={table} />}
      {reading.changes.length > 0 && <Changes reading={reading} isBad={isBad} />}
    </section>
  );
}

function Problems({ reading }: { reading: BulkReading }): VNode {
  const plan = usePlan();
  const { problems } = reading;
  const more = problems.length - PROBLEMS_SHOWN;
  return (
    <ProblemNote>
      <p>
        {problems.length === 1
          ? 'One thing is wrong; nothing is taken over until it is mended.'
          : `${problems.length} things are wrong; nothing is taken over until they are mended.`}
      </p>
      <ul class="ff-bulk-problems">
        {problems.slice(0, PROBLEMS_SHOWN).map((problem) => {
          const text = problemText(plan, problem);
          return <li key={text}>{text}</li>;
        })}
      </ul>
      {more > 0 && <p>And {more} more.</p>}
    </ProblemNote>
  );
}

function Summary({ lines }: { lines: readonly string[] }): VNode {
  return (
    <div role="status">
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}

function Notes({ notes, table }: { notes: readonly string[]; table: BulkTable }): VNode {
  const summary = table === 'scans' ? `${notes.length} new stores` : `Openings of ${notes.length} chains`;
  const list = (
    <ul class="ff-bulk-notes">
      {notes.map((note) => (
        <li key={note}>{note}</li>
      ))}
    </ul>
  );
  return notes.length <= 4 ? list : <Disclosure summary={summary}>{list}</Disclosure>;
}

/** Thousands of rows are drawn when they are asked for. */
function Changes({ reading, isBad }: { reading: BulkReading; isBad: boolean }): VNode {
  const say = useSay();
  const [all, setAll] = useState(false);
  const { changes } = reading;
  const isCut = !all && changes.length > CHANGES_SHOWN;
  const rows = useMemo(
    () =>
      (isCut ? changes.slice(0, CHANGES_SHOWN) : changes).map(({ where, what, before, after }, index) => ({
        id: String(index),
        cells: [where, what, before, after],
      })),
    [changes, isCut],
  );
  return (
    <>
      <Table
        caption={isBad ? 'What the good rows would change' : 'What would change'}
        columns={COLUMNS}
        rows={rows}
        compact
        bounded
      />
      {isCut && (
        <p>
          The first {say.count(CHANGES_SHOWN)} of {say.count(changes.length)}.{' '}
          <Button kind="quiet" onPress={() => setAll(true)}>
            Show all
          </Button>
        </p>
      )}
    </>
  );
}
