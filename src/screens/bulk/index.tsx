// A table at once instead of field by field: paste it or choose a file, see what it would change, take all of it over as one
// edit. The text stays until it is emptied, over a reload too. Nothing of a table with a bad row is taken over.
// Worked example: "account,week,doors" over "Corner,9,12" shows "Corner, week 9: 10, 12"; taking it over is one step to undo.
import type { VNode } from 'preact';
import { useEffect, useMemo, useState } from 'preact/hooks';
import { setFields } from '../../app/commands/field.ts';
import { hashOf } from '../../app/route.ts';
import { readBulk, separatorFor, writeBulk } from '../../domain/bulk/index.ts';
import { BULK_TABLES, type BulkReading, type BulkTable } from '../../domain/bulk/types.ts';
import type { NumberLook } from '../../domain/money/look.ts';
import {
  Button,
  ButtonRow,
  FileButton,
  LinkButton,
  ProblemNote,
  Segmented,
  TextAreaField,
} from '../../widgets/index.ts';
import { isText, useKept } from '../shared/kept.ts';
import { today } from '../shared/moment.ts';
import { problemSentence } from '../shared/problem-words.ts';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { View } from '../shared/view.tsx';
import { Preview } from './preview.tsx';
import { readTableFile } from './read-file.ts';
import { headingWords, TABLE_WORDS } from './words.ts';
import './bulk.css';

/** Where the session keeps what is wrong with an edit of many fields. */
const AT = 'bulk';

export function BulkScreen(): VNode {
  const session = useSession();
  const plan = usePlan();
  const route = session.route.value;
  const [kept, keep] = useKept('bulk-table', isText);
  const named = route.view === 'bulk' ? route.table : null;
  const table = named ?? BULK_TABLES.find((each) => each === kept) ?? 'doors';
  const choose = (value: string): void => {
    const next = BULK_TABLES.find((each) => each === value) ?? 'doors';
    keep(next);
    session.go({ view: 'bulk', planId: plan.id, table: next, sheet: null });
  };
  return (
    <View title="Paste a table" verdict={null}>
      <Segmented
        label="What it holds"
        value={table}
        choices={BULK_TABLES.map((each) => ({ value: each, label: TABLE_WORDS[each].label }))}
        onChoose={choose}
      />
      <OneTable key={table} table={table} />
      <ButtonRow>
        {table === 'scans' && (
          <LinkButton href={hashOf({ view: 'promise', planId: plan.id, sheet: null })}>
            What they say: Promise
          </LinkButton>
        )}
        <LinkButton kind="quiet" href={hashOf({ view: 'inputs', planId: plan.id, sheet: null })}>
          All inputs
        </LinkButton>
      </ButtonRow>
    </View>
  );
}

type Mark = 'point' | 'comma';

/** The browser's look of numbers with the decimal mark of the table. */
function markedLook(look: NumberLook, mark: Mark): NumberLook {
  const own = look.decimal === '.' ? 'point' : 'comma';
  if (mark === own) return look;
  return mark === 'point' ? { ...look, decimal: '.', group: ',' } : { ...look, decimal: ',', group: '.' };
}

function OneTable({ table }: { table: BulkTable }): VNode {
  const session = useSession();
  const plan = usePlan();
  const say = useSay();
  const [keptText, setText] = useKept(`bulk-${table}`, isText);
  const [mark, setMark] = useState<Mark>(say.look.decimal === '.' ? 'point' : 'comma');
  const [fileProblem, setFileProblem] = useState<string | null>(null);
  const [done, setDone] = useState<number | null>(null);
  const text = keptText ?? '';
  const look = useMemo(() => markedLook(say.look, mark), [say, mark]);
  const reading = useMemo(
    () => (text.trim() === '' ? null : readBulk({ table, text, plan, look, week: say.week, today: today() })),
    [table, text, plan, look, say],
  );
  useEffect(() => () => session.forget(AT), [session]);
  const put = (next: string): void => {
    session.forget(AT);
    setFileProblem(null);
    setDone(null);
    setText(next);
  };
  const own = useMemo(() => writeBulk({ table, plan, look }, separatorFor(look)), [table, plan, look]);
  const choose = async (file: File): Promise<void> => {
    const read = await readTableFile(file);
    if ('problem' in read) setFileProblem(read.problem);
    else put(read.text);
  };
  return (
    <div class="ff-bulk">
      <div class="ff-stack ff-bulk-entry">
        <p>{TABLE_WORDS[table].about}</p>
        <p class="ff-least ff-quiet">{headingWords(table)}</p>
        <ButtonRow>
          <FileButton accept=".csv,.tsv,.txt,text/csv,text/plain" onFile={(file) => void choose(file)}>
            Choose a file
          </FileButton>
          <Button onPress={() => put(own)}>Put the plan’s values in</Button>
          <Button
            onPress={() => session.download({ name: `${TABLE_WORDS[table].file}.csv`, text: `\uFEFF${own}` })}
          >
            Save them as a file
          </Button>
        </ButtonRow>
        <Segmented
          label="Decimals are written"
          value={mark}
          choices={[
            { value: 'point', label: '3.40' },
            { value: 'comma', label: '3,40' },
          ]}
          onChoose={(value) => setMark(value === 'comma' ? 'comma' : 'point')}
        />
        <TextAreaField
          id="bulk-text"
          label="The table, from a spreadsheet or a file"
          value={text}
          rows={8}
          onInput={put}
          placeholder={own.split('\r\n').slice(0, 3).join('\n')}
        />
        {fileProblem !== null && <ProblemNote>{fileProblem}</ProblemNote>}
      </div>
      <div class="ff-stack">
        {reading !== null && <Preview reading={reading} table={table} />}
        <Accept reading={reading} done={done} onDone={setDone} onEmpty={() => put('')} />
      </div>
    </div>
  );
}

interface AcceptProps {
  reading: BulkReading | null;
  /** Changes taken over last; null before. */
  done: number | null;
  onDone: (changes: number | null) => void;
  onEmpty: () => void;
}

/** All of it, as one step to undo; what the plan as a whole refuses is said here, and nothing is changed. */
function Accept({ reading, done, onDone, onEmpty }: AcceptProps): VNode | null {
  const session = useSession();
  const plan = usePlan();
  const say = useSay();
  const problems = session.problems.value.get(AT) ?? [];
  if (reading === null) return null;
  const { fields, changes } = reading;
  const isReady = fields.length > 0 && reading.problems.length === 0;
  const accept = (): void => {
    session.endStep();
    if (session.run(setFields, { changes: fields }, AT)) onDone(changes.length);
    session.endStep();
  };
  const undo = (): void => {
    session.undo();
    onDone(null);
  };
  return (
    <>
      {problems.length > 0 && (
        <ProblemNote>
          {problems.map((problem) => (
            <p key={`${problem.path} ${problem.code}`}>{problemSentence(plan, problem)}</p>
          ))}
          <p>Nothing was changed.</p>
        </ProblemNote>
      )}
      {done !== null && (
        <p role="status" class="ff-bulk-done">
          {done === 1 ? '1 value was taken over.' : `${say.count(done)} values were taken over.`}{' '}
          <Button onPress={undo}>Undo that</Button>
        </p>
      )}
      <ButtonRow>
        {isReady && (
          <Button kind="primary" onPress={accept}>
            {changes.length === 1 ? 'Take over 1 change' : `Take over ${say.count(changes.length)} changes`}
          </Button>
        )}
        <Button kind="quiet" onPress={onEmpty}>
          Empty the table
        </Button>
      </ButtonRow>
    </>
  );
}
