// All inputs of a plan, grouped by chain, product and business; each section opens in place and is drawn when it opens.
// Worked example: a plan of two chains and one product has 18 + 6 + 7 sections.
import type { ComponentChildren, VNode } from 'preact';
import { useId } from 'preact/hooks';
import {
  CHAIN_SECTIONS,
  type InputPlace,
  PLAN_SECTIONS,
  PRODUCT_SECTIONS,
  sheetOfPath,
  sheetOfPlace,
} from '../shared/input-places.ts';
import { Fold } from '../shared/parts.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { SECTION_TITLES, Section } from './section.tsx';
import { sectionWords } from './section-words.ts';
import { AddChain, AddProduct, TakeOut } from './whole-parts.tsx';

export function InputsList(): VNode {
  const plan = usePlan();
  return (
    <div class="ff-inputs">
      {plan.accounts.length === 0 && <AddChain />}
      {plan.accounts.map(({ id, name }, index) => (
        <Group key={id} name={name} places={CHAIN_SECTIONS.map((section) => ({ of: 'chain', section, id }))}>
          <TakeOut of="chain" id={id} name={name} />
          {index === plan.accounts.length - 1 && <AddChain />}
        </Group>
      ))}
      {plan.items.map(({ id, name }, index) => (
        <Group
          key={id}
          name={name}
          places={PRODUCT_SECTIONS.map((section) => ({ of: 'product', section, id }))}
        >
          {plan.items.length > 1 && <TakeOut of="product" id={id} name={name} />}
          {index === plan.items.length - 1 && <AddProduct />}
        </Group>
      ))}
      <Group name="Business" places={PLAN_SECTIONS.map((section) => ({ of: 'plan', section }))} />
    </div>
  );
}

interface GroupProps {
  name: string;
  places: readonly InputPlace[];
  children?: ComponentChildren;
}

function Group({ name, places, children }: GroupProps): VNode {
  const id = useId();
  return (
    <section class="ff-inputs-group" aria-labelledby={id}>
      <h2 id={id}>{name}</h2>
      {places.map((place) => (
        <OpenSection key={sheetOfPlace(place)} place={place} />
      ))}
      {children}
    </section>
  );
}

/** Says what is in it; marked instead when a text in it was not accepted. */
function OpenSection({ place }: { place: InputPlace }): VNode {
  const session = useSession();
  const plan = usePlan();
  const say = useSay();
  const isWrong = useHasTrouble(place);
  const results = session.results.value?.results ?? null;
  return (
    <Fold
      label={SECTION_TITLES[place.section]}
      value={isWrong ? 'something here was not accepted' : sectionWords(place, { plan, results, say })}
    >
      <Section place={place} />
    </Fold>
  );
}

function useHasTrouble(place: InputPlace): boolean {
  const session = useSession();
  const sheet = sheetOfPlace(place);
  return [...session.problems.value.keys()].some((path) => sheetOfPath(path) === sheet);
}
