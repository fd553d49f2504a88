// Three figures in 44 px, and below them what is lost if the chain takes us off at its first look. Payback and break-even
// change with the step; the cash need follows from a worker, and until it is there the older one is marked.
// Worked example: "week 31", "5.4 of 6", "48,200 by week 9"; "Dropped at the first review, week 26: −12,300".
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import type { CashNeed } from '../../app/talks-work.ts';
import { Caution, classNames } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSay } from '../shared/use-say.ts';
import type { TalksModel } from './model.ts';
import { moneySigned } from './verdict-words.ts';
import type { Following } from './work.ts';

export function FiguresStrip({ model, cash }: { model: TalksModel; cash: Following<CashNeed> }): VNode {
  const say = useSay();
  const { figures } = model;
  const weeks = figures.paybackWeeks;
  return (
    <>
      <div class="ff-talks-figures">
        <Cell label="Pays back" value={weeks === null ? 'not back' : `week ${Math.ceil(weeks)}`} />
        <BreakEven model={model} say={say} />
        <Cell
          label={cash.value?.week == null ? 'Cash need' : `Cash need, week ${cash.value.week}`}
          value={cash.trouble !== '' ? 'not known' : cash.value === null ? '…' : cashText(cash.value, say)}
          older={cash.older && cash.value !== null}
        />
      </div>
      <Review model={model} say={say} />
    </>
  );
}

function cashText({ amount }: CashNeed, say: ScreenSay): string {
  return amount === 0 ? 'none' : say.money(amount);
}

function Cell({ label, value, older = false }: { label: string; value: string; older?: boolean }): VNode {
  return (
    <div class="ff-talks-figure">
      <span class="ff-least ff-quiet">{label}</span>
      <span class={classNames('ff-number', older && 'ff-older')}>
        {value}
        {older && ' …'}
      </span>
    </div>
  );
}

/** Of one product its rate of sale; of several the part of all planned rates that is enough. */
function BreakEven({ model, say }: { model: TalksModel; say: ScreenSay }): VNode {
  const { figures, account } = model;
  const [listing, ...others] = account.listings;
  const ratio = figures.breakEvenRatio;
  if (listing === undefined || others.length > 0) {
    return (
      <Cell
        label="Breaks even at"
        value={ratio === null ? 'no rate' : `${say.percent(ratio.pow(-1))} of plan`}
      />
    );
  }
  const rate = figures.breakEvenRate;
  const text =
    rate === null ? 'no rate' : `${say.number(rate)} of ${say.number(Number(listing.unitsPerStoreWeek))}`;
  return <Cell label="Needs a store, week" value={text} />;
}

/** The loss that is always in sight, and the key to the cautions that apply; opened, they push the rows down. */
function Review({ model, say }: { model: TalksModel; say: ScreenSay }): VNode {
  const [open, setOpen] = useState(false);
  const { figures, cautions } = model;
  const lost = moneySigned(figures.droppedAtReview, say);
  return (
    <>
      <div class="ff-talks-review ff-least">
        <span>
          Dropped at the first review, week {figures.reviewedAfterWeeks}: <b class="ff-number">{lost}</b>
        </span>
        {cautions.length > 0 && (
          <button
            type="button"
            class="ff-talks-cautions ff-least"
            aria-expanded={open}
            onClick={() => setOpen(!open)}
          >
            {cautions.length === 1 ? '1 caution' : `${cautions.length} cautions`}
          </button>
        )}
      </div>
      {open && cautions.map((each) => <Caution key={each.id}>{each.sentence}</Caution>)}
    </>
  );
}
