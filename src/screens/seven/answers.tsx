// The answers in sentences, as far as the numbers typed give them, and every default that stands in for what wasn't asked.
// Worked example: with six numbers the deal's sentence is there, and the cash it needs with its week.
import type { VNode } from 'preact';
import type { VerdictName } from '../../domain/results.ts';
import { Disclosure, ProblemNote, VerdictLine } from '../../widgets/index.ts';
import { DefaultsList } from '../shared/defaults-list.tsx';
import type { SevenModel } from './model.ts';

export function SevenAnswers({ model }: { model: SevenModel }): VNode {
  const { results, parts, plan, trouble } = model;
  const names: VerdictName[] = [
    ...(parts.includes('ladder') ? (['ladder'] as const) : []),
    ...(parts.includes('deal') ? (['deal'] as const) : []),
    ...(parts.includes('cashNeed') ? (['cash'] as const) : []),
  ];
  return (
    <div class="ff-stack">
      {trouble !== '' && <ProblemNote>{trouble}</ProblemNote>}
      {results !== null && names.length > 0 && (
        <section aria-label="The answer" class="ff-seven-answers">
          {names.map((name) => (
            <VerdictLine
              key={name}
              verdict={results.verdicts[name].state}
              text={results.verdicts[name].reason}
            />
          ))}
        </section>
      )}
      {plan !== null && (
        <Disclosure summary={`What stands in for what wasn’t asked (${plan.basis.length})`}>
          <DefaultsList plan={plan} />
        </Disclosure>
      )}
    </div>
  );
}
