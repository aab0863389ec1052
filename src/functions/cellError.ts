import type { Issue, IssueCode, Result } from '../core/index';
import { sayIssue } from '../words/issues';

/** The two cell errors that may carry a sentence; a spreadsheet drops the sentence of every other one. */
export type CellErrorCode = '#VALUE!' | '#N/A';

/** Sound questions that have no answer. All other issues are bad input. */
const noAnswer: ReadonlySet<IssueCode> = new Set<IssueCode>([
  'offScale',
  'looseCore',
  'overTarget',
  'tooManyLayers',
  'atFulcrum',
  'noRows',
  'tooFew',
  'inseparable',
]);

/** What a worksheet function throws where the host has no error of its own: same shape as Excel's. */
export class CellError extends Error {
  constructor(
    readonly code: CellErrorCode,
    message: string,
  ) {
    super(message);
    this.name = 'CellError';
  }
}

/** Excel takes the sentence from an object of this class alone; other hosts do not have it. */
interface CustomFunctionsHost {
  readonly CustomFunctions?: { readonly Error?: new (code: string, message: string) => Error };
}

/** The error a cell shows for an issue: `#N/A` where there is no answer, `#VALUE!` for bad input, with the sentence that says why. */
export function cellError(issue: Issue): Error {
  const code: CellErrorCode = noAnswer.has(issue.code) ? '#N/A' : '#VALUE!';
  const HostError = (globalThis as CustomFunctionsHost).CustomFunctions?.Error;
  return HostError ? new HostError(code, sayIssue(issue)) : new CellError(code, sayIssue(issue));
}

/** The value of a result, or its issue thrown the way a cell shows it. */
export function answer<T>(result: Result<T>): T {
  if (!result.ok) throw cellError(result.issue);
  return result.value;
}
