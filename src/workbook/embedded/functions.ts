/**
 * Our worksheet functions in the embedded spreadsheet, called the way Excel calls them.
 *
 * The spreadsheet's own short cut for adding a function hands scalars over as matrices and blanks as 0, so each function
 * gets an executor of its own.
 */
import type { Injector, Nullable } from '@univerjs/core';
import { BooleanNumber } from '@univerjs/core';
import type { BaseValueObject, IFunctionInfo } from '@univerjs/engine-formula';
import {
  ArrayValueObject,
  BaseFunction,
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  FunctionType,
  IFunctionService,
  NumberValueObject,
  StringValueObject,
} from '@univerjs/engine-formula';
import { IDescriptionService } from '@univerjs/sheets-formula';
import { functionNamespace } from '../shared/call';

/** One function as the metadata generator describes it. */
export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description?: string;
  readonly parameters: readonly {
    readonly name: string;
    readonly description?: string;
    readonly optional?: boolean;
    readonly dimensionality?: string;
    readonly type?: string;
  }[];
}

/** What a worksheet function is to a spreadsheet: values in, a value or a matrix out, an error object thrown. */
export type Implementation = (...args: never[]) => unknown;

/** A cell of the sheet a formula stands in, counted from 0. */
export interface FormulaCell {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

export interface FunctionOptions {
  /** How a reference to one blank cell arrives: Excel hands over null on the web and 0 on the desktop. */
  readonly blanks?: 'null' | 'zero';
  /** Hears why a function answered an error; the cell itself holds only the error's code. */
  readonly onError?: (cell: FormulaCell | null, functionName: string, message: string) => void;
}

/** Remembers the last sentence of each formula cell whose function answered an error. */
export interface ErrorSentences {
  /** Why the cell's function answered an error, or null when it did not or is not one of ours. */
  at(cell: FormulaCell): string | null;
}

const knownErrors = new Set<string>(Object.values(ErrorType));

/** An argument that is an error value: Excel answers it without calling the function. */
class ErrorArgument {
  constructor(readonly value: BaseValueObject) {}
}

/**
 * Makes every function of `metadata` that has an implementation known to the spreadsheet, by the name `REGRIP.<name>`.
 *
 * Throws when a function has no implementation: a sheet full of `#NAME?` would be noticed too late.
 */
export function registerFunctions(
  injector: Injector,
  metadata: readonly FunctionMetadata[],
  implementations: Readonly<Record<string, Implementation>>,
  options: FunctionOptions = {},
): ErrorSentences {
  const sentences = new Sentences();
  const executors = metadata.map((each) => {
    const implementation = implementations[each.id];
    if (!implementation) throw new Error(`The function ${each.id} is described but has no implementation.`);
    return new ExcelLikeFunction(each, implementation, options, sentences);
  });
  injector.get(IFunctionService).registerExecutors(...executors);
  injector.get(IDescriptionService).registerDescriptions(metadata.map(describe));
  return sentences;
}

function sheetName(metadata: FunctionMetadata): string {
  return `${functionNamespace}.${metadata.name}`.toUpperCase();
}

function describe(metadata: FunctionMetadata): IFunctionInfo {
  return {
    functionName: sheetName(metadata),
    functionType: FunctionType.User,
    description: metadata.description ?? '',
    abstract: metadata.description ?? '',
    functionParameter: metadata.parameters.map((parameter) => ({
      name: parameter.name,
      detail: parameter.description ?? '',
      example: '',
      require: parameter.optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
      repeat: BooleanNumber.FALSE,
    })),
  };
}

class Sentences implements ErrorSentences {
  private readonly byCell = new Map<string, Map<string, string>>();

  at(cell: FormulaCell): string | null {
    const sentences = this.byCell.get(keyOf(cell));
    return sentences?.values().next().value ?? null;
  }

  keep(cell: FormulaCell | null, functionName: string, message: string): void {
    if (!cell) return;
    const key = keyOf(cell);
    const sentences = this.byCell.get(key) ?? new Map<string, string>();
    sentences.set(functionName, message);
    this.byCell.set(key, sentences);
  }

  drop(cell: FormulaCell | null, functionName: string): void {
    if (cell) this.byCell.get(keyOf(cell))?.delete(functionName);
  }
}

function keyOf(cell: FormulaCell): string {
  return `${cell.sheetId}!${cell.row},${cell.column}`;
}

class ExcelLikeFunction extends BaseFunction {
  constructor(
    private readonly metadata: FunctionMetadata,
    private readonly implementation: Implementation,
    private readonly options: FunctionOptions,
    private readonly sentences: Sentences,
    private readonly functionName = sheetName(metadata),
  ) {
    super(functionName);
    // None is required here: with a missing argument our own sentence is more use than the engine's bare #N/A.
    this.minParams = 0;
    this.maxParams = metadata.parameters.length;
  }

  override calculate(...given: BaseValueObject[]): BaseValueObject {
    try {
      const args = this.metadata.parameters.map((parameter, index) => {
        const value = given[index];
        if (!value) return null;
        return parameter.dimensionality === 'matrix' ? matrixOf(value) : this.scalarOf(value, parameter.name);
      });
      const answer = toValueObject(this.implementation(...(args as never[])));
      this.sentences.drop(this.cell(), this.functionName);
      return answer;
    } catch (thrown) {
      if (thrown instanceof ErrorArgument) {
        this.sentences.drop(this.cell(), this.functionName);
        return thrown.value;
      }
      return this.errorOf(thrown);
    }
  }

  private scalarOf(value: BaseValueObject, parameterName: string): unknown {
    if (!value.isArray()) return plain(value, null);
    const matrix = value as ArrayValueObject;
    const [rows, columns] = [matrix.getRowCount(), matrix.getColumnCount()];
    if (rows > 1 || columns > 1) {
      throw new CallError(
        '#VALUE!',
        `${parameterName}: give one cell; a range of ${rows} × ${columns} cells was given.`,
      );
    }
    return plain(matrix.getArrayValue()[0]?.[0], this.options.blanks === 'zero' ? 0 : null);
  }

  private errorOf(thrown: unknown): BaseValueObject {
    const { code, message } = errorParts(thrown);
    const cell = this.cell();
    this.sentences.keep(cell, this.functionName, message);
    this.options.onError?.(cell, this.functionName, message);
    return ErrorValueObject.create(code, message);
  }

  private cell(): FormulaCell | null {
    const sheetId = this.subUnitId;
    return sheetId && this.row >= 0 && this.column >= 0 ? { sheetId, row: this.row, column: this.column } : null;
  }
}

class CallError extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}

function matrixOf(value: BaseValueObject): unknown[][] {
  // A blank inside a range is an empty text on every platform.
  if (!value.isArray()) return [[inRange(value)]];
  const matrix = value as ArrayValueObject;
  const columns = matrix.getColumnCount();
  return Array.from({ length: matrix.getRowCount() }, (_, row) => {
    const cells = matrix.getArrayValue()[row] ?? [];
    return Array.from({ length: columns }, (_unused, column) => inRange(cells[column]));
  });
}

/** One bad cell must not cost the plan of a whole set: an error inside a range is handed over, as Excel is asked to do. */
function inRange(value: Nullable<BaseValueObject>): unknown {
  return value?.isError() ? { error: String(value.getValue()) } : plain(value, '');
}

function plain(value: Nullable<BaseValueObject>, blank: null | 0 | ''): unknown {
  if (!value || value.isNull()) return blank;
  if (value.isError()) throw new ErrorArgument(value);
  return value.getValue();
}

function errorParts(thrown: unknown): { code: ErrorType; message: string } {
  const { code, message } = (typeof thrown === 'object' && thrown ? thrown : {}) as {
    code?: unknown;
    message?: unknown;
  };
  return {
    code: typeof code === 'string' && knownErrors.has(code) ? (code as ErrorType) : ErrorType.VALUE,
    message: typeof message === 'string' ? message : String(thrown),
  };
}

function toValueObject(answer: unknown): BaseValueObject {
  if (!Array.isArray(answer)) return cellObject(answer);
  const rows = answer as readonly unknown[];
  const columns = Math.max(1, ...rows.map((row) => (Array.isArray(row) ? row.length : 1)));
  return ArrayValueObject.create({
    calculateValueList: rows.map((row) => {
      const cells: readonly unknown[] = Array.isArray(row) ? row : [row];
      return Array.from({ length: columns }, (_, column) => cellObject(cells[column] ?? ''));
    }),
    rowCount: rows.length,
    columnCount: columns,
    unitId: '',
    sheetId: '',
    row: -1,
    column: -1,
  });
}

/** Text stays text: the engine's own factory would read `'007'` as 7 and `'TRUE'` as a truth value. */
function cellObject(answer: unknown): BaseValueObject {
  if (typeof answer === 'string') return StringValueObject.create(answer);
  if (typeof answer === 'boolean') return BooleanValueObject.create(answer);
  if (typeof answer === 'number') {
    return Number.isFinite(answer) ? NumberValueObject.create(answer) : ErrorValueObject.create(ErrorType.NUM);
  }
  // As in Excel, where a function that answers nothing shows 0.
  if (answer === null || answer === undefined) return NumberValueObject.create(0);
  const { code, message } = errorParts(answer);
  return ErrorValueObject.create(code, message);
}
