// What every kind of rung hands to its fields: how money is written, and what a move, a step and leaving the field do.
// Worked example: in dollars the prefix is "$"; in a locale that writes it behind, the suffix is.
import type { RungTarget } from '../../domain/ladder/rung-target.ts';
import type { StepDirection, StepKind } from '../../widgets/index.ts';
import { useSay } from '../shared/use-say.ts';
import type { Moves } from './moves.ts';
import type { ShownLadder } from './place.ts';

export interface RungFieldsProps {
  shown: ShownLadder;
  rung: string;
  locked: boolean;
  moves: Moves;
}

export function useRung({ rung, moves }: RungFieldsProps) {
  const say = useSay();
  return {
    say,
    prefix: say.look.money.before.trim() || undefined,
    suffix: say.look.money.after.trim() || undefined,
    move: (to: RungTarget) => moves.moveTo(rung, to),
    onStep: (direction: StepDirection, kind: StepKind) => moves.step(rung, direction, kind),
    onDone: moves.done,
  };
}
