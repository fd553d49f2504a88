// The inputs as a page: everything a plan holds, each with its default's source. A section can also be opened over any
// other view (sheet.tsx). Worked example: from 900 px the groups stand beside each other.
import type { VNode } from 'preact';
import { hashOf } from '../../app/route.ts';
import { sevenOf } from '../../domain/quick/index.ts';
import { Disclosure, LinkButton } from '../../widgets/index.ts';
import { sevenHash } from '../seven/address.ts';
import { DefaultsList } from '../shared/defaults-list.tsx';
import { usePlan } from '../shared/session-context.ts';
import { View } from '../shared/view.tsx';
import { InputsList } from './list.tsx';

export function InputsScreen(): VNode {
  const plan = usePlan();
  return (
    <View title="Inputs" verdict={null}>
      {sevenOf(plan) !== null && (
        <p>
          <LinkButton href={sevenHash(plan.id)}>The seven numbers</LinkButton>
        </p>
      )}
      <p>
        <LinkButton href={hashOf({ view: 'bulk', planId: plan.id, table: null, sheet: null })}>
          Paste a table: doors, prices, seasonality, scans
        </LinkButton>
      </p>
      {plan.basis.length > 0 && (
        <Disclosure summary={`Defaults that stand in (${plan.basis.length})`}>
          <DefaultsList plan={plan} />
        </Disclosure>
      )}
      <InputsList />
    </View>
  );
}
