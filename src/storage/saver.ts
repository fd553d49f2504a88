// Edits are saved as they are made, one save at a time: while one is under way only the newest next one waits, so a run
// of keystrokes writes its first and its last state. When the page is about to go, what waits is started at once: the
// store keeps the order.
// Worked figure: seven edits offered while one save is under way lead to two saves, of the first and the seventh.

export interface Saver<T> {
  /** Takes the newest state; it is written now, or as soon as the one under way is done. */
  offer: (state: T) => void;
  /** Starts what waits without waiting for its turn; resolves when everything offered so far was written or refused. */
  flush: () => Promise<void>;
  isIdle: () => boolean;
}

/** `write` must not throw or reject; it hands a refusal to whoever needs to know. */
export function makeSaver<T>(write: (state: T) => Promise<void>): Saver<T> {
  let underWay: Promise<void> | null = null;
  let waiting: { state: T } | null = null;

  const start = (): void => {
    if (waiting === null) return;
    const { state } = waiting;
    waiting = null;
    const before = underWay;
    const own: Promise<void> = Promise.all([before, write(state)]).then(() => {
      if (underWay !== own) return;
      underWay = null;
      start();
    });
    underWay = own;
  };

  return {
    offer: (state) => {
      waiting = { state };
      if (underWay === null) start();
    },
    flush: async () => {
      start();
      while (underWay !== null) await underWay;
    },
    isIdle: () => underWay === null && waiting === null,
  };
}
