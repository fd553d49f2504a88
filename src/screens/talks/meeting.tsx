// The one screen of a meeting, put together: what is told in the same frame, what follows from the workers, the rows with
// their keypad, and the sheets over it. From 900 px what terms are worth and what was said stand beside it.
// Worked example: tapping slotting's value hides counters, log keys and two rows; the verdict above stays.
import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { classNames, ProblemNote } from '../../widgets/index.ts';
import { useSession } from '../shared/session-context.ts';
import { CounterLine } from './counter-line.tsx';
import { FiguresStrip } from './figures-strip.tsx';
import { TalksHead } from './head.tsx';
import type { MeetingKept } from './kept.ts';
import { LogKeys } from './log-keys.tsx';
import type { TalksModel } from './model.ts';
import { Said } from './said.tsx';
import { TalksSheets } from './sheets.tsx';
import { TalksKeypad, TermRows, useRows } from './term-rows.tsx';
import { TalksVerdict } from './verdict.tsx';
import { useWork } from './work.ts';
import { WorthTable } from './worth.tsx';

export interface MeetingProps {
  model: TalksModel;
  kept: MeetingKept;
  wide: boolean;
}

export function Meeting({ model, kept, wide }: MeetingProps): VNode {
  const session = useSession();
  const work = useWork(model);
  const rows = useRows(model, kept);
  const [trouble, setTrouble] = useState('');
  const [chosen, setChosen] = useState(0);
  const { sheet } = session.route.value;
  const keypad = !wide && rows.active !== null;
  useFocus(rows.active, !wide && sheet === null);
  useEffect(() => setChosen(0), [work.key]);
  const problem = rows.active === null ? '' : (rows.typings[rows.active]?.problem ?? '');
  return (
    <div class={classNames('ff-talks', kept.habits.leftHand && 'ff-talks-left')}>
      <div class={classNames('ff-talks-main', keypad && 'ff-talks-typing')}>
        <TalksHead model={model} kept={kept} onTrouble={setTrouble} />
        {trouble !== '' && <ProblemNote>{trouble}</ProblemNote>}
        <TalksVerdict model={model} problem={problem} />
        <FiguresStrip model={model} cash={work.cash} />
        <TermRows model={model} rows={rows} keypad={keypad} wide={wide} />
        {keypad ? (
          <TalksKeypad model={model} rows={rows} />
        ) : (
          <>
            <CounterLine model={model} work={work} chosen={chosen} onChoose={setChosen} />
            <LogKeys model={model} />
          </>
        )}
      </div>
      {wide && (
        <div class="ff-talks-beside">
          <section class="ff-part">
            <h2 class="ff-part-title">Worth in each other</h2>
            <WorthTable model={model} work={work} />
          </section>
          <section class="ff-part">
            <h2 class="ff-part-title">Said so far</h2>
            <Said model={model} />
          </section>
        </div>
      )}
      <TalksSheets model={model} work={work} kept={kept} sheet={sheet} />
    </div>
  );
}

/** The active row has the focus. After a reload its text goes on where it was left, instead of being typed over. */
function useFocus(active: string | null, wanted: boolean): void {
  const restored = useRef(active !== null);
  useEffect(() => {
    const box = active === null ? null : document.getElementById(`talks-${active}`);
    if (!wanted || !(box instanceof HTMLInputElement)) return;
    box.focus();
    if (restored.current) box.setSelectionRange(box.value.length, box.value.length);
    restored.current = false;
  }, [active]);
}
