// One named step between list price and contribution: the terms it was typed in, and the price they are taken of. The
// forms of the allowance kinds say which fields there are, so a new kind explains itself.
// Worked figure: spoils 2 % of invoice 2.60 = 0.052, from accounts/corner/allowances/spoils/rate.
import type { FieldNote } from '../allowances/contract.ts';
import { type Allowance, kindOf } from '../allowances/index.ts';
import { stepsInDealWeeks } from '../ladder/deal-week.ts';
import type { Step } from '../ladder/types.ts';
import { dec } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import { listingFigure } from './listing.ts';
import { listingLine, neverAgain, type Place, stepKey } from './place.ts';
import type { ExplanationLine } from './types.ts';
import { type Draft, exactNumber, exactPercent, exactPrice, line, type Scene, typed } from './write.ts';

/** A step of the ladder by its id, levels and deal weeks' money too; null when there is none of that name. */
export function stepFigure(scene: Scene, place: Place, stepId: string): Draft | null {
  const { ladder, account } = place;
  const terms = account.allowances.find(({ id }) => id === stepId);
  const step = [...ladder.steps, ...stepsInDealWeeks(ladder)].find(({ id }) => id === stepId);
  if (!step) return null;
  switch (step.stage) {
    case 'list':
    case 'invoice':
    case 'net':
    case 'contribution':
    case 'landed':
      return listingFigure(scene, place, step.stage);
    default:
      return terms ? allowanceFigure({ scene, place, step, terms }) : discountFigure(scene, place, step);
  }
}

interface StepArgs {
  scene: Scene;
  place: Place;
  step: Step;
  terms: Allowance;
}

function allowanceFigure({ scene, place, step, terms }: StepArgs): Draft {
  const kind = kindOf(terms);
  const path = `accounts/${place.account.id}/allowances/${terms.id}`;
  const fields = kind.fields.map((field) => fieldLine({ scene, path, field, terms, step }));
  return {
    title: `${step.label}, ${place.words}`,
    value: exactPrice(scene, step.amount),
    exact: step.amount.toFixed(),
    meaning: kind.meaning,
    formula: `${step.reason} = ${exactPrice(scene, step.amount)}`,
    lines: [...fields, ...baseLines({ scene, place, step, terms })],
    caution:
      step.stage === 'perUnitOnDeal'
        ? 'Only in the weeks of the deal: no part of the base week’s net price.'
        : null,
  };
}

function fieldLine(from: {
  scene: Scene;
  path: string;
  field: FieldNote;
  terms: Allowance;
  step: Step;
}): ExplanationLine {
  const { scene, field } = from;
  const stored = (from.terms as unknown as Record<string, unknown>)[field.key];
  return typed(scene, `${from.path}/${field.key}`, {
    label: field.label,
    value: storedText(scene, field, stored),
    owner: from.step.owner,
  });
}

function storedText(scene: Scene, field: FieldNote, stored: unknown): string {
  switch (field.unit) {
    case 'share':
      return exactPercent(scene, kept(String(stored)));
    case 'perUnit':
    case 'perCase':
      return exactPrice(scene, kept(String(stored)));
    case 'switch':
      return stored === true ? 'yes' : 'no';
    case 'choice':
      return field.choices?.find(({ value }) => value === stored)?.label ?? String(stored);
    default:
      return exactNumber(scene, dec(Number(stored)));
  }
}

/** What the terms are taken of: a price, the units in a case, credits for goods that come back. */
function baseLines({ scene, place, step, terms }: StepArgs): ExplanationLine[] {
  const lines: ExplanationLine[] = [];
  if ('rate' in terms)
    lines.push(listingLine(scene, place, step.stage === 'offInvoice' ? 'list' : 'invoice'));
  if ('on' in terms && terms.on === 'running') lines.push(...earlierSteps(scene, place, step));
  if ('resaleableShare' in terms)
    lines.push(place.item.supply.shelfLife ? neverAgain(scene, place) : listingLine(scene, place, 'landed'));
  if ('per' in terms && terms.per === 'case') {
    const value = exactNumber(scene, dec(place.item.caseUnits));
    lines.push(typed(scene, `items/${place.item.id}/caseUnits`, { label: 'Units in a case', value }));
  }
  return [...lines, ...returnLines(scene, place, terms), ...pickUpLines(scene, place, terms)];
}

/** A discount in series is taken on what the ones before it left. */
function earlierSteps(scene: Scene, place: Place, step: Step): ExplanationLine[] {
  const { steps } = place.ladder;
  const earlier = steps.slice(0, steps.indexOf(step)).filter(({ stage }) => stage === 'offInvoice');
  return earlier.map((each) =>
    line({
      label: each.label,
      value: exactPrice(scene, each.amount.negated()),
      reason: 'Taken before this one',
      owner: each.owner,
      explains: stepKey(place, each.id),
    }),
  );
}

/** Broker and royalty are not owed on what is credited back. */
function returnLines(scene: Scene, { account }: Place, terms: Allowance): ExplanationLine[] {
  if (!('onFreeGoods' in terms)) return [];
  return account.allowances.flatMap((each) => {
    if (!('resaleableShare' in each)) return [];
    const path = `accounts/${account.id}/allowances/${each.id}/rate`;
    const value = exactPercent(scene, kept(each.rate));
    return [typed(scene, path, { label: 'Comes back for credit', value, owner: 'theirs' })];
  });
}

function pickUpLines(scene: Scene, place: Place, terms: Allowance): ExplanationLine[] {
  if (kindOf(terms).stage !== 'sellingCost' || !place.ladder.forPass.pickUp || !('per' in terms)) return [];
  return place.account.allowances.flatMap((each) => {
    if (!('pickUp' in each) || !each.pickUp) return [];
    const path = `accounts/${place.account.id}/allowances/${each.id}/pickUp`;
    return [typed(scene, path, { label: 'The buyer picks up', value: 'yes', owner: 'theirs' })];
  });
}

function discountFigure(scene: Scene, place: Place, step: Step): Draft | null {
  const discount = place.account.terms.earlyDiscount;
  if (!discount) return null;
  const path = `accounts/${place.account.id}/terms/earlyDiscount`;
  const field = (key: 'rate' | 'takenShare', label: string) =>
    typed(scene, `${path}/${key}`, {
      label,
      value: exactPercent(scene, kept(discount[key])),
      owner: 'theirs',
    });
  return {
    title: `${step.label}, ${place.words}`,
    value: exactPrice(scene, step.amount),
    exact: step.amount.toFixed(),
    meaning: 'A part of the invoice the chain may keep when it pays within so many days.',
    formula: `${step.reason} = ${exactPrice(scene, step.amount)}`,
    lines: [
      field('rate', 'Discount'),
      typed(scene, `${path}/days`, {
        label: 'If paid within, days',
        value: exactNumber(scene, dec(discount.days)),
        owner: 'theirs',
      }),
      field('takenShare', 'Invoices it is taken on'),
      listingLine(scene, place, 'invoice'),
    ],
    caution: null,
  };
}
