// One step of a stepper, up or down: it lands on round multiples, so 253 stepped up is 260. With "fine" (Shift held, or
// a long press) a step is a tenth. Worked figures: money of 250 steps by 10 (the 1-2-5 number nearest 4 % of it); a
// margin by half a point; payment by 5 days; a shelf price by 0.10, so that 4.99 stays on a price ending: 5.09.
import { Decimal, dec } from '../../domain/money/decimal.ts';

/** sum: 1-2-5 nearest 4 %; tag: 0.10 from where it stands; margin .5 point; slow share .25 point; depth 5; funded 25. */
export type StepName =
  | 'sum'
  | 'tag'
  | 'margin'
  | 'slowShare'
  | 'depth'
  | 'funded'
  | 'one'
  | 'days'
  | 'doors'
  | 'rate';

export interface StepArgs {
  /** The value as the plan keeps it. */
  value: string | number | null;
  step: StepName;
  direction: 1 | -1;
  fine: boolean;
  /** Nothing below this; null where negative values make sense. */
  least: number | null;
}

/** The stepped value as decimal text in the plan's own unit. */
export function stepped({ value, step, direction, fine, least }: StepArgs): string {
  const from = dec(value ?? 0);
  const size = sizeOf(step, from, fine);
  const next = step === 'tag' ? from.plus(size.times(direction)) : ontoGrid({ from, size, direction });
  const bounded = least !== null && next.lt(least) ? dec(least) : next;
  return bounded.toFixed();
}

function sizeOf(step: StepName, from: Decimal, fine: boolean): Decimal {
  const tenth = fine ? dec('0.1') : dec(1);
  switch (step) {
    case 'margin':
      return dec('0.005').times(tenth);
    case 'slowShare':
      return dec('0.0025').times(tenth);
    case 'depth':
      return dec('0.05').times(tenth);
    case 'funded':
      return dec('0.25').times(tenth);
    case 'tag':
      return dec('0.1').times(tenth);
    case 'rate':
      return dec('0.5').times(fine ? dec('0.2') : 1);
    case 'one':
      return dec(1);
    case 'days':
      return dec(fine ? 1 : 5);
    case 'doors':
      return Decimal.max(1, roundStep(from).times(tenth));
    case 'sum':
      return roundStep(from).times(tenth);
  }
}

/** 1, 2 or 5 times a power of ten, nearest to 4 % of the amount; 1 for nothing. */
function roundStep(from: Decimal): Decimal {
  const part = from.abs().times('0.04');
  if (part.isZero()) return dec(1);
  const power = dec(10).pow(Math.floor(Math.log10(part.toNumber())));
  const steps = [1, 2, 5, 10].map((each) => power.times(each));
  const nearest = steps.reduce((best, each) =>
    each.minus(part).abs().lt(best.minus(part).abs()) ? each : best,
  );
  return Decimal.max(nearest, '0.01');
}

function ontoGrid({ from, size, direction }: { from: Decimal; size: Decimal; direction: 1 | -1 }): Decimal {
  const places = from.div(size);
  const next = direction === 1 ? places.floor().plus(1) : places.ceil().minus(1);
  return next.times(size);
}
