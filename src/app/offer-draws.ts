// Rival offers on draws of the plan's range, while a view that shows them is open: asked of the worker slice by slice after
// a pause, so that other work waits for one slice at most and an edit makes the rest unasked. What was found stands, marked
// older, until the newer one is whole.
// Worked example: five edits within a second are drawn once, the last; leaving the view ends it after the slice under way.
import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { Basis } from '../domain/offers/basis.ts';
import { futuresOf, OFFER_DRAWS } from '../domain/offers/futures.ts';
import type { DrawnOffers, FutureOutcome, Futures } from '../domain/offers/types.ts';
import type { Plan } from '../domain/plan/index.ts';
import type { Job, Session } from './session.ts';

export type FutureName = FutureOutcome['name'];

export interface OfferDrawsView {
  /** Null before anything was drawn of this plan. */
  found: FoundFutures | null;
  /** Draws run of what is under way; null: nothing is. */
  running: number | null;
  /** Of the plan before the last edit. */
  older: boolean;
  /** A sentence, where the last one asked for came to nothing. */
  trouble: string;
}

export interface FoundFutures {
  futures: Futures;
  /** What offers are computed on in the three of them. */
  bases: { name: FutureName; basis: Basis }[];
}

export interface OfferDrawsWork {
  view: ReadonlySignal<OfferDrawsView>;
  /** Draws what is shown, and what it becomes, until the function it returns is called. */
  follow: () => () => void;
}

type Watched = Pick<Session, 'plan' | 'results' | 'revision' | 'compute'>;

const PAUSE_MS = 400;

const works = new WeakMap<Watched, OfferDrawsWork>();

/** The one of a session, whichever views show it. */
export function offerDrawsFor(session: Watched): OfferDrawsWork {
  const known = works.get(session);
  if (known) return known;
  const made = makeOfferDraws(session);
  works.set(session, made);
  return made;
}

interface Told {
  plan: Plan;
  found: FoundFutures | null;
  trouble: string;
}

export function makeOfferDraws({ plan, results, revision, compute }: Watched): OfferDrawsWork {
  const watchers = signal(0);
  const told = signal<Told | null>(null);
  const running = signal<number | null>(null);
  let wanted: Plan | null = null;

  const end = (now: Told | null = null): void => {
    running.value = null;
    wanted = null;
    if (now !== null) told.value = now;
  };
  /** Null where another plan is wanted meanwhile, the worker was stopped, or there is trouble, which is told. */
  const ask = async <J extends Job>(of: Plan, job: J) => {
    const answer = await compute(job).answer;
    if (wanted !== of) return null;
    if (answer?.ok) return answer.value;
    end(answer && { plan: of, found: null, trouble: answer.trouble });
    return null;
  };
  const draw = async (of: Plan): Promise<void> => {
    const drawn: DrawnOffers[] = [];
    running.value = 0;
    while (drawn.length < OFFER_DRAWS) {
      const slice = await ask(of, { kind: 'offerDraws', plan: of, from: drawn.length });
      if (slice === null) return;
      drawn.push(...slice);
      running.value = drawn.length;
    }
    const futures = futuresOf(drawn);
    const draws = futures.outcomes.map((outcome) => outcome.draw);
    const found = await ask(of, { kind: 'offerBases', plan: of, draws });
    if (found === null) return;
    const bases = futures.outcomes.flatMap(({ name }, at) => {
      const basis = found[at] ?? null;
      return basis === null ? [] : [{ name, basis }];
    });
    end({ plan: of, found: { futures, bases }, trouble: '' });
  };
  let pause: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    const now = plan.value;
    const isCurrent = now !== null && results.value?.revision === revision.value;
    const isWanted = watchers.value > 0 && isCurrent && now.offers.length > 0;
    if (isWanted && now === wanted) return;
    clearTimeout(pause);
    wanted = null;
    running.value = null;
    if (!isWanted || now === told.peek()?.plan) return;
    pause = setTimeout(() => {
      wanted = now;
      void draw(now);
    }, PAUSE_MS);
  });
  return {
    view: computed(() => {
      const at = told.value?.plan.id === plan.value?.id ? told.value : null;
      const older = at !== null && at.plan !== plan.value;
      return {
        found: at?.found ?? null,
        running: running.value,
        older,
        trouble: older ? '' : (at?.trouble ?? ''),
      };
    }),
    follow: () => {
      watchers.value += 1;
      return () => {
        watchers.value -= 1;
      };
    },
  };
}
