// Draws fields from their specs, lists of places with their add and remove, and parts that may be missing.
// Worked example: <Fields base="accounts/corner" specs={TERMS} /> draws eight fields bound to Corner's terms.
import type { ComponentChildren, VNode } from 'preact';
import { addPart, addPlace, type Command, removePlace } from '../../app/commands/field.ts';
import type { BasisNote } from '../../domain/plan/index.ts';
import { getAt, idOf } from '../../domain/plan/path.ts';
import { Button } from '../../widgets/index.ts';
import { ChoiceFor, DateFor, FieldFor, SwitchFor } from '../shared/field-for.tsx';
import { problemSentence } from '../shared/problem-words.ts';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { WeekFor } from '../shared/week-for.tsx';
import type { FieldSpec } from './specs.ts';

export function Fields({ base, specs }: { base: string; specs: readonly FieldSpec[] }): VNode {
  return (
    <>
      {specs.map((spec) => (
        <OneField key={spec.field} path={base === '' ? spec.field : `${base}/${spec.field}`} spec={spec} />
      ))}
    </>
  );
}

function OneField({ path, spec }: { path: string; spec: FieldSpec }): VNode {
  const { look } = useSay();
  const { kind, label, hint, isMoney, unit } = spec;
  if (kind === 'switch') return <SwitchFor path={path} label={label} hint={hint} />;
  if (kind === 'week') return <WeekFor path={path} label={label} placeholder={spec.placeholder} />;
  if (kind === 'date') return <DateFor path={path} label={label} hint={hint} />;
  if (kind === 'choice') {
    return (
      <ChoiceFor path={path} label={label} hint={hint} choices={spec.choices ?? []} asList={spec.asList} />
    );
  }
  const before = isMoney ? look.money.before.trim() : '';
  const after = isMoney ? look.money.after.trim() : '';
  return (
    <FieldFor
      path={path}
      label={label}
      kind={kind}
      hint={hint}
      prefix={before === '' ? undefined : before}
      unit={[after, unit].filter((each) => each !== undefined && each !== '').join(' ') || undefined}
      step={spec.step}
      least={spec.least}
      placeholder={spec.placeholder}
    />
  );
}

export interface PartProps {
  path: string;
  label: string;
  hint?: string | undefined;
  blank: () => unknown;
  /** Fields of the blank that are guesses, each with what it stands on. */
  guesses?: readonly Guess[] | undefined;
  children: ComponentChildren;
}

export interface Guess {
  field: string;
  source: string;
  /** Plausible ends, in the field's own unit; null where they change nothing that is worth running again. */
  low: string | null;
  high: string | null;
}

/** A part that may be missing: a key adds it, and takes it out again. What is guessed in a new one is marked so. */
export function Part({ path, label, hint, blank, guesses = [], children }: PartProps): VNode {
  const session = useSession();
  const isThere = getAt(usePlan(), path) !== null;
  const change = (args: { value: unknown; notes: readonly BasisNote[] }) => {
    session.endStep();
    session.run(addPart, { path, ...args }, path);
    session.endStep();
  };
  const add = () => change({ value: blank(), notes: notesOf(path, guesses) });
  if (!isThere) {
    return (
      <div class="ff-part-missing">
        <Button onPress={add}>Add {label}</Button>
        {hint !== undefined && <p class="ff-least ff-quiet">{hint}</p>}
        <Trouble path={path} />
      </div>
    );
  }
  return (
    <fieldset class="ff-place">
      <legend class="ff-label">{label.charAt(0).toUpperCase() + label.slice(1)}</legend>
      {hint !== undefined && <p class="ff-least ff-quiet">{hint}</p>}
      {children}
      <Trouble path={path} />
      <Button kind="quiet" label={`Take out ${label}`} onPress={() => change({ value: null, notes: [] })}>
        Take out
      </Button>
    </fieldset>
  );
}

/** The notes of a part or place that stands at `path`. */
export function notesOf(path: string, guesses: readonly Guess[]): BasisNote[] {
  return guesses.map(({ field, ...note }) => ({ path: `${path}/${field}`, kind: 'guess', ...note }));
}

export interface PlacesProps {
  /** The list's path in the plan. */
  listPath: string;
  /** One place's name, spoken with its remove button: "Opening 2". */
  nameOf: (place: unknown, index: number) => string;
  addLabel: string;
  /** A new place with its own id. */
  blank: (id: string) => unknown;
  children: (path: string, place: unknown, index: number) => ComponentChildren;
  /** A list that may not be empty keeps its last place. */
  keepsOne?: boolean | undefined;
  /** Fields of a new place that are guesses. */
  guesses?: readonly Guess[] | undefined;
  /** Where more goes with a place than the place. */
  removal?: Command<{ path: string }> | undefined;
}

/** Every place of a list with its fields, a way to take it out, and a way to add one. */
export function Places({
  listPath,
  nameOf,
  addLabel,
  blank,
  children,
  keepsOne = false,
  removal = removePlace,
  guesses = [],
}: PlacesProps): VNode {
  const session = useSession();
  const plan = usePlan();
  const found = getAt(plan, listPath);
  const list: readonly unknown[] = Array.isArray(found) ? found : [];
  const add = () => {
    const id = session.newId();
    const notes = notesOf(`${listPath}/${id}`, guesses);
    session.run(addPlace, { listPath, index: list.length, place: blank(id), notes }, listPath);
    session.endStep();
  };
  return (
    <div class="ff-places">
      {list.map((place, index) => {
        const id = idOf(place) ?? String(index);
        const path = `${listPath}/${id}`;
        return (
          <fieldset key={id} class="ff-place">
            <legend class="ff-label">{nameOf(place, index)}</legend>
            {children(path, place, index)}
            {!(keepsOne && list.length === 1) && (
              <Button
                kind="quiet"
                label={`Take out ${nameOf(place, index)}`}
                onPress={() => session.run(removal, { path }, listPath)}
              >
                Take out
              </Button>
            )}
          </fieldset>
        );
      })}
      <Trouble path={listPath} />
      <Button onPress={add}>{addLabel}</Button>
    </div>
  );
}

/** Why an edit of a whole list or part was not taken. */
export function Trouble({ path }: { path: string }): VNode | null {
  const session = useSession();
  const plan = usePlan();
  const problems = session.problems.value.get(path) ?? [];
  if (problems.length === 0) return null;
  return (
    <p class="ff-field-problem" role="alert">
      {problems.map((problem) => problemSentence(plan, problem)).join(' ')}
    </p>
  );
}

/** A place's own name, or null. */
export function nameIn(place: unknown, key: 'label' | 'name'): string | null {
  if (typeof place !== 'object' || place === null) return null;
  const value = (place as Record<string, unknown>)[key];
  return typeof value === 'string' && value.trim() !== '' ? value : null;
}
