// The other side of the table, a document of its own: it reads one record and nothing else of the app. It stays until
// somebody holds the corner key, or taps the code; where nothing is turned, it gives the app its place back.
// Worked example: opened with nothing kept it goes to the app at once; with a record it draws that, and Back, a reload
// or another tab draws it again.
import { render } from 'preact';
import { dropTurn, tellTurn } from '../storage/their-side.ts';
import { flagged, hearTurn, readTurn, type Turn } from '../storage/turned.ts';
import { Page } from './page.tsx';
import { shownFrom } from './record.ts';
import './their-side.css';

/**
 * The same news comes twice, by the channel and by the flag, and this tab hears its own too: a second navigation would
 * end the first, and a browser under load has been seen to lose the tab over it.
 */
let isLeaving = false;

void run();

async function run(): Promise<void> {
  const place = document.getElementById('their-side');
  if (place === null) throw new Error('their-side.html has no place for the page');
  let back = '';
  // Heard before the record is read, so that no news falls in between.
  hearTurn((news) => (news === 'released' ? goBack(back) : lookAgain()));
  const turn = await readTurn();
  if (turn === null && flagged() !== true) return goBack('');
  back = turn?.back ?? '';
  addEventListener('pageshow', ({ persisted }) => {
    if (!persisted) return;
    isLeaving = false;
    lookAgain();
  });
  applyScheme(turn);
  const locale = navigator.languages[0] ?? navigator.language;
  const release = async (): Promise<void> => {
    await dropTurn();
    tellTurn('released');
    goBack(back);
  };
  render(
    <Page shown={shownFrom(turn?.record)} locale={locale} code={turn?.code ?? null} release={release} />,
    place,
  );
}

function lookAgain(): void {
  if (isLeaving) return;
  isLeaving = true;
  location.reload();
}

/** The app stands beside this page; the address it is to open at was kept, never in the address of this one. */
function goBack(back: string): void {
  if (isLeaving) return;
  isLeaving = true;
  document.body.hidden = true;
  location.replace(`${import.meta.env.BASE_URL}${back.startsWith('#') ? back : ''}`);
}

function applyScheme(turn: Turn | null): void {
  if (turn?.scheme === 'light' || turn?.scheme === 'dark')
    document.documentElement.dataset['scheme'] = turn.scheme;
}
