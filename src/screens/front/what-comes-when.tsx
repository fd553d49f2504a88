// What comes when: the dated turns of the plan that the weekly pass shows, in their order.
// Worked example: first order to make week 5, first stores open week 12, first payment week 20, cash lowest week 26.
import type { VNode } from 'preact';
import { useMemo } from 'preact/hooks';
import type { Results } from '../../domain/results.ts';
import type { ScreenSay } from '../shared/screen-say.ts';
import { useShown } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';

interface Turn {
  week: number;
  words: string;
}

export function WhatComesWhen(): VNode | null {
  const results = useShown()?.results;
  const say = useSay();
  const turns = useMemo(() => (results === undefined ? [] : turnsOf(results, say)), [results, say]);
  if (turns.length === 0) return null;
  return (
    <section class="ff-front-turns" aria-labelledby="turns">
      <h2 id="turns">What comes when</h2>
      <ol class="ff-turns">
        {turns.map(({ week, words }) => (
          <li key={words}>
            <span class="ff-number">{say.week(week)}</span>
            <span>{words}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}

function turnsOf({ pass, reading }: Results, say: ScreenSay): Turn[] {
  const ordered = firstOf(pass.units.map(({ ordered: series }) => series));
  const turns: (Turn | null)[] = [
    ordered === null ? null : { week: ordered, words: 'First order goes to the maker' },
    at(reading.firstOpeningWeek, 'First stores open'),
    at(reading.firstPaymentWeek, 'First payment from a chain'),
    at(
      reading.firstLostWeek,
      `First sale lost: nothing to ship (${say.count(reading.lostUnits)} units in all)`,
    ),
    at(reading.lowestWeek, `Cash at its lowest: ${say.money(reading.lowestCash)}`),
    at(reading.backAboveOpeningWeek, 'Cash back where it began, for good'),
  ];
  return turns
    .filter((turn): turn is Turn => turn !== null && (turn.week > 0 || turn.week === ordered))
    .sort((a, b) => a.week - b.week);
}

function at(week: number | null, words: string): Turn | null {
  return week === null ? null : { week, words };
}

function firstOf(series: readonly Float64Array[]): number | null {
  const weeks = series.map((each) => each.findIndex((units) => units > 0)).filter((week) => week >= 0);
  return weeks.length === 0 ? null : Math.min(...weeks);
}
