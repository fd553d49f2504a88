// What this app is and isn't, in a few sentences, and how it looks. Worked example: the scheme "Dark" is kept on the
// device and holds from the next start on too.
import type { VNode } from 'preact';
import { useState } from 'preact/hooks';
import { Caution, Segmented, Sheet } from '../../widgets/index.ts';
import { schemeOf, setScheme } from '../shared/scheme.ts';
import { useSession } from '../shared/session-context.ts';

export function AboutSheet(): VNode {
  const session = useSession();
  const [scheme, choose] = useState<string>(schemeOf.value);
  return (
    <Sheet title="What this is, and what it isn’t" onClose={() => session.closeSheet()}>
      <div class="ff-stack">
        <p>
          Firstfill works out whether a shelf pays and whether the first fill can be afforded, from what you
          type. Every figure opens to the lines that made it, down to what was typed or to the default that
          stands in.
        </p>
        <p>
          It works with no network. Nothing you type leaves this device, unless you save it as a file and send
          it.
        </p>
        <Caution>Computed, not advice. A licensed professional should confirm terms and funding.</Caution>
        <Caution>
          Income tax and sales tax at the till are outside: results are before them. Value added tax counts as
          money that comes and goes, where the plan sets it.
        </Caution>
        <Caution>
          The shelf price is the chain’s to set. Suggesting one is one thing, agreeing one another; in the EU
          and the UK agreeing a minimum is a hardcore restriction.
        </Caution>
        <Caution>
          Product safety, labels and certificates: ask your local code and an accredited body.
        </Caution>
        <Segmented
          label="Paper"
          value={scheme}
          choices={[
            { value: 'device', label: 'As the device' },
            { value: 'light', label: 'Light' },
            { value: 'dark', label: 'Dark' },
          ]}
          onChoose={(value) => {
            setScheme(session, value);
            choose(value);
          }}
        />
      </div>
    </Sheet>
  );
}
