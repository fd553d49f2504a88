// Numbers of what is sold and shipped: unit, inner pack, case, the prefix pallets are numbered from; their symbols as proofs.
// A wrong check digit is said, with the right one. Worked example: 6291041500214 is refused, 6291041500213 is right.
import type { VNode } from 'preact';
import type { Item } from '../../domain/plan/index.ts';
import { numberFindings, type PackLevel, packLevels } from '../../domain/readiness/index.ts';
import {
  Button,
  ButtonRow,
  Caution,
  Code,
  EmptyState,
  ProblemNote,
  Table,
  type TableColumn,
} from '../../widgets/index.ts';
import { Part as OwnPart } from '../inputs/fields.tsx';
import { FieldFor } from '../shared/field-for.tsx';
import { Part } from '../shared/parts.tsx';
import { usePlan, useSession } from '../shared/session-context.ts';
import { useSay } from '../shared/use-say.ts';
import { View } from '../shared/view.tsx';
import { BackToReadiness } from './run-sheet.tsx';
import './readiness.css';

const LEVELS: Readonly<Record<PackLevel['level'], string>> = {
  unit: 'Unit',
  inner: 'Inner pack',
  case: 'Case',
  pallet: 'Pallet',
};
function lower(level: PackLevel['level']): string {
  return LEVELS[level].toLowerCase();
}

const COLUMNS: readonly TableColumn[] = [
  { key: 'level', label: 'What', kind: 'text' },
  { key: 'holds', label: 'Holds', kind: 'number' },
  { key: 'units', label: 'Units', kind: 'number' },
  { key: 'number', label: 'Number', kind: 'number' },
];

export function NumbersScreen(): VNode {
  const plan = usePlan();
  return (
    <View title="Item and case numbers" verdict={null}>
      <h2 class="ff-numbers-title">Item and case numbers</h2>
      {plan.items.length === 0 ? (
        <EmptyState title="No product yet: there is nothing to number." />
      ) : (
        <div class="ff-numbers">
          {plan.items.map((item) => (
            <Part key={item.id} title={item.name}>
              <Numbers item={item} />
            </Part>
          ))}
        </div>
      )}
      <ButtonRow>
        <BackToReadiness />
      </ButtonRow>
      <Caution>
        Symbols here are proofs. Whether a printed one scans is for an accredited verification to say; numbers
        come from GS1 and are yours only once it has given them.
      </Caution>
    </View>
  );
}

function Numbers({ item }: { item: Item }): VNode {
  const plan = usePlan();
  const path = `items/${item.id}/numbers`;
  const findings = numberFindings(plan).filter(({ itemId }) => itemId === item.id);
  const levels = packLevels(item);
  return (
    <>
      <OwnPart
        path={path}
        label="its numbers"
        hint="GTIN of unit, inner pack and case, 8, 12, 13 or 14 digits."
        blank={() => ({ unit: null, inner: null, case: null, companyPrefix: null })}
      >
        <FieldFor path={`${path}/unit`} label="Unit" kind="text" placeholder="not known" />
        {levels.some(({ level }) => level === 'inner') && (
          <FieldFor path={`${path}/inner`} label="Inner pack" kind="text" placeholder="not known" />
        )}
        <FieldFor path={`${path}/case`} label="Case" kind="text" placeholder="not known" />
        <FieldFor
          path={`${path}/companyPrefix`}
          label="Our company prefix"
          kind="text"
          placeholder="not known"
          hint="Pallets are numbered from it (SSCC); the one shown here, with serial number 1, is an example."
        />
        {levels.map((level) => (
          <Proposal key={level.level} path={path} level={level} />
        ))}
      </OwnPart>
      {findings.length > 0 && (
        <ProblemNote>
          {findings.map(({ path: at, sentence }) => (
            <p key={`${at} ${sentence}`}>{sentence}</p>
          ))}
        </ProblemNote>
      )}
      <Hierarchy levels={levels} name={item.name} />
      <Symbols levels={levels} name={item.name} />
    </>
  );
}

/** The number that follows from the unit's: taken with a tap, never by itself. */
function Proposal({ path, level: { level, proposed } }: { path: string; level: PackLevel }): VNode | null {
  const session = useSession();
  if (proposed === null) return null;
  const take = (): void => {
    session.endStep();
    session.setField(`${path}/${level}`, proposed);
    session.endStep();
  };
  return (
    <p>
      <Button onPress={take}>
        Take {proposed} for the {lower(level)}
      </Button>
    </p>
  );
}

/** How many of each go into the next, by the sizes of the plan. */
function Hierarchy({ levels, name }: { levels: readonly PackLevel[]; name: string }): VNode {
  const say = useSay();
  const rows = levels.map(({ level, holds, units, number }, index) => ({
    id: level,
    cells: [
      LEVELS[level],
      index === 0 ? '' : `${say.count(holds)} × ${lower(levels[index - 1]?.level ?? 'unit')}`,
      say.count(units),
      number ?? 'not known',
    ],
  }));
  return <Table caption={`${name}: what goes into what`} columns={COLUMNS} rows={rows} compact />;
}

function Symbols({ levels, name }: { levels: readonly PackLevel[]; name: string }): VNode | null {
  const known = levels.flatMap(({ level, number }) => (number === null ? [] : [{ level, number }]));
  if (known.length === 0) return null;
  return (
    <div class="ff-symbols">
      {known.map(({ level, number }) => (
        <Code key={level} digits={number} label={`${name}, ${lower(level)}`} />
      ))}
    </div>
  );
}
