/**
 * The door to the embedded spreadsheet on a page. Its scripts are one large piece and come in with this file; what is in them only
 * runs when it is called in, part by part, so that the page can answer in between.
 */
import type * as InPage from './inPage';
import type * as Port from './port';
import type * as ErrorSentence from './errorSentence';
import type * as Saving from './saving';
import type * as Opening from './opening';
import type * as DraftContent from './draft/content';

export interface SpreadsheetParts {
  readonly inPage: typeof InPage;
  readonly port: typeof Port;
  readonly errorSentence: typeof ErrorSentence;
  readonly saving: typeof Saving;
  readonly opening: typeof Opening;
  readonly draftContent: typeof DraftContent;
}

/** Runs the spreadsheet's scripts; `rest` is awaited between two parts. */
export async function callIn(rest: () => Promise<void>): Promise<SpreadsheetParts> {
  // The large packages beneath, each on its own; named is one thing of each, so that what nobody uses is left out.
  await import(/* webpackMode: "eager", webpackExports: ["Univer"] */ '@univerjs/core');
  await rest();
  await import(/* webpackMode: "eager", webpackExports: ["UniverFormulaEnginePlugin"] */ '@univerjs/engine-formula');
  await rest();
  await import(/* webpackMode: "eager", webpackExports: ["UniverSheetsPlugin"] */ '@univerjs/sheets');
  await rest();
  const [inPage, port, errorSentence, saving, opening, draftContent] = await Promise.all([
    import(/* webpackMode: "eager" */ './inPage'),
    import(/* webpackMode: "eager" */ './port'),
    import(/* webpackMode: "eager" */ './errorSentence'),
    import(/* webpackMode: "eager" */ './saving'),
    import(/* webpackMode: "eager" */ './opening'),
    import(/* webpackMode: "eager" */ './draft/content'),
  ]);
  await rest();
  return { inPage, port, errorSentence, saving, opening, draftContent };
}
