// What the parts of a session share: what was injected, the state, and the little that is no signal because no screen
// shows it. Made once by session.ts.
import type { Computer } from '../compute/computer.ts';
import type { NumberLook, PartsOf } from '../domain/money/look.ts';
import type { Plan } from '../domain/plan/index.ts';
import type { Outcome } from '../domain/problems.ts';
import type { Results } from '../domain/results.ts';
import type { Gate, PlanFile, Reading, Refusal } from '../plan-format/index.ts';
import type { Saver, Store, Tabs } from '../storage/index.ts';
import type { HistoryPort } from './navigation.ts';
import type { PlanSave } from './saving.ts';
import type { Pendings, State } from './state.ts';
import type { Steps } from './undo.ts';

/** A plan file of the demo catalogue. */
export interface Example {
  id: string;
  text: string;
}

export interface Device {
  isOnline: () => boolean;
  onOnlineChange: (tell: () => void) => void;
  /** Called when the page may be about to go: hidden, or left. */
  onHide: (tell: () => void) => void;
  download: (file: PlanFile) => void;
  /** Hands a file to another app of the device; null where the device can't. */
  share: ((file: PlanFile) => Promise<void>) | null;
  askPersistent: () => Promise<boolean>;
}

/** The service worker, seen from here: a new version waits until it is let in. */
export interface UpdatePort {
  onWaiting: (tell: () => void) => void;
  activate: () => void;
}

export interface SessionDeps {
  evaluate: (plan: Plan) => Outcome<Results>;
  /** How numbers look where the person lives: (value, shape) => new Intl.NumberFormat(locale, shape).formatToParts(value). */
  partsOf: PartsOf;
  /** Long work, off the page's thread. */
  computer: Computer;
  examples: readonly Example[];
  /** Fetches what judges plans; may be called again after it failed. */
  loadGate: () => Promise<Gate>;
  openStore: (onClosed: (refusal: Refusal) => void) => Promise<Reading<Store>>;
  tabs: Tabs;
  history: HistoryPort;
  device: Device;
  update: UpdatePort;
  /** Milliseconds since 1970. */
  clock: () => number;
  newId: () => string;
}

/** A state of a plan that is not, or not yet, in the store. */
export interface HeldPlan {
  plan: Plan;
  revision: number;
  updatedAt: number;
}

export interface Core {
  deps: SessionDeps;
  state: State;
  store: Store | null;
  /** What judges plans, once it is there; ask gate.ts for it. */
  gate: Gate | null;
  /** By plan id: what the store doesn't have yet. */
  held: Map<string, HeldPlan>;
  /** By plan id: the newest revision that this tab has read from the store or handed to it. */
  seen: Map<string, number>;
  /** By plan id: the plan as kept in an older format, until it was saved once in today's. */
  originals: Map<string, unknown>;
  /** By plan id: undo and refused texts of plans that were left. */
  left: Map<string, { steps: Steps; pending: Pendings }>;
  savers: Map<string, Saver<PlanSave>>;
  /** Counts openings, so that a late answer for an earlier one is dropped. */
  openings: number;
  /** By currency: how numbers look here. */
  looks: Map<string, NumberLook>;
  askedPersistent: boolean;
}
