// The sheet that answers "where from?" of any figure: what it means, its formula with this plan's numbers, and the lines
// that made it, each leading on to its own figure or to the field it was typed into. The shell opens it for every view
// whose address ends in ?sheet=why:... Worked example: payback opens to money down, contribution a week, and "back in
// week 31"; money down opens to slotting, typed.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { explain } from '../../domain/explain/index.ts';
import { keyOfSheet, sheetOfKey } from '../../domain/explain/keys.ts';
import type { FigureKey } from '../../domain/explain/types.ts';
import { Button, Sheet } from '../../widgets/index.ts';
import type { ScreenSay } from './screen-say.ts';
import { type Shown, useSession, useShown } from './session-context.ts';
import { sayOf, useSay } from './use-say.ts';
import { Working } from './working.tsx';

/** The sheet for `why:` addresses; null for any other. */
export function WhereFromSheet(): VNode | null {
  const session = useSession();
  const shown = useShown();
  const [trail, setTrail] = useState<readonly FigureKey[]>([]);
  const key = keyOfSheet(session.route.value.sheet ?? '');
  if (key === null || shown === null) return null;
  const before = trail.at(-1);
  return (
    <Sheet title="Where from?" onClose={() => session.closeSheet()}>
      {before !== undefined && (
        <Button
          kind="quiet"
          onPress={() => {
            setTrail(trail.slice(0, -1));
            session.openSheet(sheetOfKey(before));
          }}
        >
          ‹ {titleOf(shown, before) ?? 'Back'}
        </Button>
      )}
      <Answer
        key={sheetOfKey(key)}
        figureKey={key}
        onOpen={(next) => {
          setTrail([...trail, key]);
          session.openSheet(sheetOfKey(next));
        }}
      />
    </Sheet>
  );
}

function titleOf({ plan, results }: Shown, key: FigureKey): string | null {
  return explain({ plan, results, key, say: sayOf(plan) })?.title ?? null;
}

interface AnswerProps {
  figureKey: FigureKey;
  onOpen: (key: FigureKey) => void;
}

function Answer({ figureKey, onOpen }: AnswerProps): VNode {
  const shown = useShown();
  const say = useSay();
  const answer =
    shown === null ? null : explain({ plan: shown.plan, results: shown.results, key: figureKey, say });
  if (shown === null || answer === null)
    return <p>This address names a figure that is not in this plan any more.</p>;
  return (
    <div class="ff-stack ff-why">
      <Working answer={{ ...answer, value: finestText(shown, figureKey, say) }} onOpen={onOpen} />
      <DocumentsOf figureKey={figureKey} onOpen={onOpen} />
    </div>
  );
}

/** Under a figure of one week: all that is dated in it. */
function DocumentsOf({ figureKey, onOpen }: AnswerProps): VNode | null {
  const say = useSay();
  const week = weekOfKey(figureKey);
  if (week === null) return null;
  return (
    <Button kind="quiet" onPress={() => onOpen({ of: 'documents', week })}>
      Documents of {say.week(week)}
    </Button>
  );
}

/** The one week a figure is about; null for others, and for the documents themselves. */
function weekOfKey(key: FigureKey): number | null {
  if (key.of === 'week') return key.run === 'plan' ? key.week : null;
  if (key.of === 'document') return key.week;
  const spans = key.of === 'statement' || key.of === 'event' || (key.of === 'flow' && key.run === 'plan');
  return spans && key.fromWeek === key.toWeek ? key.toWeek : null;
}

/** To the last decimal: workings are never coarser than the figure that was tapped. */
function finestText({ plan, results }: Shown, key: FigureKey, say: ScreenSay): string {
  const finer = { ...say, price: say.priceExact, money: say.moneyExact };
  return explain({ plan, results, key, say: finer })?.value ?? '';
}
