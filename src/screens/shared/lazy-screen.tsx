// A screen that is fetched when it is first looked at, and kept. Where it can't be fetched (a new version replaced the
// files of this one) it says so and offers to load the page again.
// Worked example: the cash screen's code comes with the first tap on Cash; the second tap draws it at once.
import type { ComponentType, VNode } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Button } from '../../widgets/Buttons.tsx';
import { EmptyState } from '../../widgets/Notices.tsx';
import { useSession } from './session-context.ts';

export type Load = () => Promise<ComponentType>;

const own = () => import('../shell/own-rooms.ts');

/** Parts that come together, by name; the others by where they are. */
export const LATER = {
  about: () => own().then((rooms) => rooms.AboutSheet),
  frontFoot: () => own().then((rooms) => rooms.FrontFoot),
  frontSide: () => own().then((rooms) => rooms.FrontSide),
  frontTurns: () => own().then((rooms) => rooms.WhatComesWhen),
  inputs: () => own().then((rooms) => rooms.InputsScreen),
  inputsList: () => own().then((rooms) => rooms.InputsList),
  inputsSheet: () => own().then((rooms) => rooms.InputsSheet),
  ownKeys: () => own().then((rooms) => rooms.OwnKeys),
  plans: () => own().then((rooms) => rooms.PlansScreen),
  seven: () => own().then((rooms) => rooms.SevenScreen),
  trouble: () => own().then((rooms) => rooms.NotComputed),
  ladder: () => import('../ladder/index.tsx').then((room) => room.LadderScreen),
  deal: () => import('../deal/index.tsx').then((room) => room.DealScreen),
  bulk: () => import('../bulk/index.tsx').then((room) => room.BulkScreen),
  cash: () => import('../cash/index.tsx').then((room) => room.CashScreen),
  'roll-out': () => import('../roll-out/index.tsx').then((room) => room.RollOutScreen),
  promise: () => import('../promise/index.tsx').then((room) => room.PromiseScreen),
  investor: () => import('../investor/index.tsx').then((room) => room.InvestorScreen),
  readiness: () => import('../readiness/index.tsx').then((room) => room.ReadinessScreen),
  'run-sheet': () => import('../readiness/index.tsx').then((room) => room.RunSheetScreen),
  numbers: () => import('../readiness/index.tsx').then((room) => room.NumbersScreen),
  frontReadiness: () => import('../readiness/index.tsx').then((room) => room.ReadinessLine),
  lender: () => import('../lender/index.tsx').then((room) => room.LenderScreen),
  statements: () => import('../statements/index.tsx').then((room) => room.StatementsScreen),
  money: () => import('../money/index.tsx').then((room) => room.MoneyScreen),
  table: () => import('../talks/index.tsx').then((room) => room.TalksScreen),
  reasons: () => import('../front/reasons.tsx').then((room) => room.Reasons),
  worstPicture: () => import('../front/worst-picture.tsx').then((room) => room.WorstPicture),
  whereFrom: () => import('./where-from.tsx').then((room) => room.WhereFromSheet),
} satisfies Record<string, Load>;
export type Later = keyof typeof LATER;

const loaded = new Map<Later, ComponentType>();

/** Fetches everything ahead of its use; failing is no trouble yet. */
export function fetchAhead(): void {
  for (const name of Object.keys(LATER) as Later[]) {
    fetchOnce(name).catch(() => undefined);
  }
}

async function fetchOnce(name: Later): Promise<void> {
  if (!loaded.has(name)) loaded.set(name, await LATER[name]());
}

/** Give it a key where one takes another's place. `quiet` shows nothing while it is on its way. */
export function LazyScreen({ name, quiet }: { name: Later; quiet: boolean }): VNode | null {
  const [failed, setFailed] = useState(false);
  const [, setDone] = useState(false);
  const Screen = loaded.get(name);
  useEffect(() => {
    setFailed(false);
    fetchOnce(name).then(
      () => setDone(true),
      () => setFailed(true),
    );
  }, [name]);
  if (Screen !== undefined) return <Screen />;
  if (failed) return <NotFetched />;
  return quiet ? null : <h1 class="ff-starting ff-quiet ff-label">Opening …</h1>;
}

function NotFetched(): VNode {
  const session = useSession();
  return (
    <EmptyState title="This part could not be fetched. Your edits are kept; loading the page again gets it.">
      <Button kind="primary" onPress={() => void session.flush().then(() => location.reload())}>
        Load the page again
      </Button>
    </EmptyState>
  );
}
