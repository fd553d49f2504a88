// Moving a rung from the screen: typed, stepped or dragged. A move is worked out first and put into the plan only when it
// fits; one that doesn't is refused with a sentence that names the rung in the way, and nothing changes.
// Worked example: a drag is worked out from where it began, however many moves the finger made, and is one undo.
import { useRef, useState } from 'preact/hooks';
import { moveRung, type RungMove, type RungMoved } from '../../domain/ladder/move-rung.ts';
import type { RungTarget } from '../../domain/ladder/rung-target.ts';
import { stepRung } from '../../domain/ladder/step-rung.ts';
import { type Decimal, dec } from '../../domain/money/decimal.ts';
import type { Plan } from '../../domain/plan/index.ts';
import { fine, type Outcome, type Problem } from '../../domain/problems.ts';
import type { DragPhase, StepDirection, StepKind } from '../../widgets/index.ts';
import { useSession } from '../shared/session-context.ts';
import { stepped } from '../shared/steps.ts';
import type { ShownLadder } from './place.ts';

export interface Refusal {
  rung: string;
  problem: Problem;
}

export interface Moves {
  refusal: Refusal | null;
  /** What the grids kept the last move from; empty after any other edit. */
  misses: RungMoved['misses'];
  moveTo: (rung: string, to: RungTarget) => Problem | null;
  step: (rung: string, direction: StepDirection, kind: StepKind) => void;
  drag: (rung: string, delta: number, phase: DragPhase) => void;
  done: () => void;
}

interface Drag {
  plan: Plan;
  from: Decimal;
  last: string;
}

/** Moves of one ladder; `givesWayOf` names the rung that takes the difference, null when all others are locked. */
export function useMoves(shown: ShownLadder, givesWayOf: (rung: string) => string | null): Moves {
  const session = useSession();
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [moved, setMoved] = useState<{ revision: number; misses: RungMoved['misses'] } | null>(null);
  const drag = useRef<Drag | null>(null);
  const ids = { accountId: shown.account.id, itemId: shown.item.id };

  const settle = (rung: string, outcome: Outcome<RungMoved>): Problem | null => {
    const [problem] = outcome.ok ? [] : outcome.problems;
    if (!outcome.ok) {
      setRefusal(problem ? { rung, problem } : null);
      return problem ?? null;
    }
    setRefusal(null);
    const at = `accounts/${ids.accountId}/listings/${ids.itemId}/${rung}`;
    session.run((_, next: Plan) => fine(next), outcome.value.plan, at);
    setMoved({ revision: session.revision.value, misses: outcome.value.misses });
    return session.problems.value.get(at)?.[0] ?? null;
  };

  const withGivesWay = (rung: string, move: (givesWay: string) => Outcome<RungMoved>): Problem | null => {
    const givesWay = givesWayOf(rung);
    if (givesWay !== null) return settle(rung, move(givesWay));
    const problem = allLocked(ids);
    setRefusal({ rung, problem });
    return problem;
  };

  const moveTo = (rung: string, to: RungTarget): Problem | null =>
    withGivesWay(rung, (givesWay) => moveRung(openPlan(), { ...ids, rung, to, givesWay }));

  const step = (rung: string, direction: StepDirection, kind: StepKind): void => {
    if (!kind.repeat) session.endStep();
    if (kind.fine) {
      moveTo(rung, tenthOfStep(shown, rung, direction));
      return;
    }
    const way = direction === 1 ? 'up' : 'down';
    withGivesWay(rung, (givesWay) => stepRung(openPlan(), { ...ids, rung, way, givesWay }));
  };

  const openPlan = (): Plan => session.plan.value ?? shown.plan;

  const follow = (rung: string, delta: number): void => {
    const { current } = drag;
    if (current === null) return;
    const amount = draggedTo(current.from, delta, shown.results.minorDigits);
    if (amount === current.last) return;
    current.last = amount;
    const to: RungTarget = { by: 'price', amount };
    withGivesWay(rung, (givesWay) => moveRung(current.plan, { ...ids, rung, to, givesWay }));
  };

  const onDrag: Moves['drag'] = (rung, delta, phase) => {
    if (phase === 'start') {
      session.endStep();
      drag.current = { plan: openPlan(), from: priceOf(shown, rung), last: '' };
      return;
    }
    if (phase === 'cancel') {
      if (drag.current !== null && drag.current.last !== '') session.undo();
    } else {
      follow(rung, delta);
    }
    if (phase !== 'move') {
      drag.current = null;
      session.endStep();
    }
  };

  const misses = moved !== null && moved.revision === session.revision.value ? moved.misses : [];
  return { refusal, misses, moveTo, step, drag: onDrag, done: () => session.endStep() };
}

/** The price a rung stands at: what is above it starts there. */
function priceOf({ ladder }: ShownLadder, rung: string): Decimal {
  if (rung === 'landed') return ladder.landed.unit;
  if (rung === 'list') return ladder.list;
  if (rung === 'shelf') return ladder.shelf;
  return ladder.hands.find(({ id }) => id === rung)?.sells ?? ladder.shelfBeforeTax;
}

/** Prices under a finger go by whole minor units, and never below nothing. */
function draggedTo(from: Decimal, delta: number, minorDigits: number): string {
  const to = from.plus(dec(delta.toFixed(6))).toDecimalPlaces(minorDigits);
  return (to.isNegative() ? dec(0) : to).toFixed();
}

/** With Shift held: a tenth of a point of a margin, a cent of a price. */
function tenthOfStep(shown: ShownLadder, rung: string, direction: StepDirection): RungTarget {
  const rule = shown.account.hands.find(({ id }) => id === rung)?.rule;
  const hand = shown.ladder.hands.find(({ id }) => id === rung);
  if (!rule || !hand) {
    const value = priceOf(shown, rung).toFixed();
    return { by: 'price', amount: stepped({ value, step: 'tag', direction, fine: true, least: 0 }) };
  }
  if (rule.by === 'fixed') {
    const amount = stepped({ value: rule.amount, step: 'sum', direction, fine: true, least: 0 });
    return { by: 'fixed', amount: dec(amount).toDecimalPlaces(4).toFixed(), per: rule.per };
  }
  const value = rule.by === 'solved' ? hand.marginRate.toFixed() : rule.rate;
  const rate = stepped({ value, step: 'margin', direction, fine: true, least: 0 });
  return { by: rule.by === 'markup' ? 'markup' : 'margin', rate };
}

function allLocked({ accountId, itemId }: Pick<RungMove, 'accountId' | 'itemId'>): Problem {
  return {
    code: 'rung-unsolvable',
    path: `accounts/${accountId}/listings/${itemId}/lockedRungs`,
    got: 'every other rung locked',
    expected: 'at least one other rung that is not locked, to give way',
  };
}
