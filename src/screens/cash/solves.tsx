// Questions put to the whole plan: the most doors this cash carries, the least cash on the first day, and how late orders,
// how fast openings, how slow a sale may be. They run beside the page, can be stopped, and say how they were confirmed. An answer for an earlier plan is marked.
// Worked example: pressing "Least opening cash" answers 53,115.20, one cent less falls to −0.01.
import type { VNode } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Plan } from '../../domain/plan/index.ts';
import { Button, SelectField } from '../../widgets/index.ts';
import { Keys } from '../shared/parts.tsx';
import { type Shown, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { answerWords } from './answer-words.ts';
import { leastCashWords, mostDoorsWords } from './solve-words.ts';

type Question = 'mostDoors' | 'leastOpeningCash' | 'answerSolves';

type State =
  | { at: 'idle' }
  | { at: 'running'; cancel: () => void }
  | { at: 'answered'; sentences: readonly string[]; revision: number };

export function Solves({ shown }: { shown: Shown }): VNode {
  const { plan } = shown;
  const opening = plan.accounts.filter(({ waves }) => waves.length > 0);
  const [chosen, setChosen] = useState<string | null>(null);
  const account = opening.find(({ id }) => id === chosen) ?? opening[0];
  const least = useSolve(shown);
  const most = useSolve(shown);
  const more = useSolve(shown);
  return (
    <div class="ff-solves">
      {opening.length > 1 && account && (
        <SelectField
          label="Doors of"
          value={account.id}
          choices={opening.map(({ id, name }) => ({ value: id, label: name }))}
          onChoose={setChosen}
        />
      )}
      {account && plan.business.openingCashAmount !== null && (
        <Solve
          label="Most doors this cash carries"
          state={most.state}
          onAsk={() => most.ask('mostDoors', plan, account)}
          onStop={most.stop}
        />
      )}
      <Solve
        label="Least opening cash"
        state={least.state}
        onAsk={() => least.ask('leastOpeningCash', plan, null)}
        onStop={least.stop}
      />
      {plan.accounts.length > 0 && (
        <Solve
          label="How late, how fast, how slow a sale"
          state={more.state}
          onAsk={() => more.ask('answerSolves', plan, null)}
          onStop={more.stop}
        />
      )}
    </div>
  );
}

interface SolveProps {
  label: string;
  state: State;
  onAsk: () => void;
  onStop: () => void;
}

function Solve({ label, state, onAsk, onStop }: SolveProps): VNode {
  const { revision } = useSession();
  const running = state.at === 'running';
  const older = state.at === 'answered' && state.revision !== revision.value;
  return (
    <div>
      <Keys>
        <Button onPress={onAsk} disabled={running}>
          {label}
        </Button>
        {running && <Button onPress={onStop}>Stop</Button>}
      </Keys>
      <div aria-live="polite" class="ff-solve-answer">
        {running && <p class="ff-quiet">Running the plan …</p>}
        {state.at === 'answered' &&
          state.sentences.map((sentence, index) => (
            <p
              key={sentence}
              class={index === 0 && older ? 'ff-older' : index > 0 ? 'ff-least ff-quiet' : ''}
            >
              {sentence}
            </p>
          ))}
        {older && <p class="ff-least">That was for the plan before the last edit. Ask again for this one.</p>}
      </div>
    </div>
  );
}

/** One question at a time; leaving the page stops it. */
function useSolve(shown: Shown) {
  const session = useSession();
  const say = useSay();
  const [state, setState] = useState<State>({ at: 'idle' });
  const running = useRef<(() => void) | null>(null);
  const stop = (): void => {
    running.current?.();
    running.current = null;
  };
  useEffect(() => stop, []);
  const finish = (sentences: readonly string[] | null, revision: number): void => {
    running.current = null;
    setState(sentences === null ? { at: 'idle' } : { at: 'answered', sentences, revision });
  };
  const ask = (question: Question, plan: Plan, account: { id: string; name: string } | null): void => {
    stop();
    const revision = session.revision.value;
    const { minorDigits } = shown.results;
    if (question === 'mostDoors' && account !== null) {
      const job = session.compute({ kind: 'mostDoors', plan, accountId: account.id });
      begin(job.cancel);
      void job.answer.then((answer) =>
        finish(
          wordsOf(answer, (value) => mostDoorsWords(value, account.name, say)),
          revision,
        ),
      );
    } else if (question === 'answerSolves') {
      const job = session.compute({ kind: 'answerSolves', plan });
      begin(job.cancel);
      void job.answer.then((answer) =>
        finish(
          wordsOf(answer, (value) => answerWords(value, plan, say)),
          revision,
        ),
      );
    } else {
      const job = session.compute({ kind: 'leastOpeningCash', plan });
      begin(job.cancel);
      void job.answer.then((answer) =>
        finish(
          wordsOf(answer, (value) => leastCashWords(value, minorDigits, say)),
          revision,
        ),
      );
    }
  };
  const begin = (cancel: () => void): void => {
    running.current = cancel;
    setState({ at: 'running', cancel });
  };
  return { state, ask, stop };
}

/** The sentences of an answer, or why there is none; null when it was stopped. */
function wordsOf<T>(
  answer: { ok: true; value: T } | { ok: false; trouble: string } | null,
  words: (value: T) => string[],
): string[] | null {
  if (answer === null) return null;
  return answer.ok ? words(answer.value) : [answer.trouble];
}
