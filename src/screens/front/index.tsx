// The first view of a plan: the four verdicts, each with its figure, the reason that binds and the guess it leans on; then
// what comes when. From 900 px the inputs stand at the left, and the worst verdict's picture and the reasons at the right.
// It is what a first start shows, so it imports no more than that needs; what stands beside it is fetched.
// Worked example: the first example shows Deal holds, Cash fails, and the one sentence it teaches.
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import type { VerdictName } from '../../domain/results.ts';
import { ButtonRow, LinkButton } from '../../widgets/Buttons.tsx';
import { VerdictRow } from '../../widgets/Figure.tsx';
import { useWide } from '../../widgets/media.ts';
import { LazyScreen } from '../shared/lazy-screen.tsx';
import { type Shown, useIsExample, useSession, useShown } from '../shared/session-context.ts';
import { useTitle } from '../shared/title.ts';
import {
  leansOnWords,
  reasonAlone,
  VERDICT_NAMES,
  VERDICT_TITLES,
  VERDICT_WORDS,
} from '../shared/verdict-words.ts';
import './front.css';

export function FrontScreen(): VNode | null {
  const shown = useShown();
  const wide = useWide();
  useTitle(shown?.plan.name ?? 'Plan');
  if (shown === null) return null;
  const { plan } = shown;
  return (
    <div class="ff-front">
      {wide && (
        <section class="ff-front-inputs" aria-label="Inputs">
          <LazyScreen name="inputsList" quiet />
        </section>
      )}
      <div class="ff-front-main">
        <h1 class={wide ? 'ff-front-name' : 'ff-spoken'}>{plan.name}</h1>
        {plan.lesson !== '' && <p class="ff-front-lesson">{plan.lesson}</p>}
        <Verdicts shown={shown} />
        <LazyScreen name="frontReadiness" quiet />
        <Keys />
        <LazyScreen name="frontTurns" quiet />
        {!wide && <LazyScreen name="frontFoot" quiet />}
      </div>
      {wide && (
        <div class="ff-front-side">
          <LazyScreen name="frontSide" quiet />
        </div>
      )}
    </div>
  );
}

function Verdicts({ shown }: { shown: Shown }): VNode {
  const session = useSession();
  const leans = session.leans.value;
  return (
    <section class="ff-front-verdicts" aria-label="Verdicts">
      {VERDICT_NAMES.map((name) => {
        const { state, figure, reason } = shown.results.verdicts[name];
        return (
          <VerdictRow
            key={name}
            verdict={state}
            name={VERDICT_TITLES[name]}
            word={VERDICT_WORDS[state]}
            figure={figure}
            reason={reasonAlone(reason)}
            leansOn={leansOnWords(leans?.[name] ?? null, shown.plan.currency) || undefined}
            older={shown.older}
            href={hrefOf(name, shown)}
          />
        );
      })}
    </section>
  );
}

/** A verdict about one chain, or one product there, leads to it. */
function hrefOf(name: VerdictName, { plan, results }: Shown): string {
  const { accountId, itemId } = results.verdicts[name];
  const at = { planId: plan.id, sheet: null };
  if (name === 'ladder') {
    return hashOf({ ...at, view: name, accountId, itemId: accountId === null ? null : itemId });
  }
  return name === 'deal' ? hashOf({ ...at, view: name, accountId }) : hashOf({ ...at, view: name });
}

/** Under an example: start yours. Under a plan of one's own: the seven numbers while they say it all, and all inputs. */
function Keys(): VNode {
  const isExample = useIsExample();
  return (
    <div class="ff-front-keys">
      {isExample ? (
        <ButtonRow>
          <LinkButton kind="primary" href={hashOf({ view: 'seven', sheet: null })}>
            Start yours: 7 numbers
          </LinkButton>
          <LinkButton href={hashOf({ view: 'plans', sheet: null })}>Other examples</LinkButton>
        </ButtonRow>
      ) : (
        <LazyScreen name="ownKeys" quiet />
      )}
    </div>
  );
}
