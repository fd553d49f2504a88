// The keys of one place in a list of the plan: up and down where the order counts, and take out.
// Worked example: the second of three cost lines can go up, down, or away.
import type { VNode } from 'preact';
import { movePlace } from '../../app/commands/field.ts';
import { Button } from '../../widgets/index.ts';
import { Keys } from '../shared/parts.tsx';
import { useSession } from '../shared/session-context.ts';

export interface PlaceKeysProps {
  path: string;
  /** What it is called, for screen readers. */
  name: string;
  /** Its index and the list's length, where the order counts; null where it doesn't. */
  order: { index: number; count: number } | null;
  onRemove: () => void;
  /** Why it has to stay; undefined when it hasn't. */
  kept?: string | undefined;
}

export function PlaceKeys({ path, name, order, onRemove, kept }: PlaceKeysProps): VNode {
  const session = useSession();
  const move = (toIndex: number): void => {
    session.endStep();
    session.run(movePlace, { path, toIndex }, path);
    session.endStep();
  };
  return (
    <>
      <Keys>
        {order !== null && order.count > 1 && (
          <>
            <Button
              onPress={() => move(order.index - 1)}
              disabled={order.index === 0}
              label={`Move ${name} up`}
            >
              Up
            </Button>
            <Button
              onPress={() => move(order.index + 1)}
              disabled={order.index === order.count - 1}
              label={`Move ${name} down`}
            >
              Down
            </Button>
          </>
        )}
        <Button onPress={onRemove} disabled={kept !== undefined} label={`Take out ${name}`}>
          Take out
        </Button>
      </Keys>
      {kept !== undefined && <p class="ff-least ff-quiet">{kept}</p>}
    </>
  );
}
