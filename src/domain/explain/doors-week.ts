// Doors open at the end of a week, and what one chain's shoppers found in it: openings so far less doors closed, chain
// by chain. Worked figure: 100 opened − 3 closed since = 97.
import type { Account } from '../plan/index.ts';
import { doorLines, liftLines, paceLines, rateOfSaleLine } from './inputs.ts';
import { placesOf } from './place.ts';
import type { ExplanationLine, FigureKey } from './types.ts';
import { UNIT_MEANINGS } from './unit-words.ts';
import { counted, countFormula } from './units-week.ts';
import { type Draft, type Scene, typed } from './write.ts';

type ChainKey = Extract<FigureKey, { of: 'accountWeek' }>;

const DOORS = 'Doors open at the end of the week, whether they sell much or little.';

/** Of all chains. Null when the week lies beyond the plan's horizon. */
export function planDoorsFigure(scene: Scene, week: number): Draft | null {
  const { plan, results } = scene;
  if (week >= results.pass.weeks) return null;
  const lines = plan.accounts.map(({ id, name }, index) =>
    counted(scene, results.pass.accounts[index]?.doors[week] ?? 0, {
      label: name,
      explains: { of: 'accountWeek', accountId: id, figure: 'doors', week },
    }),
  );
  const total = lines.reduce((sum, { adds }) => sum + Number(adds ?? 0), 0);
  return {
    title: `Doors, ${scene.say.week(week)}`,
    value: scene.say.count(total),
    exact: String(total),
    meaning: DOORS,
    formula: countFormula(scene, lines, total),
    lines,
    caution: null,
  };
}

/** Of one chain. Null when the plan has no such account or week. */
export function accountWeekFigure(scene: Scene, { accountId, figure, week }: ChainKey): Draft | null {
  const { plan, results } = scene;
  const index = plan.accounts.findIndex(({ id }) => id === accountId);
  const account = plan.accounts[index];
  const series = results.pass.accounts[index]?.[figure];
  if (!account || !series || week >= results.pass.weeks) return null;
  const total = series[week] ?? 0;
  const lines =
    figure === 'doors' ? openedLines(scene, account, week, total) : soldLines(scene, account, index, week);
  const { name, meaning } = figure === 'doors' ? { name: 'Doors', meaning: DOORS } : UNIT_MEANINGS[figure];
  return {
    title: `${name}, ${account.name}, ${scene.say.week(week)}`,
    value: scene.say.count(total),
    exact: String(total),
    meaning,
    formula: countFormula(scene, lines, total),
    lines,
    caution: null,
  };
}

/** Doors by where they came from; what is missing at the end has closed, or never got it onto the shelf. */
function openedLines(scene: Scene, account: Account, week: number, total: number): ExplanationLine[] {
  const path = `accounts/${account.id}`;
  const running = account.runningDoors.map(({ id, doors }) =>
    counted(scene, doors, typed(scene, `${path}/runningDoors/${id}/doors`, said('Open on the first day'))),
  );
  const opened = account.waves.flatMap((wave, index) => {
    const weeks = week - wave.openWeek + 1;
    if (weeks <= 0) return [];
    const count = Math.min(wave.doors, weeks * wave.doorsPerWeek);
    const label = `Opening ${index + 1}, so far`;
    return [counted(scene, count, typed(scene, `${path}/waves/${wave.id}/doors`, said(label)))];
  });
  const lines = [...running, ...opened];
  const left = total - lines.reduce((sum, { adds }) => sum + Number(adds ?? 0), 0);
  if (left === 0) return lines.length > 0 ? lines : doorLines(scene, account);
  const isCut = account.cutWeek !== null && account.cutWeek <= week;
  const from = isCut ? `${path}/cutWeek` : `${path}/attritionYearlyRate`;
  const label = isCut ? 'Off the chain’s shelves' : 'Closed since, or without it on the shelf';
  return [...lines, counted(scene, left, typed(scene, from, said(label)))];
}

function said(label: string): { label: string; value: string } {
  return { label, value: '' };
}

function soldLines(scene: Scene, account: Account, index: number, week: number): ExplanationLine[] {
  const places = placesOf(scene, account);
  const doors = scene.results.pass.accounts[index]?.doors[week] ?? 0;
  const open = counted(scene, doors, {
    label: 'Doors',
    explains: { of: 'accountWeek', accountId: account.id, figure: 'doors', week },
  });
  return [
    { ...open, adds: null },
    ...places.map((place) => rateOfSaleLine(scene, place)),
    ...paceLines(scene, account),
    ...liftLines(scene, account, places),
  ];
}
