import { defineConfig, type TestProjectInlineConfiguration } from 'vitest/config';
import solid from 'vite-plugin-solid';
import { VitePWA } from 'vite-plugin-pwa';
import packageJson from './package.json' with { type: 'json' };
import { leaveOut } from './src/cli/leave-out.ts';
import { piecesOf } from './src/cli/pieces.ts';
import { servedModels } from './src/cli/served-models.ts';
import { shorten } from './src/cli/shorten.ts';
import { contentSecurity } from './src/cli/content-security.ts';
import { firstPaint } from './src/cli/first-paint.ts';

const MEBIBYTE = 2 ** 20;

/** Browser tests in which next to nothing is spoken, heard or seen in real time: recordings are decoded as fast as it goes. */
const PAGES_WITHOUT_SOUND = [
  'adapted',
  'bundle',
  'by-hand',
  'by-switch',
  'first-load',
  'lead-hand',
  'second-window',
  'hear-command',
  'hearing-model',
  'hearing-speech',
  'legible',
  'offline',
  'preparation',
  'replay',
  'screens',
  'sealed-file',
  'targets',
].map((name) => `tests/browser/${name}.test.ts`);

const inBrowser = {
  environment: 'node',
  globalSetup: ['tests/browser/serve-build.ts'],
  // Sound and pictures run in real time: a machine that is busy for a moment loses some. A fault fails twice, and twice more
  // when its file is run again alone (src/cli/all-tests.ts). A test that must hold each time says "retry: 0".
  retry: 1,
  testTimeout: 180_000,
  hookTimeout: 120_000,
} satisfies TestProjectInlineConfiguration['test'];

export default defineConfig({
  root: 'src',
  base: './',
  cacheDir: '../node_modules/.vite',
  plugins: [
    solid(),
    servedModels('models'),
    contentSecurity(),
    firstPaint(),
    leaveOut(),
    shorten(),
    VitePWA({
      registerType: 'prompt',
      injectRegister: null,
      // The speech model is fetched by the page itself, with progress and a checksum, and kept once (src/hearing/model-cache.ts).
      workbox: {
        // Whatever the environment of the build: the other mode is five times the size.
        mode: 'production',
        // In one file with its runtime: half a kilobyte less than in two.
        inlineWorkboxRuntime: true,
        globPatterns: ['**/*.{html,js,css,wasm,svg,json,webmanifest}'],
        globIgnores: ['models/**'],
        maximumFileSizeToCacheInBytes: 32 * MEBIBYTE,
        navigateFallback: 'index.html',
        clientsClaim: true,
      },
      manifest: {
        name: 'Bothhands',
        short_name: 'Bothhands',
        description: 'Calls out a removal and refit, hears the answer, reads it back and keeps the record.',
        theme_color: '#16211f',
        background_color: '#16211f',
        display: 'standalone',
        icons: [{ src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any maskable' }],
      },
    }),
  ],
  define: { __APP_VERSION__: JSON.stringify(packageJson.version) },
  worker: { format: 'es', plugins: () => [shorten()] },
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    // A browser that does not know it only fetches a little later.
    modulePreload: { polyfill: false },
    target: 'es2022',
    chunkSizeWarningLimit: 600,
    // Procedures and icons stay files of their own.
    assetsInlineLimit: 0,
    // Again and again, until nothing more can be shortened.
    rolldownOptions: {
      output: {
        minify: { compress: { maxIterations: 20 }, mangle: { toplevel: true }, codegen: true },
        codeSplitting: {
          includeDependenciesRecursively: false,
          groups: [{ name: piecesOf(import.meta.dirname), debugName: 'pieces' }],
        },
      },
      // How long the parts of a build take is nobody's concern who starts the app.
      checks: { bundlerTimings: false },
    },
  },
  test: {
    projects: [
      {
        root: import.meta.dirname,
        test: {
          name: 'rooms',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          environment: 'node',
          // Nothing in a room remembers anything: its files share a process, which loads what they need once.
          isolate: false,
          // Properties with thousands of cases, at the lowest priority (src/cli/all-tests.ts): nothing here measures time.
          testTimeout: 600_000,
          hookTimeout: 600_000,
          // They take what the browser leaves, and both cores once it is done.
          maxWorkers: 2,
        },
      },
      {
        root: import.meta.dirname,
        test: {
          ...inBrowser,
          name: 'pages',
          include: PAGES_WITHOUT_SOUND,
          // Two cores: one page draws while the other waits. A third makes both wait.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        root: import.meta.dirname,
        test: {
          ...inBrowser,
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          exclude: PAGES_WITHOUT_SOUND,
          // Each file owns one Chromium and real-time audio, which takes about half a core: more than two would starve.
          maxWorkers: 2,
          sequence: { groupOrder: 2 },
        },
      },
    ],
  },
});
