// How far every account is agreed: its rung, the chance that goes with it, how late it may come, and the papers that
// say so. A friendly word is no purchase order. Worked example: "Buyer said yes · 180 doors · 60 %" opens to its fields.
import type { VNode } from 'preact';
import { addPart } from '../../app/commands/field.ts';
import type { Account, Standing } from '../../domain/plan/index.ts';
import { chanceOf, RUNG_CHANCES } from '../../domain/promise/rungs.ts';
import { SelectField, WhereFrom } from '../../widgets/index.ts';
import { Fields, notesOf, Places, Trouble } from '../inputs/fields.tsx';
import { count, share, text } from '../inputs/specs.ts';
import { today } from '../shared/moment.ts';
import { Fold, useRemoval } from '../shared/parts.tsx';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { useWhy } from '../shared/view.tsx';
import { AS_PLANNED, doorsText, RUNG_WORDS, RUNGS, rungText, slipText } from './words.ts';

/** Slips of a standing that was just begun (judgement): late more often than early, by a month or two at most. */
const SLIP_LIKELY_WEEKS = 2;
const SLIP_MOST_WEEKS = 8;
const SLIP_SOURCE = 'Openings come later than said more often than sooner; how much later is judgement';
const SLIP_GUESSES = ['slipLikelyWeeks', 'slipMostWeeks'].map((field) => ({
  field,
  source: SLIP_SOURCE,
  low: null,
  high: null,
}));

export interface AccountStandingProps {
  account: Account;
  /** What hangs on it; '' while that isn't known. */
  note: string;
  /** Doors that may be expected of it by the claim's date; null without a claim. */
  expected: number | null;
}

export function AccountStanding({ account, note, expected }: AccountStandingProps): VNode {
  const say = useSay();
  const why = useWhy();
  const { standing } = account;
  const chance = standing === null ? '' : ` · ${say.percent(chanceOf(account))}`;
  return (
    <Fold label={account.name} value={`${rungText(standing)} · ${doorsText(account, say)}${chance}`}>
      <div class="ff-stack">
        {expected !== null && (
          <p>
            Doors to be expected then:{' '}
            <WhereFrom open={why({ of: 'claimDoors', accountId: account.id })}>
              {say.number(Math.round(expected * 10) / 10)}
            </WhereFrom>
          </p>
        )}
        {note !== '' && <p class="ff-least">{note}</p>}
        <StandingEditor account={account} />
      </div>
    </Fold>
  );
}

/** The fields, which the inputs show too. */
export function StandingEditor({ account }: { account: Account }): VNode {
  const { standing } = account;
  return (
    <>
      <Rung account={account} />
      {standing !== null && <StandingFields account={account} standing={standing} />}
    </>
  );
}

function Rung({ account }: { account: Account }): VNode {
  const session = useSession();
  const removal = useRemoval();
  const { standing } = account;
  const path = `accounts/${account.id}/standing`;
  const choose = (value: string): void => {
    session.endStep();
    const rung = RUNGS.find((each) => each === value);
    if (rung === undefined) {
      if (standing !== null)
        removal.remove(takenOut(standing), () =>
          session.run(addPart, { path, value: null, notes: [] }, path),
        );
    } else if (standing === null) {
      session.run(addPart, { path, value: blankStanding(rung), notes: notesOf(path, SLIP_GUESSES) }, path);
    } else session.setField(`${path}/rung`, rung);
    session.endStep();
  };
  return (
    <div>
      <SelectField
        label="How far it is agreed"
        value={standing?.rung ?? ''}
        choices={[
          { value: '', label: AS_PLANNED },
          ...RUNGS.map((rung) => ({ value: rung, label: RUNG_WORDS[rung] })),
        ]}
        hint={standing === null ? 'Its doors count as certain, on the planned day.' : undefined}
        onChoose={choose}
      />
      <Trouble path={path} />
      {removal.note}
    </div>
  );
}

function takenOut({ papers }: Standing): string {
  if (papers.length === 0) return 'How far it is agreed';
  return `How far it is agreed, with ${papers.length === 1 ? 'a paper' : `${papers.length} papers`},`;
}

function StandingFields({ account, standing }: { account: Account; standing: Standing }): VNode {
  const base = `accounts/${account.id}/standing`;
  const usual = `${100 * RUNG_CHANCES[standing.rung]}`;
  return (
    <>
      <Fields
        base={base}
        specs={[
          share('chance', 'Chance that it opens', {
            placeholder: usual,
            step: 'depth',
            hint: `Empty: ${usual} %, as usual here for “${RUNG_WORDS[standing.rung].toLowerCase()}”. Judgement, no source.`,
          }),
          count('slipLikelyWeeks', 'Most likely late by', 'weeks', { step: 'one' }),
          count('slipMostWeeks', 'Late by at most', 'weeks', { step: 'one' }),
        ]}
      />
      <Fold
        label="Papers"
        value={standing.papers.length === 0 ? 'none' : String(standing.papers.length)}
        open={standing.papers.length > 0}
      >
        <Places
          listPath={`${base}/papers`}
          nameOf={(_, index) => `Paper ${index + 1}`}
          addLabel="Add a paper"
          blank={(id) => ({ id, date: today(), who: '', what: 'Order, letter or note of a call' })}
        >
          {(path) => (
            <Fields
              base={path}
              specs={[
                { field: 'date', label: 'Dated', kind: 'date' },
                text('who', 'From whom'),
                text('what', 'What it says'),
              ]}
            />
          )}
        </Places>
      </Fold>
      {slipText(standing) !== '' && <p class="ff-least ff-quiet">Opens {slipText(standing)}.</p>}
    </>
  );
}

function blankStanding(rung: Standing['rung']): Standing {
  return {
    rung,
    chance: null,
    slipLikelyWeeks: SLIP_LIKELY_WEEKS,
    slipMostWeeks: SLIP_MOST_WEEKS,
    papers: [],
  };
}
