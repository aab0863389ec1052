import { minify } from 'rolldown/utils';

/** Minifies with the native minifier that the test runner brings anyway: a second where webpack's own takes half a minute. */
export class MinifyPlugin {
  apply(compiler) {
    const { Compilation, sources } = compiler.webpack;
    compiler.hooks.compilation.tap('MinifyPlugin', (compilation) => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE_SIZE;
      compilation.hooks.processAssets.tapPromise({ name: 'MinifyPlugin', stage }, async (assets) => {
        const scripts = Object.keys(assets).filter((name) => name.endsWith('.js'));
        await Promise.all(
          scripts.map(async (name) => {
            const { code, errors } = await minify(name, assets[name].source().toString(), {
              compress: { target: 'es2022' },
              codegen: { legalComments: 'eof' },
            });
            if (errors.length > 0) throw new Error(`${name} cannot be minified: ${errors[0].message}`);
            compilation.updateAsset(name, new sources.RawSource(code), { minimized: true });
          }),
        );
      });
    });
  }
}
