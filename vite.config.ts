/**
 * How the app is built, served and tested: one file for Vite and Vitest.
 * Three small plugins live here because only a build needs them: one writes the content security policy into each page,
 * one builds their-side.html by itself, so that it can share no script with the app, and the last compiles
 * service-worker/sw.ts with the list of every file of the build inside it.
 * Worked figure: 12 files in dist beside sw.js make 12 lines in that list.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { build, type Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

const here = import.meta.dirname;

/** Everything from this origin, nothing inline, nothing evaluated. */
const policy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

/** What a server should send with the app; frame-ancestors works only as a header, never in a meta tag. */
const headers = {
  'Content-Security-Policy': `${policy}; frame-ancestors 'none'`,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
};

/** Methods of decimal.js that nothing in src calls, by their long and short names. */
export const DECIMAL_LEFT_OUT = [
  ['cosine', 'cos'],
  ['cubeRoot', 'cbrt'],
  ['hyperbolicCosine', 'cosh'],
  ['hyperbolicSine', 'sinh'],
  ['hyperbolicTangent', 'tanh'],
  ['inverseCosine', 'acos'],
  ['inverseHyperbolicCosine', 'acosh'],
  ['inverseHyperbolicSine', 'asinh'],
  ['inverseHyperbolicTangent', 'atanh'],
  ['inverseSine', 'asin'],
  ['inverseTangent', 'atan'],
  ['logarithm', 'log'],
  ['sine', 'sin'],
  ['squareRoot', 'sqrt'],
  ['tangent', 'tan'],
  ['toBinary', 'toBinary'],
  ['toFraction', 'toFraction'],
  ['toHexadecimal', 'toHex'],
  ['toOctal', 'toOctal'],
  ['toNearest', 'toNearest'],
] as const;

const jsx = { runtime: 'automatic', importSource: 'preact' } as const;

/** Tests wait for what they wait for, however busy the machine: these end only what would never come. */
const patience = { testTimeout: 30_000, expect: { poll: { timeout: 30_000 } } } as const;

export default defineConfig({
  plugins: [decimalWithoutTrigonometry(), policyInPage(), theirSide(), serviceWorker()],
  oxc: { jsx },
  build: {
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: false,
    reportCompressedSize: false,
    // One script at the start instead of four: it is packed together, and tighter. So is what judges plans, beside it.
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [chunkOf('start', 'src/main.tsx', 2), chunkOf('gate', 'src/plan-format/gate.ts', 1)],
        },
      },
    },
  },
  preview: { headers },
  test: {
    reporters: ['default', './tests/support/closing-line.ts'],
    projects: [
      {
        extends: true,
        test: {
          name: 'node',
          setupFiles: ['./tests/support/seed.ts'],
          ...patience,
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**', 'tests/bench/**'],
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          maxWorkers: 2,
          ...patience,
          testTimeout: 60_000,
          hookTimeout: 240_000,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          name: 'bench',
          include: ['tests/bench/**/*.test.ts'],
          fileParallelism: false,
          maxWorkers: 1,
          testTimeout: 240_000,
          hookTimeout: 240_000,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});

interface ModuleGraph {
  getModuleInfo: (
    id: string,
  ) => { isEntry: boolean; importedIds: readonly string[]; importers: readonly string[] } | null;
}

/** One chunk of all that an entry imports at once, the imports of imports included, save what a higher one has. */
function chunkOf(name: string, entry: string, priority: number) {
  let known: Set<string> | null = null;
  return {
    priority,
    name: (id: string, graph: ModuleGraph): string | null => {
      known ??= reachedFrom(join(here, entry), graph);
      return known.has(id) ? name : null;
    },
  };
}

function reachedFrom(entry: string, graph: ModuleGraph): Set<string> {
  const reached = new Set([entry]);
  for (const id of reached) {
    for (const next of graph.getModuleInfo(id)?.importedIds ?? []) reached.add(next);
  }
  return reached;
}

function policyInPage(): Plugin {
  return {
    name: 'policy-in-page',
    apply: 'build', // the development server injects <style>, which the policy forbids
    transformIndexHtml: {
      order: 'pre',
      handler: () => [
        {
          tag: 'meta',
          attrs: { 'http-equiv': 'Content-Security-Policy', content: policy },
          injectTo: 'head-prepend',
        },
        { tag: 'meta', attrs: { name: 'firstfill-build', content: buildName() }, injectTo: 'head' },
      ],
    },
  };
}

/** The update test builds twice under two names; everyone else gets the package's version. */
function buildName(): string {
  const named = process.env['FIRSTFILL_BUILD_NAME'];
  if (named) return named;
  const manifest = JSON.parse(readFileSync(join(here, 'package.json'), 'utf8')) as { version: string };
  return manifest.version;
}

/** The page of the other side, in a build of its own: no chunk of the app can come into it, whatever both import. */
function theirSide(): Plugin {
  return afterBuild('their-side', async (outDir) => {
    await build({
      ...partOf(outDir),
      publicDir: 'public', // its icon and manifest are there, copied by the app's build
      plugins: [policyInPage()],
      oxc: { jsx },
      build: {
        ...partOf(outDir).build,
        assetsInlineLimit: 0,
        copyPublicDir: false,
        rolldownOptions: { input: join(here, 'their-side.html') },
      },
    });
  });
}

function serviceWorker(): Plugin {
  return afterBuild('service-worker', buildServiceWorker);
}

/** Runs once the app's own files are written; several run in the order of the list. */
function afterBuild(name: string, act: (outDir: string) => Promise<void>): Plugin {
  let outDir = 'dist';
  return {
    name,
    apply: 'build',
    configResolved(config) {
      outDir = resolve(config.root, config.build.outDir);
    },
    closeBundle: {
      order: 'post',
      sequential: true,
      handler: () => act(outDir),
    },
  };
}

/** What builds into the folder of the app have in common. */
function partOf(outDir: string) {
  return {
    configFile: false,
    root: here,
    publicDir: false,
    logLevel: 'warn',
    build: {
      outDir,
      emptyOutDir: false,
      target: 'es2022',
      modulePreload: false,
      reportCompressedSize: false,
    },
  } as const;
}

async function buildServiceWorker(outDir: string): Promise<void> {
  await build({
    ...partOf(outDir),
    define: {
      'self.__WB_MANIFEST': JSON.stringify(precacheList(outDir)),
      'process.env.NODE_ENV': '"production"', // else Workbox bundles its developer log
    },
    build: {
      ...partOf(outDir).build,
      rolldownOptions: {
        input: join(here, 'service-worker/sw.ts'),
        output: { format: 'iife', entryFileNames: 'sw.js' },
      },
    },
  });
}

/** Every file of the build but the worker itself; names under assets/ already carry their content's hash. */
function precacheList(folder: string): { url: string; revision: string | null }[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({ path, url: path.slice(folder.length + 1).replaceAll('\\', '/') }))
    .filter(({ url }) => url !== 'sw.js')
    .sort((a, b) => (a.url < b.url ? -1 : 1))
    .map(({ path, url }) => ({
      url,
      revision: url.startsWith('assets/')
        ? null
        : createHash('sha256').update(readFileSync(path)).digest('hex'),
    }));
}

/**
 * decimal.js can't be shaken: every method hangs on one prototype. What nothing here calls (trigonometry, other bases,
 * fractions) is left out of the build, some 4 kB gzipped of the first script. A version of the library in which a
 * method stands otherwise stops the build; tests/tidy/words.test.ts keeps these names out of src.
 */
function decimalWithoutTrigonometry(): Plugin {
  return {
    name: 'decimal-without-trigonometry',
    apply: 'build',
    enforce: 'pre',
    transform(code, id) {
      if (!id.endsWith('/decimal.js/decimal.mjs')) return null;
      let kept = code;
      for (const [long, short] of DECIMAL_LEFT_OUT) {
        const method = new RegExp(`^P\\.${long}(?: = P\\.${short})? = function [^]*?^};$`, 'm');
        if (!method.test(kept))
          throw new Error(`decimal.js has no method ${long} where one was: see vite.config.ts`);
        kept = kept.replace(method, '').replace(new RegExp(`^  Decimal\\.${short} = ${short};.*$`, 'm'), '');
      }
      for (const name of ['atan2', 'hypot', 'log10', 'log2', 'random', 'sign', 'sum']) {
        kept = kept.replace(new RegExp(`^  Decimal\\.${name} = ${name};.*$`, 'm'), '');
      }
      kept = kept.replace('PI_PRECISION = PI.length - 1', 'PI_PRECISION = 0').replace(/^PI = .*$/m, '');
      return { code: kept, map: null };
    },
  };
}
