// Where the chance of a claim comes from: the doors of every account by its date, each with its chance and its slips, added
// up exactly; for units and revenue, also how far the rate of sale is known.
// Worked figure: 180 doors at 60 %, most likely 2 weeks late and at most 8: 170 by then have a chance of 46.9 %.
import { dec } from '../money/decimal.ts';
import type { Account } from '../plan/index.ts';
import { evidenceFor } from '../promise/evidence.ts';
import { type PlacedClaim, placeClaim } from '../promise/place-claim.ts';
import { averageWords, claimedWords, claimWords, RUNG_WORDS } from '../verdicts/promise.ts';
import { countLine, doorLines, paceLines, percentLine } from './inputs.ts';
import type { ExplanationLine } from './types.ts';
import { type Draft, exactNumber, line, type Scene, typed } from './write.ts';

const JUDGED = 'Chances by rung are judgement, no statistics: type your own where you know better.';

/** Null where the claim can't be placed. */
export function claimBody(scene: Scene): { formula: string; lines: ExplanationLine[] } | null {
  const { plan, say } = scene;
  const { placed } = placeClaim(plan, scene.results.pass);
  if (placed === null) return null;
  const { claim, chance, expected, sales } = placed;
  const rate = sales === null ? '' : `, times a rate of sale known to ${sharePercent(scene, sales.spread)}`;
  return {
    formula: `${claimWords(plan, claim, say)}: every account’s doors, whole, late or not at all${rate}; on average ${averageWords(plan, claim.of, expected, say)}, as much as claimed in ${sharePercent(scene, chance)} of futures`,
    lines: [
      typed(scene, 'promise/claim/amount', { label: 'Claimed', value: claimedWords(plan, claim, say) }),
      ...plan.accounts.map((account, a) => accountLine(scene, placed, account, a)),
      ...(sales === null ? [] : rateLines(scene)),
      percentLine(
        scene,
        'promise/spreads/sharedRate',
        'Fate that accounts share',
        plan.promise.spreads.sharedRate,
      ),
    ],
  };
}

/** What scans say of each item; nothing where the rate's spread was typed instead. */
function rateLines(scene: Scene): ExplanationLine[] {
  const { items, promise } = scene.plan;
  if (promise.spreads.rateOfSaleRate !== null)
    return [
      typed(scene, 'promise/spreads/rateOfSaleRate', {
        label: 'Spread of the rate of sale',
        value: exactNumber(scene, dec(promise.spreads.rateOfSaleRate)),
        reason: 'Standard deviation of its logarithm',
      }),
    ];
  return items.flatMap(({ id, name }) => {
    const evidence = evidenceFor(scene.plan, id);
    if (evidence === null) return [];
    const value = exactNumber(scene, dec(evidence.rate.mean.toFixed(1)));
    return [
      line({ label: `Rate of sale by scans, ${name}`, value, explains: { of: 'evidence', itemId: id } }),
    ];
  });
}

function accountLine(
  scene: Scene,
  { doors }: PlacedClaim,
  { id, name, standing }: Account,
  a: number,
): ExplanationLine {
  return line({
    label: `Doors expected, ${name}`,
    value: rounded(scene, doors.accounts[a]?.expected ?? 0),
    reason: standing === null ? 'Taken as planned' : (RUNG_WORDS[standing.rung] ?? ''),
    owner: 'atRisk',
    explains: { of: 'claimDoors', accountId: id },
  });
}

/** Null where the claim can't be placed, or the plan has no such account. */
export function claimDoorsFigure(scene: Scene, accountId: string): Draft | null {
  const { placed } = placeClaim(scene.plan, scene.results.pass);
  const account = scene.plan.accounts.find(({ id }) => id === accountId);
  const found = placed?.doors.accounts.find((each) => each.accountId === accountId);
  if (placed === null || !account || !found) return null;
  const { chance, expected, planned, without, ifLate } = found;
  const { say } = scene;
  const latest = ifLate.at(-1) ?? planned;
  const late = ifLate.length > 1 ? `, ${say.count(latest)} if ${ifLate.length - 1} weeks late` : '';
  const open = without > 0 ? `, ${say.count(without)} if nothing more opens` : '';
  return {
    title: `Doors of ${account.name} by ${say.date(placed.claim.byDate)}`,
    value: rounded(scene, expected),
    exact: expected.toFixed(12),
    meaning: 'Doors that sell on the date of the claim, on average over all futures.',
    formula: `${say.count(planned)} on time${late}${open}; it comes with a chance of ${sharePercent(scene, chance)}: ${rounded(scene, expected)} on average`,
    lines: [...standingLines(scene, account), ...doorLines(scene, account), ...paceLines(scene, account)],
    caution: account.standing === null ? 'Nobody said how far it is agreed: it counts as planned.' : JUDGED,
  };
}

function standingLines(scene: Scene, { id, standing }: Account): ExplanationLine[] {
  if (standing === null) return [];
  const path = `accounts/${id}/standing`;
  const rung = typed(scene, `${path}/rung`, { label: 'How far agreed', value: RUNG_WORDS[standing.rung] });
  const chance =
    standing.chance === null ? [] : [percentLine(scene, `${path}/chance`, 'Chance typed', standing.chance)];
  return [
    rung,
    ...chance,
    countLine(scene, `${path}/slipLikelyWeeks`, 'Weeks late, most likely', standing.slipLikelyWeeks),
    countLine(scene, `${path}/slipMostWeeks`, 'Weeks late, at most', standing.slipMostWeeks),
  ];
}

function rounded(scene: Scene, value: number): string {
  return exactNumber(scene, dec(value.toFixed(1)));
}

function sharePercent({ say }: Scene, share: number): string {
  return say.percent(Math.round(1000 * share) / 1000);
}
