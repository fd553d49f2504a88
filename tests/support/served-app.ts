/**
 * The built app behind a real address, for browser tests: the very server and headers of `npm start`.
 * `dist` is used while it is newer than everything it is made of, as it is inside `npm test`; otherwise the
 * app is built once into a folder of its own under node_modules/.cache, so that a test never sees an old build.
 */
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { preview } from 'vite';

const root = join(import.meta.dirname, '../..');
const cache = join(root, 'node_modules/.cache/firstfill');
const madeOf = [
  'src',
  'public',
  'service-worker',
  'demo-catalog',
  'index.html',
  'their-side.html',
  'vite.config.ts',
  'tsconfig.json',
  'package-lock.json',
];

export interface ServedApp {
  /** With its closing slash: http://127.0.0.1:4301/ */
  readonly address: string;
  readonly port: number;
  /** Ends the server, as if the network had gone; the port may be served again. */
  stop(): Promise<void>;
}

/** The app as it is now, built if need be, on a free port. */
export async function serveApp(): Promise<ServedApp> {
  return serveFolder({ folder: await freshBuild(), port: await freePort() });
}

/** Any folder on a given port: an update is a second build served where the first one was. */
export async function serveFolder(where: { folder: string; port: number }): Promise<ServedApp> {
  const server = await preview({
    root,
    logLevel: 'error',
    build: { outDir: where.folder },
    preview: { host: '127.0.0.1', port: where.port, strictPort: true },
  });
  return {
    address: `http://127.0.0.1:${where.port}/`,
    port: where.port,
    stop: () => server.close(),
  };
}

/** The folder of a build that is newer than all it is made of. */
export async function freshBuild(): Promise<string> {
  const parts = madeOf.flatMap((part) => filesUnder(join(root, part)));
  const newest = Math.max(...parts.map((part) => part.changedMs));
  const dist = join(root, 'dist');
  const lastWritten = join(dist, 'sw.js');
  if (existsSync(lastWritten) && statSync(lastWritten).mtimeMs > newest) return dist;

  const folder = join(cache, stamp(parts));
  if (!existsSync(folder)) {
    dropOldBuilds();
    const unfinished = `${folder}-${process.pid}`;
    await buildApp({ folder: unfinished, name: 'test' });
    if (existsSync(folder)) rmSync(unfinished, { recursive: true });
    else renameSync(unfinished, folder);
  }
  return folder;
}

/** Builds the app into a folder under a build name; two names give two versions of the same app. */
export async function buildApp(wanted: { folder: string; name: string }): Promise<void> {
  const vite = join(root, 'node_modules/vite/bin/vite.js');
  const built = ['build', '--outDir', wanted.folder, '--emptyOutDir', '--logLevel', 'warn'];
  // Vitest sets NODE_ENV to test, which would make this a development build.
  const env = { ...process.env, NODE_ENV: 'production', FIRSTFILL_BUILD_NAME: wanted.name };
  await promisify(execFile)(process.execPath, [vite, ...built], { cwd: root, env });
}

export async function freePort(): Promise<number> {
  return new Promise((done, failed) => {
    const probe = createServer();
    probe.once('error', failed);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => {
        if (address && typeof address === 'object') done(address.port);
        else failed(new Error('The system gave no free port for the test server.'));
      });
    });
  });
}

interface Part {
  readonly path: string;
  readonly changedMs: number;
}

/** Folders count too: their time changes when a file in them goes. */
function filesUnder(path: string): Part[] {
  if (!existsSync(path)) return [];
  const status = statSync(path);
  const self = { path, changedMs: status.mtimeMs };
  if (!status.isDirectory()) return [self];
  return [self, ...readdirSync(path).flatMap((name) => filesUnder(join(path, name)))];
}

function stamp(parts: Part[]): string {
  const text = parts.map((part) => `${part.path} ${part.changedMs}`).join('\n');
  return createHash('sha256').update(text).digest('hex').slice(0, 16);
}

function dropOldBuilds(): void {
  mkdirSync(cache, { recursive: true });
  const hourAgoMs = Date.now() - 3_600_000;
  for (const name of readdirSync(cache)) {
    const folder = join(cache, name);
    if (statSync(folder).mtimeMs < hourAgoMs) rmSync(folder, { recursive: true });
  }
}
