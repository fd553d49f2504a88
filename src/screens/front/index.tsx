// The first view of a plan: the four verdicts, each with its figure, the reason that binds and the guess it leans on; then
// what comes when. From 900 px the inputs stand at the left, and the worst verdict's picture and the reasons at the right.
// Worked example: the first example shows Deal holds, Cash fails, and the one sentence it teaches.
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import { sevenOf } from '../../domain/quick/index.ts';
import type { VerdictName } from '../../domain/results.ts';
import { ButtonRow, LinkButton, useWide, VerdictRow } from '../../widgets/index.ts';
import { sevenHash } from '../seven/address.ts';
import { CautionsFor } from '../shared/cautions-for.tsx';
import { type Shown, useSession, useShown } from '../shared/session-context.ts';
import {
  leansOnWords,
  reasonAlone,
  VERDICT_NAMES,
  VERDICT_TITLES,
  VERDICT_WORDS,
} from '../shared/verdict-words.ts';
import { useTitle } from '../shared/view.tsx';
import { Reasons } from './reasons.tsx';
import { WhatComesWhen } from './what-comes-when.tsx';
import { WideInputs } from './wide-inputs.tsx';
import { WorstPicture } from './worst-picture.tsx';
import './front.css';

export function FrontScreen(): VNode | null {
  const shown = useShown();
  const wide = useWide();
  useTitle(shown?.plan.name ?? 'Plan');
  if (shown === null) return null;
  const { plan } = shown;
  return (
    <div class="ff-front">
      {wide && <WideInputs />}
      <div class="ff-front-main">
        <h1 class={wide ? 'ff-front-name' : 'ff-spoken'}>{plan.name}</h1>
        {plan.lesson !== '' && <p class="ff-front-lesson">{plan.lesson}</p>}
        <Verdicts shown={shown} />
        <Keys shown={shown} />
        <WhatComesWhen shown={shown} />
        {!wide && <CautionsFor place="front" accountId={null} />}
      </div>
      {wide && (
        <div class="ff-front-side">
          <WorstPicture shown={shown} />
          <Reasons shown={shown} />
          <CautionsFor place="front" accountId={null} />
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
            leansOn={leansOnWords(leans?.[name] ?? null) || undefined}
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
  const planId = plan.id;
  if (name === 'ladder')
    return hashOf({ view: name, planId, accountId, itemId: accountId === null ? null : itemId, sheet: null });
  if (name === 'deal') return hashOf({ view: name, planId, accountId, sheet: null });
  return hashOf({ view: name, planId, sheet: null });
}

/** Under an example: start yours. Under a plan of one's own: the seven numbers while they say it all, and all inputs. */
function Keys({ shown: { plan } }: { shown: Shown }): VNode {
  const session = useSession();
  const isExample = session.examples().some(({ id }) => id === plan.id);
  const inputs = hashOf({ view: 'inputs', planId: plan.id, sheet: null });
  if (isExample) {
    return (
      <div class="ff-front-keys">
        <ButtonRow>
          <LinkButton kind="primary" href={hashOf({ view: 'seven', sheet: null })}>
            Start yours: 7 numbers
          </LinkButton>
          <LinkButton href={hashOf({ view: 'plans', sheet: null })}>Other examples</LinkButton>
          <LinkButton kind="quiet" href={inputs}>
            Inputs
          </LinkButton>
        </ButtonRow>
      </div>
    );
  }
  return (
    <div class="ff-front-keys">
      <ButtonRow>
        {sevenOf(plan) !== null && <LinkButton href={sevenHash(plan.id)}>The seven numbers</LinkButton>}
        <LinkButton href={inputs}>All inputs</LinkButton>
      </ButtonRow>
    </div>
  );
}
