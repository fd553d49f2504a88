// One chain on the time axis: its openings from the first door to the last, its promotions, its displays, and when doors
// close again. A bar is named by the path of the field that moving it changes.
// Worked figure: 180 doors at 45 a week from week 10 are a bar over weeks 10 to 13, "180 doors".
import type { Account } from '../../domain/plan/index.ts';
import type { AxisBar, AxisGroup } from '../../widgets/index.ts';
import type { ScreenSay } from '../shared/screen-say.ts';

interface Chain {
  account: Account;
  /** Weeks of the plan. */
  weeks: number;
  say: ScreenSay;
}

const made = new WeakMap<Account, { say: ScreenSay; weeks: number; group: AxisGroup }>();

/** The same group as long as nothing of the chain changes. */
export function chainGroup({ account, weeks, say }: Chain): AxisGroup {
  const known = made.get(account);
  if (known && known.say === say && known.weeks === weeks) return known.group;
  const chain = { account, weeks, say };
  const group: AxisGroup = {
    id: `chain/${account.id}`,
    name: account.name,
    note: doorsWords(account, say),
    bars: [...openings(chain), ...promotions(chain), ...closings(chain), ...displays(chain)],
    graphs: [],
  };
  made.set(account, { say, weeks, group });
  return group;
}

/** How many doors sell already and how many are to open. */
export function doorsWords({ waves, runningDoors }: Account, say: ScreenSay): string {
  const running = runningDoors.reduce((sum, { doors }) => sum + doors, 0);
  const opening = waves.reduce((sum, { doors }) => sum + doors, 0);
  if (running + opening === 0) return 'no doors yet';
  if (running === 0) return `${say.count(opening)} to open`;
  return opening === 0
    ? `${say.count(running)} sell`
    : `${say.count(running)} sell, ${say.count(opening)} to open`;
}

function openings({ account, say }: Chain): AxisBar[] {
  return account.waves.map(({ id, openWeek, doors, doorsPerWeek }, index) => {
    const to = openWeek + Math.ceil(doors / doorsPerWeek) - 1;
    const many = doors === 1 ? '1 door' : `${say.count(doors)} doors`;
    return {
      id: `accounts/${account.id}/waves/${id}/openWeek`,
      from: openWeek,
      to,
      text: many,
      drawing: 'truck',
      move: {
        label: `${account.name}, opening ${index + 1}`,
        valueText:
          to === openWeek
            ? `${say.week(openWeek)}, ${many}`
            : `${say.week(openWeek)} to ${say.week(to)}, ${many}`,
      },
    };
  });
}

function promotions({ account, say }: Chain): AxisBar[] {
  return account.promotions
    .filter(({ weeks }) => weeks > 0)
    .map((promotion) => {
      const { id, label, fromWeek, weeks, depthRate, fundedBy, buyInWeeks, dipShare, dipWeeks } = promotion;
      const off = `${say.percent(Number(depthRate))} off`;
      const to = fromWeek + weeks - 1;
      return {
        id: `accounts/${account.id}/promotions/${id}/fromWeek`,
        from: fromWeek,
        to,
        text: `${label}, ${off}`,
        drawing: 'tag',
        lead: fundedBy === 'offInvoice' ? Math.min(buyInWeeks, fromWeek) : 0,
        tail: Number(dipShare) > 0 ? dipWeeks : 0,
        move: {
          label: `${account.name}, promotion ${label}`,
          valueText: `${say.week(fromWeek)} to ${say.week(to)}, ${off}`,
        },
      };
    });
}

function closings({ account, say }: Chain): AxisBar[] {
  const bar = (path: string, week: number, text: string): AxisBar => ({
    id: `accounts/${account.id}/${path}`,
    from: week,
    to: week,
    text,
    drawing: 'closed',
    move: { label: `${account.name}, ${text}`, valueText: say.week(week) },
  });
  const planned = account.cuts.map(({ id, week, doors }) =>
    bar(`cuts/${id}/week`, week, doors === 1 ? '1 door closes' : `${say.count(doors)} doors close`),
  );
  return account.cutWeek === null
    ? planned
    : [...planned, bar('cutWeek', account.cutWeek, 'off the shelves')];
}

/** Displays stand from a wave's first opening to their last week after its last one. */
function displays({ account, weeks, say }: Chain): AxisBar[] {
  const { display } = account;
  if (display === null) return [];
  return account.waves.map(({ id, openWeek, doors, doorsPerWeek }) => ({
    id: `accounts/${account.id}/display/${id}`,
    from: openWeek,
    to: Math.min(weeks - 1, openWeek + Math.ceil(doors / doorsPerWeek) - 1 + display.weeks - 1),
    text: `displays, ${say.count(display.weeks)} ${display.weeks === 1 ? 'week' : 'weeks'} each`,
    drawing: 'shelf',
    lead: Math.min(display.buildWeeks, openWeek),
    move: null,
  }));
}
