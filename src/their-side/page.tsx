// What the other side sees: one big figure, the rest in rows, the item it would replace beside them, and two steppers for
// what is theirs to judge, the shelf price and the rate of sale. Ink on paper, and no word of good or bad.
// Worked figure: at a penny profit of 1.40 and 6 a store and week the big figure is 8.40.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import {
  type Choice,
  earned,
  earnedByReplaced,
  priceSteps,
  rateSteps,
  type Steps,
  stepped,
} from './figures.ts';
import { Figures } from './figures-table.tsx';
import { type Writer, writerFor } from './format.ts';
import type { Offer, Shown } from './record.ts';
import { Return } from './return.tsx';
import { Stepper } from './stepper.tsx';

export interface PageProps {
  /** Null where there is no record, or none that can be read. */
  shown: Shown | null;
  locale: string;
  /** Four digits that let go without holding, or null. */
  code: string | null;
  release: () => Promise<void>;
}

export function Page({ shown, locale, code, release }: PageProps): VNode {
  const [isAway, setIsAway] = useState(false);
  const write = shown && writerFor(locale, shown.currency, shown.minorDigits);
  const turnKey = (
    <button type="button" class="ts-key" aria-pressed={isAway} onClick={() => setIsAway(!isAway)}>
      <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true" class="ts-sign">
        <path d="M5 9a8 8 0 0 1 14 0M19 4v5h-5M19 15a8 8 0 0 1-14 0M5 20v-5h5" />
      </svg>
      Upside down
    </button>
  );
  return (
    <div class={isAway ? 'ts-page ts-away' : 'ts-page'}>
      <header class="ts-head">
        <div>
          <p class="ts-chain">{shown?.chain ?? ''}</p>
          <h1 class="ts-item">{shown?.item ?? 'Nothing to show'}</h1>
        </div>
        <Return code={code} release={release} />
      </header>
      {shown && write && shown.offer ? (
        <Offered shown={shown} offer={shown.offer} write={write} turnKey={turnKey} />
      ) : (
        <NotOffered shown={shown} write={write} turnKey={turnKey} />
      )}
    </div>
  );
}

interface Part {
  turnKey: VNode;
}

function NotOffered({ shown, write, turnKey }: Part & { shown: Shown | null; write: Writer | null }): VNode {
  return (
    <>
      <main class="ts-main">
        {shown && write ? (
          <>
            <Hero label="Shelf price" text={write.priceWithSign(shown.shelf)} below={null} />
            <p>Nothing has been offered yet.</p>
          </>
        ) : (
          <p>There is nothing here to show.</p>
        )}
      </main>
      <footer class="ts-foot">{turnKey}</footer>
    </>
  );
}

function Offered({
  shown,
  offer,
  write,
  turnKey,
}: Part & { shown: Shown; offer: Offer; write: Writer }): VNode {
  const asOffered: Choice = { shelf: shown.shelf, unitsPerStoreWeek: offer.unitsPerStoreWeek };
  const [choice, setChoice] = useState(asOffered);
  const now = earned(offer, choice);
  const replaced = offer.replaced && earnedByReplaced(offer.replaced);
  const difference = replaced && write.priceSigned(now.perStoreWeek - replaced.perStoreWeek);
  const isMoved = choice.shelf !== shown.shelf || choice.unitsPerStoreWeek !== offer.unitsPerStoreWeek;
  const step =
    (field: keyof Choice, steps: Steps) =>
    (direction: 1 | -1): void =>
      setChoice((before) => ({ ...before, [field]: stepped(before[field], direction, steps) }));
  return (
    <>
      <main class="ts-main">
        <Hero
          label="A store earns, a week"
          text={write.priceWithSign(now.perStoreWeek)}
          below={difference && `${difference} against the item it would replace`}
        />
        <div class="ts-steppers">
          <Stepper
            label="Shelf price"
            text={write.priceWithSign(choice.shelf)}
            onStep={step('shelf', priceSteps(shown.shelf, shown.minorDigits))}
          />
          <Stepper
            label="Sold a store a week"
            text={write.number(choice.unitsPerStoreWeek)}
            onStep={step('unitsPerStoreWeek', rateSteps(offer.unitsPerStoreWeek))}
          />
        </div>
        <Figures now={now} replaced={replaced} write={write} isMoved={isMoved} />
      </main>
      <footer class="ts-foot">
        {turnKey}
        {isMoved ? (
          <button type="button" class="ts-key" onClick={() => setChoice(asOffered)}>
            Back to the offer
          </button>
        ) : (
          <p class="ts-as">As offered</p>
        )}
      </footer>
    </>
  );
}

function Hero({ label, text, below }: { label: string; text: string; below: string | null }): VNode {
  return (
    <div class="ts-hero" role="status">
      <p class="ts-label">{label}</p>
      <p class={text.length > 9 ? 'ts-figure ts-long' : 'ts-figure'}>{text}</p>
      {below !== null && <p class="ts-below">{below}</p>}
    </div>
  );
}
