/** What the port needs of Excel: a way to run a batch, and to ask what the host can do. */
export interface ExcelHost {
  run<T>(options: Excel.RunOptions, batch: (context: Excel.RequestContext) => Promise<T>): Promise<T>;
  isSetSupported(name: string, version: string): boolean;
  /** Where requests have to be shorter than Excel takes them on the web. */
  readonly mostBytes?: number;
}

/** The Excel that this page runs in. */
export function excelHere(): ExcelHost {
  return {
    run: (options, batch) => Excel.run(options, batch),
    isSetSupported: (name, version) => Office.context.requirements.isSetSupported(name, version),
  };
}

/** Whether the host has all that the port cannot do without. */
export function canHold(host: ExcelHost): boolean {
  return host.isSetSupported('ExcelApi', '1.9');
}

/** What may be used beyond the lowest requirement set, ExcelApi 1.9. */
export interface Extras {
  /** Merged cells can be asked for (1.13). Where not, no merged cells are reported. */
  readonly merged: boolean;
  /** A table can be stretched over the rows below it (1.13). */
  readonly resize: boolean;
  /** One formula can fill many cells, and one can ask which (1.12). */
  readonly spill: boolean;
  /** Several round trips can be one step of undo (1.20). */
  readonly undoGroup: boolean;
}

export function extrasOf(host: ExcelHost): Extras {
  return {
    merged: host.isSetSupported('ExcelApi', '1.13'),
    resize: host.isSetSupported('ExcelApi', '1.13'),
    spill: host.isSetSupported('ExcelApi', '1.12'),
    undoGroup: host.isSetSupported('ExcelApi', '1.20'),
  };
}

/** Runs a batch that waits for the person to finish editing a cell rather than fail. */
export function inBatch<T>(
  host: ExcelHost,
  batch: (context: Excel.RequestContext) => Promise<T>,
  more: Excel.RunOptions = {},
): Promise<T> {
  return host.run({ delayForCellEdit: true, ...more }, batch);
}
