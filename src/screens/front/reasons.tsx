// Beside the verdicts, from 900 px: what each verdict was judged by, in this plan's numbers, and the way to its lines.
// Worked example: Cash, "lowest −31,416.01 against a buffer of 13,665.18; fails below zero".
import type { VNode } from 'preact';
import { explain } from '../../domain/explain/index.ts';
import { sheetOfKey } from '../../domain/explain/keys.ts';
import { Button } from '../../widgets/index.ts';
import { useSession, useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { VERDICT_NAMES, VERDICT_TITLES } from '../shared/verdict-words.ts';

export function Reasons(): VNode | null {
  const session = useSession();
  const shown = useShown();
  const say = useSay();
  if (shown === null) return null;
  const { plan, results } = shown;
  return (
    <section aria-labelledby="reasons">
      <h2 id="reasons">How they were judged</h2>
      <dl class="ff-reasons">
        {VERDICT_NAMES.map((name) => (
          <div key={name} class="ff-reason">
            <dt class="ff-label">
              <Button
                kind="quiet"
                label={`Where ${VERDICT_TITLES[name]} comes from`}
                onPress={() => session.openSheet(sheetOfKey({ of: 'verdict', verdict: name }))}
              >
                {VERDICT_TITLES[name]}
              </Button>
            </dt>
            <dd class="ff-least">
              {explain({ plan, results, key: { of: 'verdict', verdict: name }, say })?.formula}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
