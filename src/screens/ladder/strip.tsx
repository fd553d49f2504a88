// The chosen rung: its value to type or step, whether it is locked, which rung gives way when it moves, and what it comes
// to. Worked example: a chain's margin of 33 % is read back as a markup of 49.3 %, and typing the markup moves the margin.
import type { VNode } from 'preact';
import { lockRung, solveFor, unlockRung } from '../../app/commands/rungs.ts';
import { mayGiveWay } from '../../domain/ladder/rungs.ts';
import { exact } from '../../domain/money/format.ts';
import { Button, ProblemNote, SelectField } from '../../widgets/index.ts';
import { problemSentence } from '../shared/problem-words.ts';
import { useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { MoveField } from './move-field.tsx';
import type { Moves } from './moves.ts';
import { bandOfRung, rungTitle } from './picture-rungs.ts';
import type { ShownLadder } from './place.ts';
import { type RungField as RungFieldData, rungFields } from './rung-fields.ts';
import { RungFigures } from './rung-figures.tsx';

export interface StripProps {
  shown: ShownLadder;
  rung: string;
  givesWay: string | null;
  /** Which rung is to give way from now on when this one moves. */
  onGivesWay: (rung: string) => void;
  moves: Moves;
}

/** The main field and the lock, in sight under the picture: on a phone they stay above the rail while it is looked at. */
export function StripBar({ shown, rung, moves }: StripProps): VNode | null {
  const say = useSay();
  const title = rungTitle(shown, rung);
  const locked = isLocked(shown, rung);
  const [main] = rungFields(shown, rung, say);
  if (main === undefined) return null;
  const named = title === main.label ? title : `${title}: ${lower(main.label)}`;
  return (
    <section class="ff-strip-bar" aria-label={`Chosen rung: ${title}`}>
      {locked ? (
        <p class="ff-strip-locked ff-label">{title} is locked: it stays where it is.</p>
      ) : (
        <RungField key={`${rung} ${main.label}`} field={main} label={named} moves={moves} rung={rung} steps />
      )}
      <LockKey shown={shown} rung={rung} title={title} locked={locked} />
    </section>
  );
}

/** What else there is to the chosen rung: the other ways of saying it, which rung gives way, what it comes to. */
export function StripMore(props: StripProps): VNode {
  const { shown, rung, moves } = props;
  const say = useSay();
  const title = rungTitle(shown, rung);
  const locked = isLocked(shown, rung);
  const [main, ...others] = rungFields(shown, rung, say);
  const refused = moves.refusal !== null && moves.refusal.rung === rung ? moves.refusal.problem : null;
  return (
    <section class="ff-strip" aria-label={`More about ${title}`}>
      <div aria-live="polite">
        {refused !== null && refused.code !== 'field-invalid' && (
          <ProblemNote>
            {title} stays where it is. {problemSentence(shown.plan, refused)}
          </ProblemNote>
        )}
        <Misses shown={shown} moves={moves} />
      </div>
      {!locked && main?.hint !== undefined && <p class="ff-least ff-quiet">{main.hint}</p>}
      {!locked &&
        others.map((field) => (
          <RungField
            key={`${rung} ${field.label}`}
            field={field}
            label={field.label}
            moves={moves}
            rung={rung}
            steps={false}
          />
        ))}
      {!locked && <GivesWay {...props} />}
      <RungFigures shown={shown} rung={rung} />
    </section>
  );
}

function isLocked({ listing }: ShownLadder, rung: string): boolean {
  return listing.lockedRungs.includes(rung);
}

function lower(text: string): string {
  return `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
}

interface RungFieldProps {
  field: RungFieldData;
  label: string;
  rung: string;
  moves: Moves;
  steps: boolean;
}

function RungField({ field, label, rung, moves, steps }: RungFieldProps): VNode {
  const { look } = useSay();
  const isMoney = field.kind === 'amount';
  return (
    <MoveField
      label={label}
      kind={field.kind}
      value={field.value}
      hint={steps ? undefined : field.hint}
      prefix={(isMoney && look.money.before.trim()) || undefined}
      suffix={(isMoney && look.money.after.trim()) || undefined}
      onMove={(text) => moves.moveTo(rung, field.target(text))}
      onStep={steps ? (direction, kind) => moves.step(rung, direction, kind) : undefined}
      onDone={moves.done}
    />
  );
}

interface LockKeyProps {
  shown: ShownLadder;
  rung: string;
  title: string;
  locked: boolean;
}

/** A locked rung never gives way. The one that does can't be locked. */
function LockKey({ shown, rung, title, locked }: LockKeyProps): VNode {
  const session = useSession();
  const ids = { accountId: shown.account.id, itemId: shown.item.id };
  const loose = shown.ladder.solvedRung === rung;
  return (
    <Button
      kind="plain"
      pressed={locked}
      disabled={loose}
      label={locked ? `Locked: ${title}` : `Lock ${title}`}
      onPress={() => {
        const at = `accounts/${ids.accountId}/listings/${ids.itemId}/lockedRungs`;
        session.run(locked ? unlockRung : lockRung, { ...ids, rung }, at);
        session.endStep();
      }}
    >
      {locked ? 'Locked' : 'Lock'}
    </Button>
  );
}

/** The rung that takes the difference, chosen here; a choice makes it the one the plan lets loose. */
function GivesWay({ shown, rung, givesWay, onGivesWay }: StripProps): VNode {
  const session = useSession();
  const free = mayGiveWay(shown, rung);
  if (givesWay === null)
    return <p class="ff-problem">Every other rung is locked: unlock one, so that it can give way.</p>;
  const choose = (next: string): void => {
    onGivesWay(next);
    if (next === 'landed' || next === shown.ladder.solvedRung || rung === shown.ladder.solvedRung) return;
    const ids = { accountId: shown.account.id, itemId: shown.item.id };
    const at = `accounts/${ids.accountId}/listings/${ids.itemId}/lockedRungs`;
    session.run(solveFor, { ...ids, rung: next, shown: shownRungs(shown) }, at);
    session.endStep();
  };
  const loose = rung === shown.ladder.solvedRung;
  const hint = loose
    ? 'It gives way itself now: once it is moved, this one does.'
    : givesWay === 'list'
      ? 'The list price takes the difference, and so does what we keep.'
      : givesWay === 'landed'
        ? 'Our margin stays; the goods must cost less, or may cost more.'
        : undefined;
  return (
    <SelectField
      label="Gives way"
      value={givesWay}
      choices={free.map((each) => ({ value: each, label: rungTitle(shown, each) }))}
      onChoose={choose}
      hint={hint}
    />
  );
}

/** What every rung came to, so that the picture stands still when another is let loose. */
function shownRungs({ results, account, ladder }: ShownLadder) {
  const own = results.ladders.filter(({ accountId }) => accountId === account.id);
  return {
    prices: Object.fromEntries(
      own.map((each) => [each.itemId, { list: each.list.toFixed(), shelf: each.shelf.toFixed() }]),
    ),
    handMarginRates: Object.fromEntries(ladder.hands.map((hand) => [hand.id, hand.marginRate.toFixed()])),
  };
}

/** Prices stand on a grid, tags on price points: how far the last move came out beside what was asked. */
function Misses({ shown, moves }: { shown: ShownLadder; moves: Moves }): VNode | null {
  const say = useSay();
  if (moves.misses.length === 0) return null;
  return (
    <ul class="ff-strip-misses ff-least ff-quiet">
      {moves.misses.map(({ rung, amount }) => {
        const way = amount.isNegative() ? 'below' : 'above';
        const size = exact(say.look, amount.abs().toSignificantDigits(3));
        const why = rung === 'shelf' && amount.abs().gt('0.0001') ? 'price points' : 'a grid of 0.0001';
        return (
          <li key={`${rung} ${why} ${bandOfRung(rung)}`}>
            {rungTitle(shown, rung)} comes out {size} {way} the exact value: it stands on {why}.
          </li>
        );
      })}
    </ul>
  );
}
