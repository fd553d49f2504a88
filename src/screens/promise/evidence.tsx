// The evidence of a plan: what stores sold and what that says of the rate of sale, for every product with scans; the scans
// themselves, to look at and to edit; and what else speaks for it.
// Worked example: eight stores, 97 weeks: "3.5 a store a week, 2.8 to 4.2 in 8 of 10", where the plan counts on 4.5.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { addScan } from '../../app/commands/evidence.ts';
import { hashOf } from '../../app/route.ts';
import { evidenceFor } from '../../domain/promise/evidence.ts';
import { Button, ButtonRow, LinkButton } from '../../widgets/index.ts';
import { today } from '../shared/moment.ts';
import { Part } from '../shared/parts.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { OtherEvidence } from './evidence-beside.tsx';
import { EvidenceReading } from './evidence-reading.tsx';
import { StoreScans } from './evidence-scans.tsx';
import './evidence.css';

/** All of it, as a titled part of the Promise view. */
export function EvidencePart(): VNode {
  const plan = usePlan();
  const [added, setAdded] = useState<string | null>(null);
  return (
    <Part title="What stores sold">
      {plan.promise.scans.length === 0 && (
        <p>
          Nothing scanned yet. A few stores and weeks say which rates of sale are believable; opening orders
          don’t, they are no sales.
        </p>
      )}
      {plan.items.map((item) => {
        const evidence = evidenceFor(plan, item.id);
        return evidence === null ? null : <EvidenceReading key={item.id} item={item} evidence={evidence} />;
      })}
      <StoreScans added={added} />
      <AddScans onAdded={setAdded} />
      <OtherEvidence />
    </Part>
  );
}

/** A table at once, or a store by hand. */
function AddScans({ onAdded }: { onAdded: (scanId: string) => void }): VNode {
  const session = useSession();
  const plan = usePlan();
  const [item] = plan.items;
  const add = (): void => {
    if (item === undefined) return;
    const names = new Set(plan.promise.scans.map(({ store }) => store.toLowerCase()));
    let count = plan.promise.scans.length + 1;
    while (names.has(`store ${count}`)) count += 1;
    const scan = {
      id: session.newId(),
      itemId: item.id,
      accountId: null,
      store: `Store ${count}`,
      firstDate: today(),
      opened: false,
      units: [null],
      displayWeeks: [],
      priceWeeks: [],
    };
    session.endStep();
    if (session.run(addScan, { scan }, 'promise/scans')) onAdded(scan.id);
    session.endStep();
  };
  return (
    <ButtonRow>
      <LinkButton href={hashOf({ view: 'bulk', planId: plan.id, table: 'scans', sheet: null })}>
        Paste a table of scans
      </LinkButton>
      <Button onPress={add}>Add a store</Button>
    </ButtonRow>
  );
}
