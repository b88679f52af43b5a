// Lint rules. The table of rooms is the project's architecture, enforced: a pure room that reaches for a device fails here.
import js from '@eslint/js';
import solid from 'eslint-plugin-solid/configs/typescript';
import tseslint from 'typescript-eslint';

/** What each room may import besides itself. Rooms not listed (ui, cli) may import everything. */
const rooms = {
  words: [],
  units: ['words'],
  tightening: ['units', 'words'],
  lifting: ['units', 'words'],
  procedure: ['units', 'tightening', 'lifting', 'words'],
  session: ['procedure', 'tightening', 'lifting', 'units', 'words'],
  record: ['session', 'procedure', 'tightening', 'lifting', 'units', 'words'],
  language: ['session', 'procedure', 'tightening', 'lifting', 'units', 'words'],
  hearing: ['words'],
  speaking: ['words'],
  gesture: ['words'],
  storage: ['record', 'session', 'lifting', 'words'],
};
const devices = ['hearing', 'speaking', 'gesture', 'storage'];
const all = [...Object.keys(rooms), 'ui', 'cli'];

const impure = [
  'window',
  'document',
  'navigator',
  'performance',
  'localStorage',
  'indexedDB',
  'fetch',
  'setTimeout',
  'setInterval',
];

const noClock = [
  {
    selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']",
    message: 'This room has no clock.',
  },
  { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: 'This room has no clock.' },
  {
    selector: "CallExpression[callee.object.name='Math'][callee.property.name='random']",
    message: 'This room has no random.',
  },
];

/** What is shown or spoken comes from src/words: another language is then one more file there. */
const inWords = { message: 'What is shown or spoken stands in src/words.' };
/**
 * No words for people: what only a programmer sees, of a wrong call or an impossible state; the spelling of a unit; the name
 * of a table of another document.
 */
const noWord = [
  'NewExpression[callee.name=/^(Range|Type)?Error$/] *',
  "[value='Imp gal']",
  "Property[key.name='table'] > Literal",
].join(', ');
const noSentence = [
  { selector: 'JSXText[value=/[A-Za-z]{2}/]', ...inWords },
  // A sentence begins with a capital and goes on, or ends as one.
  { selector: `Literal[value=/^[A-Z][a-z’]+[ ,:]|[a-z] [a-z]+[.?!:]$/]:not(${noWord})`, ...inWords },
  {
    selector: `TemplateElement[value.raw=/(^|[ .])[A-Z][a-z’]+[ ,:]|[a-z ] ?[.?!] /]:not(${noWord})`,
    ...inWords,
  },
  // Only the last piece ends a sentence: `steps.${i}` is a path.
  { selector: `TemplateElement[tail=true][value.raw=/[a-z ] ?[.?!]$/]:not(${noWord})`, ...inWords },
  { selector: 'JSXAttribute[name.name=/^(aria-label|title|placeholder|alt|label)$/] > Literal', ...inWords },
];
/** A function in <Show> or <Match> runs once: text that it works out stays as it is when its values change. Within JSX it does not. */
const noStaleText = {
  selector:
    'JSXElement[openingElement.name.name=/^(Show|Match)$/] > JSXExpressionContainer > ArrowFunctionExpression:not([body.type=/^(JSX|Block)/])',
  message: 'Worked out once and never again: put it in <>…</>.',
};
/** Where that is so already: whole rooms, and files of the others. */
const wordless = {
  rooms: ['language', 'lifting', 'procedure', 'record', 'session', 'tightening', 'units'],
  /** A small invented job of a pure room: its words are names inside a procedure. */
  invented: ['src/language/named-situations.ts'],
  /** What only the terminal shows. */
  terminal: ['src/record/time-stamp.ts'],
  files: [
    'src/gesture/bindings.ts',
    'src/gesture/camera-failures.ts',
    'src/gesture/camera-habit.ts',
    'src/gesture/scan.ts',
    'src/gesture/touch-thresholds.ts',
    'src/hearing/failures.ts',
    'src/speaking/{announcer,output,watchdog,synthesiser,system-voice}.ts',
    'src/storage/**',
    'src/ui/app.tsx',
    'src/ui/camera-report.ts',
    'src/ui/camera-words.ts',
    'src/ui/check-words.ts',
    'src/ui/delete-sounds.ts',
    'src/ui/describe{,-refusal}.ts',
    'src/ui/ear-report.ts',
    'src/ui/editor/**',
    'src/ui/hand-entry.ts',
    'src/ui/heard-sound.ts',
    'src/ui/later.tsx',
    'src/ui/live-session.ts',
    'src/ui/microphone-check.ts',
    'src/ui/parts/**',
    'src/ui/practice/**',
    'src/ui/prepare/**',
    'src/ui/replay/**',
    'src/ui/saved-files.ts',
    'src/ui/screens/*.tsx',
    'src/ui/second-channel.ts',
    'src/ui/second-desk.ts',
    'src/ui/second-link.ts',
    'src/ui/second-view.ts',
    'src/ui/session-file.ts',
    'src/ui/sound-keeper.ts',
    'src/ui/switch-panel.ts',
    'src/ui/teach/**',
    'src/ui/touch-words.ts',
    'src/ui/unsaved-text.ts',
    'src/ui/view.ts',
    'src/ui/view/**',
    'src/ui/watch-gestures.ts',
  ],
};

const walls = Object.entries(rooms).map(([room, allowed]) => ({
  files: [`src/${room}/**/*.ts`],
  rules: {
    'no-restricted-imports': [
      'error',
      {
        patterns: [
          {
            group: all
              .filter((other) => other !== room && !allowed.includes(other))
              .flatMap((other) => [`**/${other}/*`, `**/${other}`]),
            message: `src/${room} may import only: ${allowed.join(', ') || 'nothing'}.`,
          },
        ],
      },
    ],
    ...(devices.includes(room)
      ? {}
      : {
          'no-restricted-globals': [
            'error',
            ...impure.map((name) => ({ name, message: 'This room is pure: pass it in.' })),
          ],
          'no-restricted-syntax': ['error', ...noClock, ...(wordless.rooms.includes(room) ? noSentence : [])],
        }),
  },
}));

export default tseslint.config(
  { ignores: ['.ci/**', 'dist/**', 'node_modules/**', 'models/**', 'demo-data/**', 'coverage/**'] },
  js.configs.recommended,
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname + '/..' } },
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      eqeqeq: 'error',
    },
  },
  { files: ['src/ui/**/*.tsx'], ...solid },
  { files: ['src/ui/**/*.tsx'], rules: { 'no-restricted-syntax': ['error', noStaleText] } },
  {
    files: ['**/*.mjs', '**/*.js'],
    ...tseslint.configs.disableTypeChecked,
    languageOptions: { globals: { process: 'readonly', console: 'readonly', URL: 'readonly' } },
  },
  ...walls,
  { files: [...wordless.invented, ...wordless.terminal], rules: { 'no-restricted-syntax': ['error', ...noClock] } },
  { files: wordless.files, rules: { 'no-restricted-syntax': ['error', ...noSentence, noStaleText] } },
);
