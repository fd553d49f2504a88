// A week of the plan as a field: counted from 0, with the day it begins below. Worked example: 9 in a plan that starts on
// 2 March 2026 is read back as "begins 4 May".
import type { VNode } from 'preact';
import { getAt } from '../../domain/plan/path.ts';
import { FieldFor } from './field-for.tsx';
import { usePlan } from './session-context.ts';
import { useSay } from './use-say.ts';

export interface WeekForProps {
  path: string;
  label: string;
  /** For a week that may be left open: what an empty field means. */
  placeholder?: string | undefined;
}

export function WeekFor({ path, label, placeholder }: WeekForProps): VNode {
  const say = useSay();
  const week = getAt(usePlan(), path);
  return (
    <FieldFor
      path={path}
      label={label}
      kind="whole"
      prefix={typeof week === 'number' ? 'week' : undefined}
      step="one"
      placeholder={placeholder}
      hint={typeof week === 'number' ? `begins ${say.weekDay(week)}` : undefined}
    />
  );
}
