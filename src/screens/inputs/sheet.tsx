// One section of the inputs as a sheet over any view, so that a figure's field can be typed over where the figure is.
// Worked example: ?sheet=inputs:terms:corner over the cash picture; the picture moves as the days are typed.
import type { VNode } from 'preact';
import { Sheet, useWide } from '../../widgets/index.ts';
import { placeOfSheet } from '../shared/input-places.ts';
import { useSession } from '../shared/session-context.ts';
import { PlanStrip } from '../shared/verdict-strip.tsx';
import { Section, sectionTitle } from './section.tsx';

export function InputsSheet(): VNode | null {
  const session = useSession();
  const wide = useWide();
  const plan = session.plan.value;
  const place = placeOfSheet(session.route.value.sheet ?? '');
  if (plan === null || place === null) return null;
  return (
    <Sheet
      title={sectionTitle(plan, place)}
      onClose={() => session.closeSheet()}
      footer={wide ? undefined : <PlanStrip />}
    >
      <Section key={session.route.value.sheet} place={place} />
    </Sheet>
  );
}
