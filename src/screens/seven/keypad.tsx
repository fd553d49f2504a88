// The keypad under the rows: it types into the row that is active, Next goes on, Done puts it away.
// Worked example: with Stores active, 6 0 Next leaves 60 and makes the rate of sale active.
import type { VNode } from 'preact';
import type { SevenKey } from '../../domain/quick/index.ts';
import { Keypad } from '../../widgets/index.ts';
import { browserLook } from '../shared/screen-say.ts';
import type { SevenModel } from './model.ts';
import { rowOf, SEVEN_ROWS } from './rows.ts';

export interface SevenKeypadProps {
  model: SevenModel;
  active: SevenKey;
  onActive: (key: SevenKey | null) => void;
}

export function SevenKeypad({ model, active, onActive }: SevenKeypadProps): VNode {
  const index = SEVEN_ROWS.findIndex(({ key }) => key === active);
  const next = SEVEN_ROWS[index + 1];
  return (
    <div class="ff-seven-keypad">
      <Keypad
        label={`Keypad for ${rowOf(active).label}`}
        value={model.texts[active]}
        separator={browserLook(model.currency).decimal === ',' ? ',' : '.'}
        onInput={(text) => model.type(active, text)}
        onNext={next === undefined ? undefined : () => document.getElementById(`seven-${next.key}`)?.focus()}
        onDone={() => {
          const focused = document.activeElement;
          if (focused instanceof HTMLElement) focused.blur();
          model.leave();
          onActive(null);
        }}
      />
    </div>
  );
}
