// Why a verdict says what it says: the figure it judges, the lines it is judged by, and what else binds.
// Worked figure: 0.63 ÷ 2.35 = 26.8 %; floor 20 %, holds from 23 %: holds.
import { Decimal, dec } from '../money/decimal.ts';
import type { Account } from '../plan/index.ts';
import type { VerdictName } from '../results.ts';
import { openingCash } from './cash.ts';
import { claimBody } from './claim.ts';
import { listingKey, type Place, placeOf } from './place.ts';
import { thresholdLine } from './threshold.ts';
import type { ExplanationLine } from './types.ts';
import {
  type Draft,
  exactMoney,
  exactNumber,
  exactPercent,
  exactPrice,
  line,
  type Scene,
  typed,
} from './write.ts';

const WORDS: Record<VerdictName, { name: string; meaning: string }> = {
  ladder: { name: 'Ladder', meaning: 'Does the shelf price leave every hand its share, and us ours?' },
  deal: { name: 'Deal', meaning: 'Does the chain’s offer pay back, and at what rate of sale?' },
  cash: { name: 'Cash', meaning: 'Can we fill the doors without running out?' },
  promise: { name: 'Promise', meaning: 'Does the evidence support what is claimed?' },
};

const STATES = { holds: 'Holds', tight: 'Tight', fails: 'Fails', unknown: 'Not known yet' } as const;

export function verdictFigure(scene: Scene, name: VerdictName): Draft {
  const verdict = scene.results.verdicts[name];
  const { formula, lines } = BODIES[name](scene);
  return {
    title: `${WORDS[name].name}: ${STATES[verdict.state]}`,
    value: verdict.figure === '' ? STATES[verdict.state] : verdict.figure,
    exact: verdict.value,
    meaning: WORDS[name].meaning,
    formula,
    lines,
    caution: verdict.reason,
  };
}

interface Body {
  formula: string;
  lines: ExplanationLine[];
}

const BODIES: Record<VerdictName, (scene: Scene) => Body> = { ladder, deal, cash, promise };

function ladder(scene: Scene): Body {
  const { accountId, itemId } = scene.results.verdicts.ladder;
  const place = accountId !== null && itemId !== null ? placeOf(scene, accountId, itemId) : null;
  const thresholds = [thresholdLine(scene, 'ladderFloorRate'), thresholdLine(scene, 'ladderTightPoints')];
  if (!place) return { formula: 'contribution ÷ net price, against the floor', lines: thresholds };
  const { ladderFloorRate, ladderTightPoints } = scene.plan.thresholds;
  const rate = place.ladder.contributionRate;
  const from = dec(ladderFloorRate).plus(ladderTightPoints);
  const lines = `floor ${exactPercent(scene, dec(ladderFloorRate))}, holds from ${exactPercent(scene, from)}`;
  const { contribution, net } = place.ladder;
  const quotient = `${exactPrice(scene, contribution)} ÷ ${exactPrice(scene, net)}`;
  return {
    formula: `${quotient}${rate === null ? '' : ` = ${scene.say.percent(rate)}`}; ${lines}`,
    lines: [rateLine(scene, place), ...thresholds, ...requiredLines(scene, place)],
  };
}

function rateLine(scene: Scene, place: Place): ExplanationLine {
  const rate = place.ladder.contributionRate;
  return line({
    label: `Contribution of net price, ${place.words}`,
    value: rate === null ? 'not known' : exactPercent(scene, rate),
    owner: 'ours',
    explains: listingKey(place, 'contributionRate'),
  });
}

/** Hands that say what they need. */
function requiredLines(scene: Scene, { ladder: own, account, item }: Place): ExplanationLine[] {
  return own.hands.flatMap((hand) => {
    if (hand.requiredMarginRate === null) return [];
    const needs = exactPercent(scene, hand.requiredMarginRate);
    return [
      typed(scene, `accounts/${account.id}/hands/${hand.id}/requiredMarginRate`, {
        label: `${hand.name} gets`,
        value: exactPercent(scene, hand.marginRate),
        reason: `It says it needs ${needs}`,
        owner: hand.owner,
        explains: { of: 'hand', accountId: account.id, itemId: item.id, handId: hand.id },
      }),
    ];
  });
}

function deal(scene: Scene): Body {
  const { accountId } = scene.results.verdicts.deal;
  const account = scene.plan.accounts.find(({ id }) => id === accountId);
  const found = scene.results.deals.find((each) => each.accountId === accountId);
  const threshold = thresholdLine(scene, 'dealTightRatio');
  if (!account || !found) return { formula: 'planned ÷ break-even rate of sale', lines: [threshold] };
  // Two decimals, never rounded up over a line that the verdict is drawn at; its own sheet has them all.
  const ratio = found.breakEvenRatio?.toDecimalPlaces(2, Decimal.ROUND_DOWN) ?? null;
  const tight = exactNumber(scene, dec(scene.plan.thresholds.dealTightRatio));
  return {
    formula: `planned ÷ break-even rate of sale${ratio === null ? '' : ` = ${exactNumber(scene, ratio)}`}; holds from ${tight}, fails below 1`,
    lines: [
      dealLine(
        account,
        'breakEvenRatio',
        'Planned ÷ break-even',
        ratio === null ? 'none' : exactNumber(scene, ratio),
      ),
      dealLine(
        account,
        'paybackWeeks',
        'Payback',
        found.paybackWeeks === null
          ? `not within ${found.termWeeks} weeks`
          : `${exactNumber(scene, found.paybackWeeks.toDecimalPlaces(1, Decimal.ROUND_UP))} weeks`,
      ),
      threshold,
    ],
  };
}

function dealLine(
  account: Account,
  figure: 'breakEvenRatio' | 'paybackWeeks',
  label: string,
  value: string,
): ExplanationLine {
  const explains = { of: 'deal', accountId: account.id, figure } as const;
  return line({ label: `${label}, ${account.name}`, value, owner: 'ours', explains });
}

function cash(scene: Scene): Body {
  const { reading } = scene.results;
  const lowest = exactMoney(scene, reading.lowestCash);
  const buffer = exactMoney(scene, reading.bufferAmount);
  const need = exactMoney(scene, reading.cashNeed);
  return {
    formula: `lowest ${lowest} against a buffer of ${buffer}; fails below zero`,
    lines: [
      line({
        label: 'Lowest cash',
        value: lowest,
        owner: 'ours',
        explains: { of: 'cash', figure: 'lowestCash' },
      }),
      line({
        label: 'Buffer',
        value: buffer,
        owner: 'ours',
        explains: { of: 'cash', figure: 'bufferAmount' },
      }),
      line({
        label: 'Cash need',
        value: need,
        owner: 'atRisk',
        explains: { of: 'cash', figure: 'cashNeed' },
      }),
      { ...openingCash(scene, 'plan'), adds: null },
      thresholdLine(scene, 'cashBufferWeeks'),
    ],
  };
}

function promise(scene: Scene): Body {
  const claim = claimBody(scene);
  return {
    formula: claim?.formula ?? 'the chance of the claim, from the evidence',
    lines: [
      ...(claim?.lines ?? []),
      thresholdLine(scene, 'promiseFailsBelowRate'),
      thresholdLine(scene, 'promiseTightBelowRate'),
    ],
  };
}
