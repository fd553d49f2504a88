// A counter to one offer: which of its terms moves, what it is to come out equal to, and in which future. What is found is said
// as a sentence, and Use puts it into the offer, one undo step.
// Worked example: "At 17.4 %, instead of 20 %, this equals Alder at the P50 future."
import type { VNode } from 'preact';
import { useMemo, useState } from 'preact/hooks';
import { setOfferTerm } from '../../app/commands/offers.ts';
import type { FoundFutures } from '../../app/offer-draws.ts';
import {
  type Basis,
  type Counter,
  type CounterGoal,
  type CounterReach,
  counterFor,
  offerKindOf,
  runOffer,
} from '../../domain/offers/index.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { Button, SelectField } from '../../widgets/index.ts';
import { Keys } from '../shared/parts.tsx';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { futureName } from './future-words.ts';
import { type MoneyModel, type ShownOffer, useOfferDraws } from './model.ts';
import { lower, valueWords } from './terms-words.ts';
import { nameOf } from './words.ts';

interface Choice {
  value: string;
  label: string;
}

export function CounterTo({ model, at }: { model: MoneyModel; at: ShownOffer }): VNode {
  const session = useSession();
  const say = useSay();
  const { plan, money } = model;
  const { offer } = at;
  const terms = termChoices(at);
  const goals = goalChoices(plan, offer.id, say);
  const [term, setTerm] = useState<string | null>(null);
  const [goal, setGoal] = useState<string | null>(null);
  const [future, setFuture] = useState<string | null>(null);
  const draws = useOfferDraws();
  const futures = futureChoices(draws.found);
  const termKey = kept(terms, term);
  const goalKey = kept(goals, goal);
  const futureKey = kept(futures, future) ?? AS_PLANNED.value;
  const basis = draws.found?.bases.find(({ name }) => name === futureKey)?.basis ?? money.basis;
  const counter = useMemo(() => {
    const [partId = '', key = ''] = (termKey ?? '').split(' ');
    const wanted = goalOf(model, goalKey);
    return wanted === null || termKey === null
      ? null
      : counterFor({ plan, basis, offer, partId, key, goal: wanted });
  }, [model, offer, termKey, goalKey, basis]);
  const dry = useMemo(
    () => (goalKey === null ? null : runsOut(plan, basis, goalKey)),
    [plan, basis, goalKey],
  );
  if (terms.length === 0) return <p class="ff-quiet">No part of this offer has a term to move.</p>;
  if (goals.length === 0) {
    return (
      <p class="ff-quiet">
        Nothing to be equal to: add another offer, or say below how much of the company you would keep, or how
        much you would pay in all.
      </p>
    );
  }
  const use = ({ partId, key, value }: Extract<Counter, { found: true }>): void => {
    session.endStep();
    session.run(setOfferTerm, { offerId: offer.id, partId, key, value }, `offers/${offer.id}/parts`);
    session.endStep();
  };
  return (
    <>
      <SelectField label="Move" value={termKey ?? ''} choices={terms} onChoose={setTerm} />
      <SelectField label="So that it" value={goalKey ?? ''} choices={goals} onChoose={setGoal} />
      <SelectField label="In" value={futureKey} choices={futures} onChoose={setFuture} />
      <p class="ff-money-answer" aria-live="polite">
        {counter === null ? '' : sentence({ counter, at, goal: goalKey ?? '', future: futureKey, plan, say })}
        {dry !== null && ` Cash runs out under ${dry} there.`}
      </p>
      {draws.older && futureKey !== AS_PLANNED.value && (
        <p class="ff-least ff-quiet">That future is of the plan before the last edit.</p>
      )}
      {counter?.found === true && counter.value !== counter.from && (
        <Keys>
          <Button onPress={() => use(counter)} label={`Use it in ${offer.name}`}>
            Use
          </Button>
        </Keys>
      )}
    </>
  );
}

function termChoices({ offer }: ShownOffer): Choice[] {
  return offer.parts.flatMap((part) => {
    const { label, movable } = offerKindOf(part);
    return movable.map((term) => ({
      value: `${part.id} ${term.key}`,
      label: offer.parts.length > 1 ? `${label}: ${lower(term.label)}` : term.label,
    }));
  });
}

/** What is paid by date and settled at the sale counts, what shares of the company get doesn't. */
const SHARES_ASIDE = 'without what shares get';

const AS_PLANNED: Choice = { value: 'plan', label: 'the plan as it stands' };

/** The plan's own future, and those of the range once they are drawn. */
function futureChoices(found: FoundFutures | null): Choice[] {
  const bases = found?.bases ?? [];
  return [AS_PLANNED, ...bases.map(({ name }) => ({ value: name, label: `the ${futureName(name)} future` }))];
}

/** Other offers, and the founder's limits that were said. */
function goalChoices({ offers, ownership }: Plan, ownId: string, say: ScreenSay): Choice[] {
  const { leastFounderRate, mostPaidAmount } = ownership;
  return [
    ...offers
      .filter(({ id }) => id !== ownId)
      .map(({ id, name }) => ({ value: `equals ${id}`, label: `equals ${name}` })),
    ...(leastFounderRate === null
      ? []
      : [{ value: 'founderRate', label: `leaves us ${say.percent(Number(leastFounderRate))}` }]),
    ...(mostPaidAmount === null
      ? []
      : [{ value: 'paidAtMost', label: `costs ${say.sum(mostPaidAmount)}, ${SHARES_ASIDE}` }]),
  ];
}

function goalOf({ plan: { ownership }, money }: MoneyModel, key: string | null): CounterGoal | null {
  if (key === null) return null;
  const { leastFounderRate, mostPaidAmount } = ownership;
  if (key === 'founderRate')
    return leastFounderRate === null ? null : { by: key, rate: Number(leastFounderRate) };
  const perMinor = 10 ** money.basis.minorDigits;
  if (key === 'paidAtMost') {
    return mostPaidAmount === null
      ? null
      : { by: key, amount: Math.round(Number(mostPaidAmount) * perMinor) };
  }
  return { by: 'equals', offerId: key.slice('equals '.length) };
}

/** The other offer's name where cash runs out under it in that future: to be equal to it is little then. */
function runsOut(plan: Plan, basis: Basis, goal: string): string | null {
  const other = plan.offers.find(({ id }) => goal === `equals ${id}`);
  if (other === undefined) return null;
  return runOffer(basis, other, plan.ownership).lowestCash < 0 ? other.name : null;
}

/** What was chosen while it is still there, else the first. */
function kept(choices: readonly Choice[], chosen: string | null): string | null {
  return (choices.find(({ value }) => value === chosen) ?? choices[0])?.value ?? null;
}

interface Found {
  counter: Counter;
  at: ShownOffer;
  goal: string;
  future: string;
  plan: Plan;
  say: ScreenSay;
}

function sentence({ counter, at, goal, future, plan, say }: Found): string {
  const part = at.offer.parts.find(({ id }) => id === counter.partId);
  const term = part && offerKindOf(part).movable.find(({ key }) => key === counter.key);
  const where =
    future === AS_PLANNED.value ? 'on the plan as it stands' : `at the ${future.toUpperCase()} future`;
  const what = `${goalWords(plan, goal, say)} ${where}`;
  if (term === undefined) return '';
  // Which term it is stands above, in the list it was chosen from: "At for each unit 0.36" would be no sentence.
  if (!counter.found) {
    const reach = counter.why === 'notReached' ? counter.reach : null;
    return `No value of it makes this ${what}${reach === null ? '' : reachWords(reach, goal, say)}.`;
  }
  const value = valueWords(term, counter.value, say);
  const from = counter.from === null ? 'none' : valueWords(term, counter.from, say);
  const miss = missWords(counter.miss, goal, say);
  const moved = value === from ? ', as it is,' : `, instead of ${from},`;
  return `At ${value}${moved} this ${thirdPerson(what)}${miss}.`;
}

/** Why none does: what it comes to over all that the term may be. */
function reachWords({ low, high, wanted }: CounterReach, goal: string, say: ScreenSay): string {
  const text = (value: number) =>
    goal === 'founderRate' ? say.percent(value) : say.money(Math.round(value));
  const does = goal === 'paidAtMost' ? 'it costs' : 'it leaves us';
  const [least, most] = [text(low), text(high)];
  return least === most
    ? `: ${does} ${least} whatever this term is, not ${text(wanted)}`
    : `: ${does} ${least} to ${most} by this term, not ${text(wanted)}`;
}

/** What the term's own grid leaves over; '' where nothing does. */
function missWords(miss: number, goal: string, say: ScreenSay): string {
  if (goal === 'founderRate') return Math.abs(miss) < 0.00005 ? '' : `, to ${say.percent(Math.abs(miss))}`;
  const amount = Math.round(Math.abs(miss));
  return amount === 0 ? '' : `, to within ${say.money(amount)}`;
}

function goalWords(plan: Plan, goal: string, say: ScreenSay): string {
  const { leastFounderRate, mostPaidAmount } = plan.ownership;
  if (goal === 'founderRate') return `leave us ${say.percent(Number(leastFounderRate))} of the company`;
  if (goal === 'paidAtMost') return `cost ${say.sum(mostPaidAmount ?? '0')}, ${SHARES_ASIDE},`;
  return `equal ${nameOf(plan, goal.slice('equals '.length))}`;
}

function thirdPerson(what: string): string {
  return what.replace(/^(leave|cost|equal)\b/, '$1s');
}
