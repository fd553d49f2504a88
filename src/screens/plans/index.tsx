// All plans on this device: open one, start one, bring one in from a file; the examples below; and in words how well the
// device keeps them. Worked example: a row reads "Granola, Fern & Co", four marks, "changed 2 Mar 2026, 14:05".
import type { VNode } from 'preact';
import { useEffect } from 'preact/hooks';
import { hashOf } from '../../app/route.ts';
import { ButtonRow, FileButton, LinkButton } from '../../widgets/index.ts';
import { useSession } from '../shared/session-context.ts';
import { useTitle } from '../shared/title.ts';
import { ImportTrouble } from './import-trouble.tsx';
import { PlanRowLink } from './plan-row.tsx';
import { PlanSheet } from './plan-sheet.tsx';
import { StorageState } from './storage-state.tsx';
import './plans.css';

export function PlansScreen(): VNode {
  const session = useSession();
  useTitle('Plans');
  useMarks();
  const rows = session.plans.value;
  return (
    <div class="ff-stack ff-plans">
      <h1>Plans</h1>
      <ButtonRow>
        <LinkButton kind="primary" href={hashOf({ view: 'seven', sheet: null })}>
          Start one: 7 numbers
        </LinkButton>
        <FileButton accept="application/json,.json" onFile={(file) => void bringIn(file)}>
          Open a plan file
        </FileButton>
      </ButtonRow>
      <ImportTrouble />
      <div class="ff-plans-both">
        <section class="ff-stack" aria-labelledby="own-plans">
          <h2 id="own-plans">On this device</h2>
          {rows.length === 0 ? (
            <p class="ff-quiet">None yet. Seven numbers make one, in about a minute.</p>
          ) : (
            <ul class="ff-plan-list">
              {rows.map((row) => (
                <PlanRowLink
                  key={row.id}
                  id={row.id}
                  name={row.name}
                  updatedAt={row.updatedAt}
                  lesson={null}
                />
              ))}
            </ul>
          )}
          <StorageState />
        </section>
        <Examples />
      </div>
      <p>
        <button type="button" class="ff-button ff-button-quiet" onClick={() => session.openSheet('about')}>
          What this is, and what it isn’t
        </button>
      </p>
      <PlanSheet />
    </div>
  );

  async function bringIn(file: File): Promise<void> {
    session.clearImportTrouble();
    if (!(await session.importFile(file))) return;
    const id = session.plan.value?.id;
    if (id !== undefined) session.go({ view: 'front', planId: id, sheet: null });
  }
}

function Examples(): VNode {
  const session = useSession();
  const own = new Set(session.plans.value.map(({ id }) => id));
  const examples = session.examples().filter(({ id }) => !own.has(id));
  return (
    <section class="ff-stack" aria-labelledby="examples">
      <h2 id="examples">Examples</h2>
      <p class="ff-quiet ff-least">
        Invented brands and chains. Change anything: what you change is kept as a plan of yours.
      </p>
      <ul class="ff-plan-list">
        {examples.map(({ id, name, lesson }) => (
          <PlanRowLink key={id} id={id} name={name} updatedAt={null} lesson={lesson} />
        ))}
      </ul>
    </section>
  );
}

/** The marks of every row, worked out after the list is on the page. */
function useMarks(): void {
  const session = useSession();
  const rows = session.plans.value;
  useEffect(() => {
    const timer = setTimeout(() => void session.computeMarks(), 0);
    return () => clearTimeout(timer);
  }, [rows, session]);
}
