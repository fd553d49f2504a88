// What a view shows while the plan has no chain: the sentence, and the key that adds one.
// Worked example: "No chain yet. Add one to see what its terms cost."
import type { VNode } from 'preact';
import { Button, EmptyState } from '../../widgets/index.ts';
import { addBlankChain } from '../deal/chains.ts';
import { usePlan, useSession } from '../shared/session-context.ts';

export function NoChain({ sentence }: { sentence: string }): VNode {
  const session = useSession();
  const plan = usePlan();
  if (plan.accounts.length > 0) {
    return <EmptyState title="This can’t be computed yet. What stands in the way is named above." />;
  }
  return (
    <EmptyState title={sentence}>
      <Button kind="primary" onPress={() => addBlankChain(session)}>
        Add a chain
      </Button>
    </EmptyState>
  );
}
