import tseslint from 'typescript-eslint';
import { exempt, restricted } from './ways.mjs';

/** Pure code computes from its arguments alone, so that a plan is the same today and tomorrow. */
const impure = [
  { object: 'Math', property: 'random', message: 'src/core is pure: pass the number in.' },
  { object: 'Date', property: 'now', message: 'src/core is pure: pass the date in.' },
  { object: 'performance', property: 'now', message: 'src/core is pure: it measures no time.' },
];
const outsideWorld = [
  'window',
  'document',
  'fetch',
  'localStorage',
  'console',
  'process',
  'Office',
  'Excel',
  'Date',
  'setTimeout',
];

const namedExports = [
  {
    selector: 'ExportDefaultDeclaration',
    message: 'Name what you export: a default export has another name in every file.',
  },
  { selector: 'ExportAllDeclaration', message: 'Only core/index.ts gathers exports, and it names them.' },
];

export default tseslint.config(
  {
    ignores: ['node_modules/', 'dist/', '.cache/', 'reports/', '.stryker-tmp/', '.config/stubs/'].map(
      (path) => `**/${path}`,
    ),
  },
  {
    files: ['**/*.{ts,tsx}'],
    extends: [tseslint.configs.recommended],
    languageOptions: { parserOptions: { ecmaFeatures: { jsx: true } } },
    rules: {
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      eqeqeq: ['error', 'always', { null: 'ignore' }],
      'no-eval': 'error',
      'no-implied-eval': 'error',
    },
  },
  {
    files: ['src/**/*.{ts,tsx}'],
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      'no-alert': 'error',
      'no-console': 'error',
      'no-restricted-syntax': ['error', ...namedExports, ...restricted()],
      'no-restricted-globals': [
        'error',
        { name: 'fetch', message: 'The shop’s data never leaves the workbook.' },
        { name: 'XMLHttpRequest', message: 'The shop’s data never leaves the workbook.' },
        { name: 'WebSocket', message: 'The shop’s data never leaves the workbook.' },
        { name: 'localStorage', message: 'State lives in the workbook: this store is lost or split.' },
      ],
    },
  },
  {
    files: ['src/core/**/*.ts'],
    rules: {
      'no-restricted-properties': ['error', ...impure],
      'no-restricted-globals': [
        'error',
        ...outsideWorld.map((name) => ({
          name,
          message: 'src/core is pure: it knows no world outside its arguments.',
        })),
      ],
    },
  },
  ...exempt.map((file) => ({
    files: [`src/workbook/${file}.ts`],
    rules: { 'no-restricted-syntax': ['error', ...namedExports, ...restricted(file)] },
  })),
  { files: ['src/core/index.ts'], rules: { 'no-restricted-syntax': ['error', ...restricted()] } },
  { files: ['tests/**/*.{ts,tsx}', '.config/**/*.ts'], rules: { '@typescript-eslint/no-explicit-any': 'off' } },
  {
    files: ['**/*.{js,mjs}'],
    extends: [tseslint.configs.base],
    rules: { 'no-undef': 'off', 'no-unused-vars': 'error', eqeqeq: ['error', 'always', { null: 'ignore' }] },
  },
);
