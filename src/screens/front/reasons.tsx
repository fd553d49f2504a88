// Beside the verdicts, from 900 px: each verdict's sentence in full, what it leans on, and the way to how it is judged.
// Worked example: "Fails. Short by 12,300 in week 9. Most of it went on stock. How it is judged".
import type { VNode } from 'preact';
import { sheetOfKey } from '../../domain/explain/keys.ts';
import { Button } from '../../widgets/index.ts';
import { type Shown, useSession } from '../shared/session-context.ts';
import { leansOnWords, VERDICT_NAMES, VERDICT_TITLES } from '../shared/verdict-words.ts';

export function Reasons({ shown }: { shown: Shown }): VNode {
  const session = useSession();
  return (
    <section aria-labelledby="reasons">
      <h2 id="reasons">Why</h2>
      <dl class="ff-reasons">
        {VERDICT_NAMES.map((name) => (
          <div key={name}>
            <dt class="ff-label ff-quiet">{VERDICT_TITLES[name]}</dt>
            <dd>
              {shown.results.verdicts[name].reason} {leansOnWords(session.leans.value?.[name] ?? null)}{' '}
              <Button
                kind="quiet"
                label={`How ${VERDICT_TITLES[name]} is judged`}
                onPress={() => session.openSheet(sheetOfKey({ of: 'verdict', verdict: name }))}
              >
                How it is judged
              </Button>
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
