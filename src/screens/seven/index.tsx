// Seven numbers on one screen, in any order; answers appear as the numbers they need are there. On a phone: header 44,
// verdicts 56, seven rows of 44, our own keypad, so that no device keyboard ever covers the answer. From 900 px real
// boxes at the left and the answer at the right.
// Worked example: 4.99, 1.10 and 42 give the ladder; 0, 60 and 6 the deal; 36k the cash.
import type { VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { hashOf } from '../../app/route.ts';
import type { SevenKey } from '../../domain/quick/index.ts';
import { EmptyState, Header, LinkButton, useWide } from '../../widgets/index.ts';
import { useSession } from '../shared/session-context.ts';
import { useTitle } from '../shared/title.ts';
import { editedPlan } from './address.ts';
import { SevenAnswers } from './answers.tsx';
import { SevenKeypad } from './keypad.tsx';
import type { SevenModel } from './model.ts';
import { useNewSeven } from './new-model.ts';
import { NewOptions, PlanOptions } from './options.tsx';
import { usePlanSeven } from './plan-model.ts';
import { SevenRows } from './seven-rows.tsx';
import { SevenStrip } from './seven-strip.tsx';
import './seven.css';

export function SevenScreen(): VNode {
  const planId = editedPlan(useSession().route.value.sheet);
  return planId === null ? <NewPlan /> : <OfPlan key={planId} planId={planId} />;
}

function NewPlan(): VNode {
  const model = useNewSeven();
  useTitle('Seven numbers');
  if (model === null) return <p class="ff-starting ff-quiet">Opening …</p>;
  return (
    <Layout
      model={model}
      name="Seven numbers"
      back={{ href: hashOf({ view: 'plans', sheet: null }), label: 'Plans' }}
      options={<NewOptions model={model} />}
    />
  );
}

function OfPlan({ planId }: { planId: string }): VNode {
  const session = useSession();
  const model = usePlanSeven(planId);
  useTitle(`Seven numbers · ${session.plan.value?.name ?? ''}`);
  useEffect(() => {
    void session.openPlan(planId);
  }, [planId, session]);
  const front = hashOf({ view: 'front', planId, sheet: null });
  if (model === null) {
    return (
      <EmptyState title="This plan holds more than seven numbers by now: its inputs have them all.">
        <LinkButton kind="primary" href={hashOf({ view: 'inputs', planId, sheet: null })}>
          Inputs
        </LinkButton>
        <LinkButton href={front}>Verdicts</LinkButton>
      </EmptyState>
    );
  }
  const name = session.plan.value?.name ?? 'Seven numbers';
  return (
    <Layout
      model={model}
      name={name}
      back={{ href: front, label: 'Verdicts' }}
      options={<PlanOptions model={model} planId={planId} />}
    />
  );
}

interface LayoutProps {
  model: SevenModel;
  name: string;
  back: { href: string; label: string };
  /** Names, route and region; at the foot the way to keep it. */
  options: VNode;
}

function Layout({ model, name, back, options }: LayoutProps): VNode {
  const wide = useWide();
  const [active, setActive] = useState<SevenKey | null>(null);
  const keypadOpen = active !== null && !wide;
  return (
    <div class="ff-seven">
      <Header name={name} href={back.href}>
        <a class="ff-head-link" href={back.href}>
          {back.label}
        </a>
      </Header>
      <h1 class="ff-spoken">Seven numbers</h1>
      <SevenStrip model={model} />
      <div class="ff-seven-body">
        <SevenRows model={model} active={active} onActive={setActive} wide={wide} />
        <div class="ff-seven-rest">
          <SevenAnswers model={model} />
          {options}
        </div>
      </div>
      {keypadOpen && <SevenKeypad model={model} active={active} onActive={setActive} />}
    </div>
  );
}
