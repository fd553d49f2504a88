// How a figure was worked out, as a sheet shows it: what it means, its formula with this plan's numbers, and the lines that
// made it, each leading on to its own figure or to the field it was typed into.
// Worked example: "170 ÷ 8 weeks = 21.3" above the claim, typed, and each account's doors.
import type { VNode } from 'preact';
import { sheetOfKey } from '../../domain/explain/keys.ts';
import type { Explanation, ExplanationLine, FigureKey } from '../../domain/explain/types.ts';
import { Button, Caution, OwnerMark, Sheet } from '../../widgets/index.ts';
import { BASIS_WORDS } from './basis-tag.tsx';
import { sheetOfPath } from './input-places.ts';
import { useSession } from './session-context.ts';

/** What is said of a figure; its key is the sheet's to know. */
export type Worked = Omit<Explanation, 'key' | 'exact'>;

export interface WorkingProps {
  answer: Worked;
  onOpen: (key: FigureKey) => void;
}

export function Working({ answer, onOpen }: WorkingProps): VNode {
  return (
    <>
      <Head answer={answer} />
      {answer.lines.length > 0 && (
        <ul class="ff-why-lines">
          {answer.lines.map((line, index) => (
            <Line key={`${index} ${line.label}`} line={line} onOpen={onOpen} />
          ))}
        </ul>
      )}
    </>
  );
}

/** Over a view: how one of its own figures was worked out. */
export function WorkedSheet({ answer }: { answer: Worked }): VNode {
  const session = useSession();
  return (
    <Sheet title="Where from?" onClose={() => session.closeSheet()}>
      <div class="ff-stack ff-why">
        <Working answer={answer} onOpen={(key) => session.openSheet(sheetOfKey(key))} />
      </div>
    </Sheet>
  );
}

function Head({ answer }: { answer: Worked }): VNode {
  return (
    <div class="ff-stack">
      <div>
        <h3 class="ff-label ff-quiet">{answer.title}</h3>
        <p class="ff-why-value ff-number">{answer.value}</p>
      </div>
      <p>{answer.meaning}</p>
      {answer.formula !== '' && <p class="ff-why-formula ff-number">{answer.formula}</p>}
      {answer.caution !== null && <Caution>{answer.caution}</Caution>}
    </div>
  );
}

/** One line: label and value, its reason below, and what it leads on to. */
function Line({ line, onOpen }: { line: ExplanationLine; onOpen: (key: FigureKey) => void }): VNode {
  const session = useSession();
  const { explains, path } = line;
  const field = path === null ? null : sheetOfPath(path);
  return (
    <li class="ff-why-line">
      <span class="ff-why-label">
        {line.owner !== null && <OwnerMark owner={line.owner} label="" />}
        {line.label}
      </span>
      <span class="ff-why-amount ff-number">
        {explains === null ? (
          line.value
        ) : (
          <Button
            kind="quiet"
            onPress={() => onOpen(explains)}
            label={`${line.label}: ${line.value}. Where from?`}
          >
            {line.value}
          </Button>
        )}
      </span>
      <span class="ff-why-reason ff-least ff-quiet">
        {sentenceOf(line)}
        {path !== null && <Origin line={line} />}
        {field !== null && (
          <Button kind="quiet" onPress={() => session.openSheet(field)} label={`Change ${line.label}`}>
            Change
          </Button>
        )}
      </span>
    </li>
  );
}

/** What is said of where it was typed comes after it, so it ends as a sentence does. */
function sentenceOf({ reason, path }: ExplanationLine): string {
  return path === null || reason === '' || /[.!?]$/.test(reason) ? reason : `${reason}.`;
}

function Origin({ line: { basis } }: { line: ExplanationLine }): VNode {
  if (basis === null) return <span class="ff-why-basis"> Typed.</span>;
  const source = /[.!?]$/.test(basis.source) ? basis.source : `${basis.source}.`;
  return (
    <span class="ff-why-basis">
      {' '}
      Default ({BASIS_WORDS[basis.kind]}): {source}
    </span>
  );
}
