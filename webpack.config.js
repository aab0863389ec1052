import { join } from 'node:path';
import { GriffelCSSExtractionPlugin } from '@griffel/webpack-extraction-plugin';
import HtmlWebpackPlugin from 'html-webpack-plugin';
import MiniCssExtractPlugin from 'mini-css-extract-plugin';
import { cacheFolder, distFolder, functionsSource, root } from './.config/paths.mjs';
import { MinifyPlugin } from './.config/webpack/minifyPlugin.mjs';

const associateLoader = join(root, '.config/webpack/associateLoader.mjs');
const withoutPicturesLoader = join(root, '.config/webpack/withoutPicturesLoader.mjs');

const associate = { test: functionsSource, enforce: 'pre', use: [associateLoader] };
const resolve = { extensions: ['.tsx', '.ts', '.js'] };
const common = {
  performance: { hints: false },
  cache: {
    type: 'filesystem',
    cacheDirectory: join(cacheFolder, 'webpack'),
    buildDependencies: { config: [import.meta.filename, associateLoader, withoutPicturesLoader] },
  },
  stats: 'errors-warnings',
  infrastructureLogging: { level: 'warn' },
};

/** Our own sources. Types are not checked here: `npm test` does that. */
function script(...further) {
  const loaders = [...further, { loader: 'ts-loader', options: { transpileOnly: true } }];
  // A name that a file does not export would only be a warning, and a broken page.
  return {
    test: /\.tsx?$/,
    include: join(root, 'src'),
    use: loaders,
    parser: { exportsPresence: 'error' },
    // No file of ours does anything by being imported, so that a page gets only what it uses of the core.
    sideEffects: false,
  };
}

/**
 * Fluent makes its styles at run time, which a strict content security policy forbids. The two Griffel loaders work them out
 * during the build instead and leave plain style sheets.
 */
const pageRules = [
  { test: /\.js$/, include: /node_modules[\\/]@fluentui/, use: [GriffelCSSExtractionPlugin.loader] },
  script(GriffelCSSExtractionPlugin.loader, '@griffel/webpack-loader'),
  { test: /\.css$/, use: [MiniCssExtractPlugin.loader, 'css-loader'] },
];

/** What the two pages share; each puts its scripts and styles in a folder of its own, so that what a page loads can be told. */
function page(name, mode, own) {
  const production = mode === 'production';
  const mark = production ? '.[contenthash:10]' : '';
  return {
    name,
    mode,
    context: root,
    devtool: production ? false : 'source-map',
    target: ['web', 'es2022'],
    entry: { [name]: own.entry },
    output: {
      path: distFolder,
      publicPath: 'auto',
      filename: `assets/${name}/[name]${mark}.js`,
      chunkFilename: `assets/${name}/[name]${mark}.js`,
      assetModuleFilename: `assets/${name}/[name]${mark}[ext]`,
      chunkLoadingGlobal: `setwright_${name}`,
      uniqueName: `setwright-${name}`,
    },
    resolve,
    module: { rules: [...pageRules, ...(own.rules ?? [])] },
    plugins: [
      new MiniCssExtractPlugin({ filename: `assets/${name}/[name]${mark}.css`, ignoreOrder: true }),
      new GriffelCSSExtractionPlugin(),
      new HtmlWebpackPlugin({ ...own.html, scriptLoading: 'defer', minify: false }),
    ],
    optimization: { minimizer: [new MinifyPlugin()], ...own.optimization },
    ...common,
  };
}

/** The page Excel shows in its task pane. It is the functions' page too: one runtime, kept alive with the workbook. */
function excelPage(mode) {
  return page('pane', mode, {
    // The functions come first, so that they answer even if something in the pane goes wrong.
    entry: ['./src/functions/functions.ts', './src/pane/main.tsx'],
    rules: [associate],
    html: { template: 'src/pane/pane.html', filename: 'pane.html' },
    // What comes later comes in pieces that a slow line brings side by side.
    optimization: { splitChunks: { maxAsyncSize: 100_000 } },
  });
}

/** The page that needs no Excel: an embedded spreadsheet with the same pane beside it. */
function tryoutPage(mode) {
  return page('tryout', mode, {
    entry: './src/tryout/main.tsx',
    rules: [{ test: /node_modules[\\/]@univerjs[\\/](sheets|docs)-ui[\\/].*\.js$/, use: [withoutPicturesLoader] }],
    html: { template: 'src/tryout/index.html', filename: 'index.html' },
  });
}

/**
 * The functions alone, at an address that never changes: the manifest must name such a script, though with a shared runtime
 * Excel runs the functions from the pane's page.
 */
function functionsScript(mode) {
  return {
    name: 'functions',
    mode,
    context: root,
    devtool: false,
    target: ['web', 'es2022'],
    entry: { functions: './src/functions/functions.ts' },
    output: { path: distFolder, filename: '[name].js', uniqueName: 'setwright-functions' },
    resolve,
    module: { rules: [script(), associate] },
    optimization: { minimizer: [new MinifyPlugin()] },
    ...common,
  };
}

export default (_environment, { mode = 'production' } = {}) => [
  excelPage(mode),
  tryoutPage(mode),
  functionsScript(mode),
];
