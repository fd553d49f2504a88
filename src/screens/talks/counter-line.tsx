// What could be said instead, 44 px: one counter-offer at a time, Use puts it into the draft, the right key goes to the
// next. Where none keeps the target, the one that comes closest and what it misses by.
// Worked example: "Instead: slotting 97", Use, "1 of 3 ›".
import type { VNode } from 'preact';
import { setDraft } from '../../app/commands/talks.ts';
import type { Counter, Counters } from '../../domain/talks/types.ts';
import { Button, classNames } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import type { TalksModel } from './model.ts';
import { offerWords } from './term-words.ts';
import { money } from './verdict-words.ts';
import { isPastLimit, type Work } from './work.ts';

export interface CounterLineProps {
  model: TalksModel;
  work: Work;
  chosen: number;
  onChoose: (index: number) => void;
}

export function CounterLine({ model, work, chosen, onChoose }: CounterLineProps): VNode {
  const say = useSay();
  const { value, older, trouble } = work.counters;
  if (model.standing.state === 'holds' && !isPastLimit(model)) {
    return <div class="ff-talks-counter ff-label ff-quiet">Nothing has to give.</div>;
  }
  if (trouble !== '' && !older) return <div class="ff-talks-counter ff-label">{trouble}</div>;
  if (value === null) return <div class="ff-talks-counter ff-label ff-quiet">Looking for another way …</div>;
  return <Found model={model} counters={value} older={older} index={chosen} onChoose={onChoose} say={say} />;
}

interface FoundProps {
  model: TalksModel;
  counters: Counters;
  older: boolean;
  index: number;
  onChoose: (index: number) => void;
  say: ScreenSay;
}

function Found({ model, counters, older, index, onChoose, say }: FoundProps): VNode {
  const session = useSession();
  const all = counters.counters;
  const at = Math.min(index, all.length - 1);
  const counter = all[at] ?? counters.closest;
  if (counter === null) {
    return <div class="ff-talks-counter ff-label">Nothing else on the list makes up for this.</div>;
  }
  const use = (): void => {
    const terms = { ...model.draft, ...counter.terms };
    session.endStep();
    session.run(setDraft, { accountId: model.account.id, terms }, 'talks/draft');
    session.endStep();
  };
  return (
    <div class="ff-talks-counter">
      <p class={classNames('ff-label', older && 'ff-older')}>
        {sentence(model, counter, say)}
        {older && ' …'}
      </p>
      <Button disabled={older} onPress={use}>
        Use
      </Button>
      {all.length > 1 && (
        <Button
          label={`Next of ${all.length}, this is ${at + 1}`}
          onPress={() => onChoose((at + 1) % all.length)}
        >
          {at + 1} of {all.length} ›
        </Button>
      )}
    </div>
  );
}

function sentence(model: TalksModel, counter: Counter, say: ScreenSay): string {
  const words = offerWords(model.terms, counter.terms, say);
  if (counter.holds) return `Instead: ${words}`;
  const { by } = model.table.objective;
  const miss =
    counter.reached === null
      ? 'still not back within the term'
      : by === 'payback'
        ? `still ${say.number(Math.round(-counter.miss * 10) / 10)} weeks late`
        : `still ${money(-counter.miss, say)}${by === 'firstYear' ? ' a year' : ''} short`;
  return `No single term makes up for this. Closest: ${words}, ${miss}.`;
}
