// Why a plan file was not taken in: each problem with its place, what came and what was expected. Nothing on the device
// was touched. Worked example: "broken.json was not taken in. The plan: got “{ nope”. Expected a JSON file ..."
import type { VNode } from 'preact';
import { sentence } from '../../domain/problems.ts';
import { Button, ProblemNote } from '../../widgets/index.ts';
import { useSession } from '../shared/session-context.ts';

/** A file with hundreds of problems is shown by its first ones. */
const SHOWN_MOST = 8;

export function ImportTrouble(): VNode | null {
  const session = useSession();
  const trouble = session.importTrouble.value;
  if (trouble === null) return null;
  const { fileName, problems } = trouble;
  const more = problems.length - SHOWN_MOST;
  return (
    <ProblemNote>
      <p>“{fileName}” was not taken in; nothing else was changed.</p>
      <ul class="ff-trouble">
        {problems.slice(0, SHOWN_MOST).map((problem) => (
          <li key={`${problem.path} ${problem.code} ${problem.got}`}>{sentence(problem)}</li>
        ))}
      </ul>
      {more > 0 && <p>And {more} more.</p>}
      <Button onPress={() => session.clearImportTrouble()}>Close</Button>
    </ProblemNote>
  );
}
