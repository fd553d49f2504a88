// Price points: endings below one, or a list of whole prices, typed with spaces between. What can't be read stays as it was
// typed, with what was expected. Worked example: "0.99 0.49" lets 4.83 move to 4.99.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { getAt } from '../../domain/plan/path.ts';
import { TextField } from '../../widgets/index.ts';
import { SwitchFor } from '../shared/field-for.tsx';
import { problemSentence } from '../shared/problem-words.ts';
import { usePlan, useSession } from '../shared/session-context.ts';
import { readNumber, textOf } from '../shared/typed-kinds.ts';

export function EndingsField({ path }: { path: string }): VNode {
  const session = useSession();
  const plan = usePlan();
  const [typed, setTyped] = useState<string | null>(null);
  const at = `${path}/endings`;
  const { currency } = plan;
  const kept = (getAt(plan, at) as readonly string[])
    .map((value) => textOf({ value, kind: 'amount', currency }))
    .join('  ');
  const read = typed === null ? null : readAll(typed, currency);
  const refused = session.problems.value.get(at)?.[0];
  return (
    <>
      <SwitchFor path={`${path}/listOfPrices`} label="A list of whole prices" />
      <TextField
        label="Endings, or prices"
        hint="With a space between, like 0.99 0.49"
        value={typed ?? kept}
        problem={read?.problem ?? (refused === undefined ? undefined : problemSentence(plan, refused))}
        onInput={(text) => {
          setTyped(text);
          const { values } = readAll(text, currency);
          if (values !== null) session.setField(at, values);
        }}
        onCommit={() => {
          if (read?.problem === undefined) setTyped(null);
          session.endStep();
        }}
      />
    </>
  );
}

function readAll(text: string, currency: string): { values: string[] | null; problem: string | undefined } {
  const parts = text.split(/[\s;]+/).filter((part) => part !== '');
  if (parts.length === 0) {
    return { values: null, problem: 'Endings, or prices: got nothing. Expected at least one, like 0.99.' };
  }
  const values: string[] = [];
  for (const part of parts) {
    const read = readNumber({ text: part, kind: 'amount', currency });
    if (read === null || !read.ok)
      return {
        values: null,
        problem: `Endings, or prices: got “${part}”. Expected amounts, like 0.99 0.49.`,
      };
    values.push(read.text);
  }
  return { values, problem: undefined };
}
