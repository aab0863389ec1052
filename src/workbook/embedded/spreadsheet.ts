/** The embedded spreadsheet without a screen: what the tests and the measurements run on, and what the page builds upon. */
import type { ILanguagePack, Injector, IWorkbookData, Plugin, PluginCtor } from '@univerjs/core';
import {
  BooleanNumber,
  generateRandomId,
  ICommandService,
  IUndoRedoService,
  IUniverInstanceService,
  LocaleType,
  LogLevel,
  mergeLocales,
  Univer,
} from '@univerjs/core';
import { FUniver } from '@univerjs/core/facade';
import { UniverDataValidationPlugin } from '@univerjs/data-validation';
import { UniverFormulaEnginePlugin } from '@univerjs/engine-formula';
import { RemoveSheetCommand, UniverSheetsPlugin } from '@univerjs/sheets';
import { UniverSheetsConditionalFormattingPlugin } from '@univerjs/sheets-conditional-formatting';
import { UniverSheetsDataValidationPlugin } from '@univerjs/sheets-data-validation';
import {
  CalculationMode,
  FormulaCalculationSessionService,
  TriggerCalculationController,
  UniverSheetsFormulaPlugin,
} from '@univerjs/sheets-formula';
import { UniverSheetsNumfmtPlugin } from '@univerjs/sheets-numfmt';
import { TableManager, UniverSheetsTablePlugin } from '@univerjs/sheets-table';
import type { FWorkbook } from '@univerjs/sheets/facade';
import sheetsEnglish from '@univerjs/sheets/locale/en-US';
import formulaEnglish from '@univerjs/sheets-formula/locale/en-US';
import tableEnglish from '@univerjs/sheets-table/locale/en-US';
import '@univerjs/sheets/facade';
import '@univerjs/engine-formula/facade';
import '@univerjs/sheets-formula/facade';
import '@univerjs/sheets-numfmt/facade';
import '@univerjs/sheets-table/facade';
import '@univerjs/sheets-data-validation/facade';
import '@univerjs/sheets-conditional-formatting/facade';
import type { ErrorSentences, FunctionMetadata, FunctionOptions, Implementation } from './functions';
import { registerFunctions } from './functions';
import { endUndoWithSheets } from './deleting';
import { readEachAnew } from './halfTyped';
import type { SheetSnapshot } from './snapshot';
import { workbookData } from './snapshot';
import { GREY } from '../palette';

/** The worksheet functions the spreadsheet is to know, and how their blanks and errors are handled. */
export interface WorksheetFunctions extends FunctionOptions {
  readonly metadata: readonly FunctionMetadata[];
  readonly implementations: Readonly<Record<string, Implementation>>;
}

export interface SpreadsheetOptions {
  readonly sheets: readonly SheetSnapshot[];
  readonly functions?: WorksheetFunctions;
  readonly dark?: boolean;
  /** A workbook that was opened, in place of the sheets. */
  readonly opened?: OpenedContent;
}

/** What a file, or a workbook made elsewhere, puts into a spreadsheet: its cells at once, and the rest when they are there. */
export interface OpenedContent {
  readonly data: Partial<IWorkbookData>;
  readonly complete: (spreadsheet: Spreadsheet) => Promise<void>;
  /** That nothing is to be calculated at once: no cell holds a formula, or whoever opens it has it calculated. */
  readonly calculatesLater?: boolean;
}

/** A plugin with its settings. */
export type PluginEntry = readonly [PluginCtor<Plugin>, object?];

/** A running embedded spreadsheet with one workbook in it. */
export class Spreadsheet {
  private gone = false;

  constructor(
    readonly univer: Univer,
    readonly api: FUniver,
    readonly workbook: FWorkbook,
    /** Why cells of ours show an error. */
    readonly errors: ErrorSentences,
    /** Fulfilled after the first picture of the sheet; at once when there is no screen. */
    readonly ready: Promise<void>,
  ) {}

  /** Another for each: what was read of a formula is kept for the whole page by this and its text, with the workbook that it was read for. */
  get id(): string {
    return this.workbook.getId();
  }

  get injector(): Injector {
    return this.univer.__getInjector();
  }

  /** Waits until what was last written is calculated and in the cells; at most `timeoutMs`, for it must never hang. */
  async settled(timeoutMs = 20_000): Promise<void> {
    const session = this.injector.get(FormulaCalculationSessionService);
    await session.waitForLatestApplied(timeoutMs).catch(() => undefined);
  }

  /** Calculates every formula anew. */
  recalculate(): void {
    this.api.getFormula().executeCalculation();
  }

  /** Empties the undo list: what has been loaded is not for a person to take back. */
  forgetUndo(): void {
    this.injector.get(IUndoRedoService).clearUndoRedo(this.id);
  }

  /** Calls back after whatever changed the workbook: something to undo more or less, or a sheet deleted. */
  onChange(changed: () => void): void {
    const undo = this.injector.get(IUndoRedoService);
    const units = this.injector.get(IUniverInstanceService);
    const top = (): unknown => undo.pitchTopUndoElement();
    let last = top();
    // Told again whenever the focus goes to the field of a cell, which has a list of its own, and comes back.
    undo.undoRedoStatus$.subscribe(() => {
      if (units.getFocusedUnit()?.getUnitId() !== this.id || top() === last) return;
      last = top();
      changed();
    });
    this.injector.get(ICommandService).onCommandExecuted(({ id }) => {
      if (id === RemoveSheetCommand.id) changed();
    });
  }

  setDark(dark: boolean): void {
    this.api.toggleDarkMode(dark);
  }

  dispose(): void {
    if (this.gone) return;
    this.gone = true;
    // A second after a calculation began it wants to say so, and has no words any more.
    Object.assign(this.injector.get(TriggerCalculationController), { _startProgress: () => undefined });
    this.univer.dispose();
  }
}

/** Tables in quiet greys: the header's ink is also that of its filter buttons, which have to be seen on it. */
export const tablePlugin: PluginEntry = [
  UniverSheetsTablePlugin,
  {
    userThemes: [
      {
        name: 'workshop',
        style: {
          headerRowStyle: {
            bg: { rgb: GREY.band.toLowerCase() },
            cl: { rgb: GREY.ink.toLowerCase() },
            bl: BooleanNumber.TRUE,
          },
          secondRowStyle: { bg: { rgb: GREY.pale.toLowerCase() } },
        },
      },
    ],
  },
];

/** The plugins that work without a screen. */
export const silentPlugins: readonly PluginEntry[] = [
  [UniverFormulaEnginePlugin],
  [UniverSheetsPlugin],
  // Our functions become known only after the workbook is made; calculating before that would be for nothing.
  [UniverSheetsFormulaPlugin, { initialFormulaComputing: CalculationMode.NO_CALCULATION }],
  [UniverSheetsNumfmtPlugin],
  tablePlugin,
  [UniverDataValidationPlugin],
  [UniverSheetsDataValidationPlugin],
  [UniverSheetsConditionalFormattingPlugin],
];

/** Makes a spreadsheet in Node, without a screen. */
export async function createHeadless(options: SpreadsheetOptions): Promise<Spreadsheet> {
  const english = mergeLocales(sheetsEnglish, formulaEnglish, tableEnglish);
  return assemble(silentPlugins, english, options, () => Promise.resolve());
}

/** Makes a spreadsheet of the plugins given; `whenReady` is asked once, before the workbook is made. */
export async function assemble(
  plugins: readonly PluginEntry[],
  english: ILanguagePack,
  options: SpreadsheetOptions,
  whenReady: (api: FUniver) => Promise<void>,
): Promise<Spreadsheet> {
  const univer = new Univer({
    logLevel: LogLevel.WARN,
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: english },
    darkMode: options.dark ?? false,
  });
  for (const [plugin, config] of plugins) univer.registerPlugin(plugin, config);
  const api = FUniver.newAPI(univer);
  readEachAnew(univer.__getInjector());
  const ready = whenReady(api);
  const data = options.opened?.data ?? workbookData(options.sheets);
  const workbook = api.createWorkbook({ ...data, id: generateRandomId() });
  // The function service exists only once there is a workbook.
  const errors = options.functions ? registerFrom(univer, options.functions) : { at: () => null };
  const spreadsheet = new Spreadsheet(univer, api, workbook, errors, ready);
  endUndoWithSheets(spreadsheet);
  layTables(spreadsheet, options.sheets);
  await options.opened?.complete(spreadsheet);
  if (!options.opened?.calculatesLater) spreadsheet.recalculate();
  return spreadsheet;
}

function registerFrom(univer: Univer, functions: WorksheetFunctions): ErrorSentences {
  return registerFunctions(univer.__getInjector(), functions.metadata, functions.implementations, functions);
}

function layTables(spreadsheet: Spreadsheet, sheets: readonly SheetSnapshot[]): void {
  // Not by the command, which renames a table that bears its sheet's name.
  const manager = spreadsheet.injector.get(TableManager);
  for (const { name: sheetName, tables = [] } of sheets) {
    const sheetId = spreadsheet.workbook.getSheetByName(sheetName)?.getSheetId();
    for (const { name, row, column, rows, columns } of sheetId ? tables : []) {
      const range = { startRow: row, startColumn: column, endRow: row + rows - 1, endColumn: column + columns - 1 };
      manager.addTable(spreadsheet.id, sheetId ?? '', name, range);
    }
  }
}
