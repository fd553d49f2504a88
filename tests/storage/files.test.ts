/** Plans as files: taken in from a chosen file, handed out through a download, and the news that tabs tell each other. */
import { afterEach, expect, test, vi } from 'vitest';
import { FORMAT_VERSION, planFile } from '../../src/plan-format/index.ts';
import { downloadFile, type News, openTabs, readPlanFile } from '../../src/storage/index.ts';
import { examplePlan, refusalIn, valueIn } from './store.ts';

afterEach(() => vi.unstubAllGlobals());

const plan = examplePlan('small');

test('a downloaded file can be chosen again', async () => {
  const { name, text } = planFile({ ...plan, name: 'Spring tea / 60 doors: "cheap"' });
  expect(name).toBe('Spring-tea-60-doors-cheap.firstfill.json');
  const read = await readPlanFile(new File([text], name));
  expect(valueIn(read).items).toEqual(plan.items);
});

test('a name of signs alone still gives a file name, and one in another script is kept', () => {
  expect(planFile({ ...plan, name: '///' }).name).toBe('plan.firstfill.json');
  expect(planFile({ ...plan, name: 'Čaj 茶' }).name).toBe('Čaj-茶.firstfill.json');
});

test('a file that is far too large is not read', async () => {
  const text = vi.fn();
  const refusal = refusalIn(await readPlanFile({ name: 'video.mp4', size: 900_000_000, text }));
  expect(refusal.code).toBe('file-unreadable');
  expect(refusal.sentence).toBe('"video.mp4" has 900 MB, far more than any plan file.');
  expect(text).not.toHaveBeenCalled();
});

test('a file that went away while it was chosen is refused by name', async () => {
  const text = () => Promise.reject(new DOMException('gone', 'NotFoundError'));
  const refusal = refusalIn(await readPlanFile({ name: 'spring.json', size: 10, text }));
  expect(refusal.sentence).toBe('"spring.json" could not be read (NotFoundError). Choose it again.');
});

test('a picture is no plan, in words', async () => {
  const read = await readPlanFile(new File([new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 1, 2])], 'x.png'));
  expect(read).toMatchObject({ ok: false, problems: [{ code: 'not-json', path: '' }] });
});

test('a download is a link with the text, used once and taken away', async () => {
  const link = { href: '', download: '', hidden: false, click: vi.fn(), remove: vi.fn() };
  const append = vi.fn();
  vi.stubGlobal('document', { createElement: () => link, body: { append } });
  vi.useFakeTimers();
  const revoke = vi.spyOn(URL, 'revokeObjectURL');
  const made = vi.spyOn(URL, 'createObjectURL');
  downloadFile({ name: 'tea.firstfill.json', text: '{"a": 1}' });
  expect(link).toMatchObject({ download: 'tea.firstfill.json', hidden: true });
  expect(link.href).toMatch(/^blob:/);
  expect(link.click).toHaveBeenCalledOnce();
  expect(link.remove).toHaveBeenCalledOnce();
  expect(append).toHaveBeenCalledWith(link);
  const blob = made.mock.calls[0]?.[0];
  expect(blob instanceof Blob && (await blob.text())).toBe('{"a": 1}');
  vi.advanceTimersByTime(60_000);
  expect(revoke).toHaveBeenCalledWith(link.href);
  vi.useRealTimers();
});

test('news reaches the other tabs, with the format, and not the teller', async () => {
  const [here, there] = [openTabs(), openTabs()];
  const heard: News[] = [];
  const own: News[] = [];
  const arrived = new Promise<void>((resolve) => {
    there.listen((news) => {
      heard.push(news);
      if (heard.length === 3) resolve();
    });
  });
  here.listen((news) => own.push(news));
  here.tell({ kind: 'opened' });
  here.tell({ kind: 'saved', id: 'spring', revision: 8 });
  here.tell({ kind: 'deleted', id: 'spring' });
  await arrived;
  expect(heard).toEqual([
    { kind: 'opened', format: FORMAT_VERSION },
    { kind: 'saved', format: FORMAT_VERSION, id: 'spring', revision: 8 },
    { kind: 'deleted', format: FORMAT_VERSION, id: 'spring' },
  ]);
  expect(own).toEqual([]);
  here.close();
  there.close();
});

test('of news in words a newer app made up, the format is understood', async () => {
  const tabs = openTabs();
  const newer = new BroadcastChannel('firstfill');
  const heard = new Promise<News>((resolve) => tabs.listen(resolve));
  newer.postMessage('what is this');
  newer.postMessage({ kind: 'merged', format: 7, ids: [1, 2] });
  expect(await heard).toEqual({ kind: 'opened', format: 7 });
  newer.close();
  tabs.close();
});

test('without a channel between tabs everything else works', () => {
  vi.stubGlobal('BroadcastChannel', undefined);
  const tabs = openTabs();
  tabs.listen(() => expect.unreachable());
  tabs.tell({ kind: 'opened' });
  tabs.close();
});
