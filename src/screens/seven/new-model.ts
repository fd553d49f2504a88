// A plan to be: texts live in the draft, results are computed at every keystroke, nothing is a plan until it is kept.
// Worked example: typing 4.99, 1.10 and 42 shows the ladder's verdict in the same frame.
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { evaluate } from '../../domain/evaluate.ts';
import type { Plan } from '../../domain/plan/index.ts';
import {
  NO_NUMBERS,
  quickPlan,
  type Region,
  type SevenNumbers,
  shownWith,
} from '../../domain/quick/index.ts';
import type { Results } from '../../domain/results.ts';
import { today } from '../shared/moment.ts';
import { problemSentence } from '../shared/problem-words.ts';
import { useSession } from '../shared/session-context.ts';
import { sayFor } from '../shared/use-say.ts';
import { DRAFT_NAME, draftOf, emptyDraft, isEmptyDraft, regionOfDraft, type SevenDraft } from './draft.ts';
import type { SevenModel } from './model.ts';
import { readSeven } from './read-seven.ts';

export interface NewSeven extends SevenModel {
  draft: SevenDraft;
  region: Region;
  setRegion: (change: Pick<SevenDraft, 'regionId' | 'currency'>) => void;
  /** Makes the plan, keeps it and opens its verdicts; false when it was refused. */
  keep: () => Promise<boolean>;
  clear: () => void;
}

/** Null until the draft was read. */
export function useNewSeven(): NewSeven | null {
  const session = useSession();
  const [draft, setDraft] = useState<SevenDraft | null>(null);
  const good = useRef<SevenNumbers>(NO_NUMBERS);
  useEffect(() => {
    void session.readDraft(DRAFT_NAME).then((kept) => setDraft((typed) => typed ?? draftOf(kept)));
  }, [session]);
  const change = (changes: Partial<SevenDraft>) => {
    const next = { ...(draft ?? emptyDraft()), ...changes };
    setDraft(next);
    void session.writeDraft(DRAFT_NAME, isEmptyDraft(next) ? null : next);
  };
  const computed = useMemo(() => (draft === null ? null : compute(draft, good.current)), [draft]);
  if (draft === null || computed === null) return null;
  good.current = computed.seven;
  return {
    ...computed,
    texts: draft.texts,
    draft,
    type: (key, text) => change({ texts: { ...draft.texts, [key]: text } }),
    leave: () => undefined,
    set: change,
    setRegion: change,
    clear: () => {
      good.current = NO_NUMBERS;
      change({ ...emptyDraft(), regionId: draft.regionId, currency: draft.currency });
    },
    keep: async () => {
      const made = quickPlan({ ...argsOf(computed.seven, computed.region), planId: session.newId() });
      if (!made.ok || !(await session.addPlan(made.value))) return false;
      void session.writeDraft(DRAFT_NAME, null);
      const id = session.plan.value?.id;
      if (id !== undefined) session.go({ view: 'front', planId: id, sheet: null });
      return true;
    },
  };
}

function argsOf(seven: SevenNumbers, region: Region) {
  return { seven, region, startDate: today() };
}

function compute(draft: SevenDraft, before: SevenNumbers) {
  const region = regionOfDraft(draft);
  const { freeFill, distributor, productName, chainName, texts } = draft;
  const read = readSeven({ texts, before, currency: region.currency });
  const seven: SevenNumbers = { ...read.seven, freeFill, distributor, productName, chainName };
  const made = quickPlan({ ...argsOf(seven, region), planId: 'draft' });
  const base = {
    region,
    seven,
    problems: read.problems,
    currency: region.currency,
    parts: shownWith(seven),
    older: Object.keys(read.problems).length > 0,
  };
  const nothing: { plan: Plan | null; results: Results | null; trouble: string } = {
    plan: null,
    results: null,
    trouble: '',
  };
  if (!made.ok) return { ...base, ...nothing };
  const outcome = evaluate(made.value, sayFor);
  if (outcome.ok) return { ...base, ...nothing, plan: made.value, results: outcome.value };
  const trouble = outcome.problems.map((problem) => problemSentence(made.value, problem)).join(' ');
  return { ...base, ...nothing, plan: made.value, trouble };
}
