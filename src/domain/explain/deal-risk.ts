// What the way of sale costs per unit scanned, part by part: what is never paid, deducted without a right to it, or comes
// back unsold. Worked figure: 2 % bad debts of an invoice at 2.60 are 0.052; 3 % wrongly deducted, 60 % of it won back, 0.0312.
import { lostRate } from '../deals/unit-money.ts';
import { type Decimal, round4, ZERO } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import { percentLine } from './inputs.ts';
import { listingLine, neverAgain, type Place, stepKey } from './place.ts';
import type { ExplanationLine } from './types.ts';
import {
  comingTo,
  type Draft,
  exactPercent,
  exactPrice,
  line,
  part,
  type Scene,
  sumFormula,
  typed,
} from './write.ts';

export function riskFigure(scene: Scene, place: Place): Draft {
  const { account, ladder, dealItem } = place;
  const path = `accounts/${account.id}`;
  const total = dealItem.riskPerUnit;
  const bad = round4(ladder.invoice.times(account.terms.badDebtRate));
  const lost = round4(ladder.invoice.times(lostRate(account)));
  const badPart = part(scene, bad, {
    label: 'Invoices never paid',
    reason: `${exactPercent(scene, kept(account.terms.badDebtRate))} of invoice ${exactPrice(scene, ladder.invoice)}`,
    owner: 'atRisk',
  });
  const unsold = account.sale.by === 'shipment' ? ZERO : total.minus(bad).minus(lost);
  const parts = [
    typed(scene, `${path}/terms/badDebtRate`, badPart),
    ...disputedLines(scene, place, lost),
    ...unsoldLines(scene, place, unsold),
  ];
  const lines = comingTo(scene, total, parts, 'Lines are rounded to 4 decimals');
  return {
    title: `Not paid, or not sold, ${place.words}`,
    value: exactPrice(scene, total),
    exact: total.toFixed(),
    meaning:
      'What the way of sale costs per unit scanned: bad debts, deductions not owed, goods that come back or disappear.',
    formula: sumFormula(scene, lines, total),
    lines: [...lines, listingLine(scene, place, 'invoice')],
    caution: null,
  };
}

/** Deductions taken without a right to them, less what is won back. */
function disputedLines(scene: Scene, { account, ladder }: Place, lost: Decimal): ExplanationLine[] {
  const { disputed } = account;
  if (!disputed) return [];
  const path = `accounts/${account.id}/disputed`;
  const taken = part(scene, lost, {
    label: 'Deductions not owed, not won back',
    reason: `${exactPercent(scene, kept(disputed.wrongRate))} of invoice ${exactPrice(scene, ladder.invoice)}, less what is won back`,
    owner: 'theirs',
  });
  return [
    typed(scene, `${path}/wrongRate`, taken),
    percentLine(scene, `${path}/recoveredShare`, 'Of these, won back', disputed.recoveredShare),
  ];
}

function unsoldLines(scene: Scene, place: Place, unsold: Decimal): ExplanationLine[] {
  const { sale, id } = place.account;
  if (sale.by === 'shipment') return [];
  const path = `accounts/${id}/sale`;
  const rate = sale.by === 'guaranteed' ? sale.expectedReturnRate : sale.shrinkRate;
  const base = part(scene, unsold, {
    label: sale.by === 'guaranteed' ? 'Goods that come back' : 'Goods that disappear',
    reason: `${exactPercent(scene, kept(rate))} of what is shipped; its landed cost and its way out, on each unit sold`,
    owner: 'atRisk',
  });
  const field = sale.by === 'guaranteed' ? 'expectedReturnRate' : 'shrinkRate';
  const lines = [typed(scene, `${path}/${field}`, base)];
  if (sale.by === 'guaranteed') {
    lines.push(
      place.ladder.forPass.soldAgain
        ? percentLine(scene, `${path}/resaleableShare`, 'Of these, fit to sell again', sale.resaleableShare)
        : neverAgain(scene, place),
    );
  }
  return [...lines, listingLine(scene, place, 'landed'), ...wayOutLines(scene, place)];
}

/** Freight out and picking, as ingredients. */
export function wayOutLines(scene: Scene, place: Place): ExplanationLine[] {
  const { steps, forPass } = place.ladder;
  const isWayOut = (stepId: string) =>
    forPass.charges.some(({ id, charge }) => id === stepId && charge.settles === 'shipment');
  return steps
    .filter(({ id }) => isWayOut(id))
    .map((step) =>
      line({
        label: step.label,
        value: exactPrice(scene, step.amount),
        reason: step.reason,
        owner: step.owner,
        explains: stepKey(place, step.id),
      }),
    );
}
