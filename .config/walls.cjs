// Arrows point one way: the two pages' entries -> everything; pane -> workbook -> core <- functions (DEVELOPERS.md).
const src = '^src/';
const entries = '^src/(pane|tryout)/main\\.tsx$';

const wall = (name, comment, from, to) => ({ name, comment, severity: 'error', from, to });

module.exports = {
  forbidden: [
    wall(
      'core-is-pure',
      'src/core imports nothing outside itself, but that money.ts counts on a money library: exact decimals are no golf',
      { path: '^src/core/', pathNot: '^src/core/money\\.ts$' },
      { pathNot: '^src/core/' },
    ),
    wall(
      'money-library-only',
      'src/core/money.ts imports the money library and nothing else from outside the core',
      { path: '^src/core/money\\.ts$' },
      { pathNot: '^src/core/|dinero\\.js' },
    ),
    wall(
      'money-in-its-place',
      'only src/core/money.ts names the money library',
      { path: src, pathNot: '^src/core/money\\.ts$' },
      { path: 'dinero\\.js' },
    ),
    wall(
      'core-one-door',
      'src/core is entered by its index alone',
      { path: src, pathNot: '^src/core/' },
      { path: '^src/core/', pathNot: '^src/core/index\\.ts$' },
    ),
    wall(
      'words-need-core',
      'src/words imports src/core alone; of what it words elsewhere, the types',
      { path: '^src/words/' },
      { pathNot: '^src/(words|core)/', dependencyTypesNot: ['type-only'] },
    ),
    wall(
      'functions-are-pure',
      'src/functions imports core, words and the pure files of src/workbook',
      { path: '^src/functions/' },
      {
        pathNot:
          '^src/(functions|core|words)/|^src/workbook/(schema|records|planTables|planCells|placeCells|assignment|readSizes|setMinutes|connect/(standIn|connections))\\.ts$',
      },
    ),
    wall(
      'pane-knows-no-host',
      'the pane is the same on both pages: it knows the port and nothing behind it',
      { path: '^src/pane/', pathNot: entries },
      { path: '^src/(functions|tryout|workbook/(excel|embedded))/' },
    ),
    wall(
      'workbook-below-pane',
      'nothing imports upward',
      { path: '^src/workbook/' },
      { path: '^src/(pane|tryout|functions)/' },
    ),
    wall(
      'hosts-only-composed',
      'only an entry composes a host; hosts do not know each other; the try-out page words what one of them says by its types',
      { path: src, pathNot: `${entries}|^src/workbook/(excel|embedded)/` },
      { path: '^src/workbook/(excel|embedded)/', dependencyTypesNot: ['type-only'] },
    ),
    wall(
      'excel-apart',
      'the Excel host does not know the embedded one',
      { path: '^src/workbook/excel/' },
      { path: '^src/workbook/embedded/' },
    ),
    wall(
      'embedded-apart',
      'the embedded host does not know the Excel one',
      { path: '^src/workbook/embedded/' },
      { path: '^src/workbook/excel/' },
    ),
    wall(
      'excel-page-apart',
      'the Excel page knows neither the embedded host nor the tryout',
      { path: '^src/pane/' },
      { path: '^src/(tryout|workbook/embedded)/' },
    ),
    wall(
      'tryout-page-apart',
      'the tryout page does not know the Excel host',
      { path: '^src/tryout/' },
      { path: '^src/workbook/excel/' },
    ),
    wall(
      'spreadsheet-in-its-place',
      'only the embedded host and the tryout page name the embedded spreadsheet',
      { path: src, pathNot: '^src/(workbook/embedded|tryout)/' },
      { path: '@univerjs' },
    ),
    wall(
      'file-library-in-its-place',
      'only what opens a file and what saves a copy name the library for workbook files',
      { path: src, pathNot: '^src/workbook/embedded/(save|open)/' },
      { path: 'hucre' },
    ),
    wall('no-circles', 'nothing depends on itself', {}, { circular: true }),
    wall('nothing-unresolved', 'every import is found', { path: src }, { couldNotResolve: true }),
    wall(
      'no-test-tools',
      'what is shipped needs no development package',
      { path: src },
      { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'] },
    ),
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'types', 'default'],
      extensions: ['.tsx', '.ts', '.js', '.json', '.css'],
    },
  },
};
