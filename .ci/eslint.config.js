// Lint rules. The table of rooms is the project's architecture, enforced: a pure room that reaches for a device fails here.
import js from '@eslint/js';
import solid from 'eslint-plugin-solid/configs/typescript';
import tseslint from 'typescript-eslint';

/** What each room may import besides itself. Rooms not listed (ui, cli) may import everything. */
const rooms = {
  units: [],
  tightening: ['units'],
  lifting: ['units'],
  procedure: ['units', 'tightening', 'lifting'],
  session: ['procedure', 'tightening', 'lifting', 'units'],
  record: ['session', 'procedure', 'tightening', 'lifting', 'units'],
  language: ['session', 'procedure', 'tightening', 'lifting', 'units'],
  hearing: [],
  speaking: [],
  gesture: [],
  storage: ['record', 'session', 'lifting'],
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
          'no-restricted-syntax': [
            'error',
            {
              selector: "CallExpression[callee.object.name='Date'][callee.property.name='now']",
              message: 'This room has no clock.',
            },
            { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: 'This room has no clock.' },
            {
              selector: "CallExpression[callee.object.name='Math'][callee.property.name='random']",
              message: 'This room has no random.',
            },
          ],
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
  {
    files: ['**/*.mjs', '**/*.js'],
    ...tseslint.configs.disableTypeChecked,
    languageOptions: { globals: { process: 'readonly', console: 'readonly', URL: 'readonly' } },
  },
  ...walls,
);
