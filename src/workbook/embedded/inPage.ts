/** The embedded spreadsheet on a page, with its own ribbon, formula bar and sheet tabs. Heavy: import it lazily. */
import { LifecycleStages, mergeLocales } from '@univerjs/core';
import type { FUniver } from '@univerjs/core/facade';
import { CalculationMode } from '@univerjs/sheets-formula';
import { ILayoutService, UniverSheetsCorePreset } from '@univerjs/preset-sheets-core';
import { UniverSheetsConditionalFormattingPreset } from '@univerjs/preset-sheets-conditional-formatting';
import { UniverSheetsDataValidationPreset } from '@univerjs/preset-sheets-data-validation';
import { UniverSheetsTableUIPlugin } from '@univerjs/preset-sheets-table';
import formulaEnglish from '@univerjs/sheets-formula/locale/en-US';
import coreEnglish from '@univerjs/preset-sheets-core/locales/en-US';
import formattingEnglish from '@univerjs/preset-sheets-conditional-formatting/locales/en-US';
import validationEnglish from '@univerjs/preset-sheets-data-validation/locales/en-US';
import tableEnglish from '@univerjs/preset-sheets-table/locales/en-US';
import '@univerjs/preset-sheets-core/lib/index.css';
import '@univerjs/preset-sheets-conditional-formatting/lib/index.css';
import '@univerjs/preset-sheets-data-validation/lib/index.css';
import '@univerjs/preset-sheets-table/lib/index.css';
import type { PluginEntry, Spreadsheet, SpreadsheetOptions } from './spreadsheet';
import { assemble, tablePlugin } from './spreadsheet';
import { fitNamedSheetsOnly } from './strayFit';
import { takeSheetNames } from './tools/address';
import { guardFocus, letIn } from './tools/focus';
import { nameTools } from './tools/names';
import { sayReasons } from './tools/reasons';
import { CALCULATING, TOOLS, withWords } from './tools/words';

/** Left out: permissions, in a workbook of one person that is sent nowhere; functions no workshop needs a button for. */
const hidden = { hidden: true };
const insertFunction = 'formula-ui.operation.insert-function';
const menu = {
  'sheet.command.add-range-protection-from-toolbar': hidden,
  'sheet.contextMenu.permission': hidden,
  'sheet.toolbar.text-to-number': hidden,
  ...Object.fromEntries(
    ['financial', 'date', 'engineering', 'information', 'database'].map((kind) => [
      `${insertFunction}.${kind}`,
      hidden,
    ]),
  ),
};

/** Makes a spreadsheet inside an element of the page; `ready` is fulfilled once it has been painted. */
export async function createInPage(container: HTMLElement, options: SpreadsheetOptions): Promise<Spreadsheet> {
  const english = mergeLocales(formulaEnglish, coreEnglish, tableEnglish, validationEnglish, formattingEnglish, {
    // The toolbar asks for its name under a key that the spreadsheet's own words lack.
    ribbon: { start: TOOLS.toolbar },
    'sheets-formula': { progress: CALCULATING },
    'sheets-ui': withWords(coreEnglish['sheets-ui']),
  });
  guardFocus(container);
  const spreadsheet = await assemble(pagePlugins(container), english, options, painted);
  fitNamedSheetsOnly(spreadsheet.injector);
  sayReasons(spreadsheet);
  takeSheetNames(container, spreadsheet, () => {
    const range = spreadsheet.workbook.getActiveRange();
    if (range) spreadsheet.workbook.getActiveSheet().scrollToCell(range.getRow(), range.getColumn());
    focusSheet(spreadsheet);
  });
  void spreadsheet.ready.then(() => nameTools(container, spreadsheet.injector, () => focusSheet(spreadsheet)));
  return spreadsheet;
}

/** Puts the keyboard into the sheet; from there on Tab moves from cell to cell. */
export function focusSheet(spreadsheet: Spreadsheet): void {
  const layout = spreadsheet.injector.get(ILayoutService);
  letIn(layout.rootContainerElement ?? null);
  layout.focus();
}

/** Ends the editing of a cell and keeps what was typed; does nothing where none is edited. */
export async function leaveCell(spreadsheet: Spreadsheet): Promise<void> {
  await spreadsheet.workbook.endEditingAsync(true);
}

function pagePlugins(container: HTMLElement): PluginEntry[] {
  const core = UniverSheetsCorePreset({
    // The preset's types know names only; the spreadsheet takes the element as well.
    container: container as unknown as string,
    ribbonType: 'simple',
    menu,
    disableAutoFocus: true,
    // Text that looks like a number is meant to be text here: item codes and readings would all be flagged.
    sheets: { disableForceStringAlert: true, disableForceStringMark: true },
    formula: { initialFormulaComputing: CalculationMode.NO_CALCULATION },
  });
  const presets = [core, UniverSheetsDataValidationPreset(), UniverSheetsConditionalFormattingPreset()];
  return [
    ...presets.flatMap(({ plugins }) =>
      plugins.map((plugin): PluginEntry => (Array.isArray(plugin) ? plugin : [plugin])),
    ),
    tablePlugin,
    // The tag with a table's name would lie over the header row, for our tables begin in row 1.
    [UniverSheetsTableUIPlugin, { hideAnchor: true }],
  ];
}

/** Waits for the first picture: the stage is announced when painting begins, two frames later it can be seen. */
function painted(api: FUniver): Promise<void> {
  return new Promise((resolve) => {
    const listening = api.addEvent(api.Event.LifeCycleChanged, ({ stage }) => {
      if (stage !== LifecycleStages.Rendered) return;
      requestAnimationFrame(() => requestAnimationFrame(() => resolve()));
      queueMicrotask(() => listening.dispose());
    });
  });
}
