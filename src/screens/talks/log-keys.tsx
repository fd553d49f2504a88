// One tap keeps the whole draft with who said it and when: They ask, We offer, Agreed. Each key says when it was last
// pressed, so that a tap is seen to have counted. Worked example: "They ask / 14:05".
import type { VNode } from 'preact';
import { stamp } from '../../app/commands/talks.ts';
import type { OfferSaid } from '../../domain/plan/index.ts';
import { useSession } from '../shared/session-context.ts';
import type { TalksModel } from './model.ts';
import { timeText } from './times.ts';

const KEYS: readonly { said: OfferSaid['said']; label: string }[] = [
  { said: 'ask', label: 'They ask' },
  { said: 'ours', label: 'We offer' },
  { said: 'agreed', label: 'Agreed' },
];

export function LogKeys({ model: { account, table } }: { model: TalksModel }): VNode {
  const session = useSession();
  const press = (said: OfferSaid['said']): void => {
    const id = session.newId();
    const atSeconds = Math.floor(Date.now() / 1000);
    session.endStep();
    session.run(stamp, { accountId: account.id, said, id, atSeconds }, 'talks/log');
    session.endStep();
  };
  return (
    <div class="ff-talks-log">
      {KEYS.map(({ said, label }) => {
        const last = table.log.findLast((offer) => offer.said === said);
        return (
          <button key={said} type="button" class="ff-talks-key" onClick={() => press(said)}>
            <span class="ff-talks-key-label">{label}</span>
            {last !== undefined && (
              <span class="ff-least ff-number">
                <span class="ff-spoken">, last at </span>
                {timeText(last.atSeconds)}
              </span>
            )}
          </button>
        );
      })}
    </div>
  );
}
