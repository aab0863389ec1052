import tseslint from 'typescript-eslint';

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

/**
 * Members by which a host takes text or formulas, and the one file of each that may give it some: text of a person's that starts like a
 * formula is made safe there. `assigned` to an object of Excel's, `called` on one, or the `key` of what the embedded spreadsheet is handed.
 */
const ways = [
  { may: ['excel/writeCells'], assigned: ['values', 'formulas'] },
  { may: ['excel/dress'], assigned: ['numberFormat', 'rule', 'prompt', 'errorAlert', 'centerFooter', 'rightFooter'] },
  { may: ['excel/dress', 'excel/change', 'excel/takeBack', 'excel/putBack'], assigned: ['formula'] },
  { may: ['excel/change'], called: ['names.add', 'tables.add', 'worksheets.add'] },
  { may: ['excel/dress'], called: ['conditionalFormats.add', 'formats.add', 'setPrintTitleRows'] },
  {
    may: [],
    assigned: [
      ...['formulasLocal', 'formulasR1C1', 'valuesAsJson', 'valuesAsJsonLocal', 'numberFormatLocal', 'hyperlink'],
      ...['leftFooter', 'leftHeader', 'centerHeader', 'rightHeader', 'formula1', 'formula2', 'refersTo'],
    ],
    called: ['names.addFormulaLocal', 'comments.add', 'notes.add', 'setPrintTitleColumns', 'setCellProperties'],
  },
  { may: ['embedded/snapshot', 'embedded/changes', 'embedded/open/content', 'embedded/open/review'], key: ['f'] },
  { may: ['embedded/changes', 'embedded/open/complete'], key: ['formulaOrRefString'] },
  {
    may: ['embedded/dress', 'embedded/open/rules', 'embedded/save/rules'],
    key: ['formula1', 'formula2'],
  },
  {
    may: ['embedded/save/paper'],
    key: ['oddFooter', 'oddHeader', 'evenFooter', 'evenHeader', 'firstFooter', 'firstHeader'],
  },
];

const SAFE = 'is where a host takes text or formulas: hand it a change of the port, or go through';

const oneOf = (names) => `/^(${names.join('|')})$/`;

/** Selectors that find one way, however its name is written. */
function banned({ may, assigned = [], called = [], key = [] }) {
  const message = (name) => `${name} ${SAFE} ${may.length > 0 ? may.join(', ') : 'one of the ways that there are'}.`;
  const member = (names) =>
    `[left.type='MemberExpression']:matches([left.property.name=${oneOf(names)}], [left.property.value=${oneOf(names)}])`;
  return [
    ...(assigned.length > 0
      ? [
          { selector: `AssignmentExpression${member(assigned)}`, message: message(assigned.join(', ')) },
          {
            selector: `CallExpression[callee.property.name=/^(set|assign)$/] > ObjectExpression > Property${named(assigned)}`,
            message: message(assigned.join(', ')),
          },
        ]
      : []),
    ...called.map((name) => ({ selector: callOf(name), message: message(name) })),
    ...(key.length > 0
      ? [
          {
            selector: `ObjectExpression > Property${named(key)}:not([value.value=null][value.type='Literal'])`,
            message: message(key.join(', ')),
          },
        ]
      : []),
    ...(key.length > 0 ? [{ selector: `AssignmentExpression${member(key)}`, message: message(key.join(', ')) }] : []),
  ];
}

function named(names) {
  return `:matches([key.name=${oneOf(names)}], [key.value=${oneOf(names)}])`;
}

/** `names.add` is a call of `add` on whatever is called `names`, at the end of a path or by itself. */
function callOf(name) {
  const [object, method] = name.includes('.') ? name.split('.') : [null, name];
  const on =
    object === null ? '' : `:matches([callee.object.name='${object}'], [callee.object.property.name='${object}'])`;
  return `CallExpression[callee.property.name='${method}']${on}`;
}

/** Each file that may do some of it is kept from all the rest. */
const hosts = ['excel', 'embedded'].flatMap((host) => {
  const mine = ways.filter(({ may, key }) => (key ? host === 'embedded' : host === 'excel' || may.length === 0));
  const files = [...new Set(mine.flatMap(({ may }) => may))];
  const rules = (of) => ({ 'no-restricted-syntax': ['error', ...namedExports, ...of.flatMap(banned)] });
  return [
    { files: [`src/workbook/${host}/**/*.ts`], rules: rules(mine) },
    ...files.map((file) => ({
      files: [`src/workbook/${file}.ts`],
      rules: rules(mine.filter(({ may }) => !may.includes(file))),
    })),
  ];
});

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
      'no-restricted-syntax': ['error', ...namedExports],
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
  ...hosts,
  { files: ['src/core/index.ts'], rules: { 'no-restricted-syntax': 'off' } },
  { files: ['tests/**/*.{ts,tsx}', '.config/**/*.ts'], rules: { '@typescript-eslint/no-explicit-any': 'off' } },
  {
    files: ['**/*.{js,mjs}'],
    extends: [tseslint.configs.base],
    rules: { 'no-undef': 'off', 'no-unused-vars': 'error', eqeqeq: ['error', 'always', { null: 'ignore' }] },
  },
);
