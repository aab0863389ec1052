import type { ExcelHost } from '../../src/workbook/excel/host';
import { Book } from './book';
import { compareVersions, loadLibrary, sayChanged, sayDeleted, sessionFor } from './library';
import type { HostAnswer, Library } from './library';
import { RangeObject, workbookObject } from './objects';
import { NOTHING_SPENT, spentBetween, spentNow, together } from './spent';
import type { Spent } from './spent';
import { Host, HostError } from './wire';
import type { Action, RequestBody } from './wire';

/** What goes wrong in one request. */
export interface Trouble {
  readonly code: string;
  /** The action that fails (those before it stay done); `before` refuses the whole request, `after` loses the answer. */
  readonly at: number | 'before' | 'after';
}

export interface SimulatedOptions {
  /** The workbook that is opened; one with an empty sheet if none is named. */
  readonly book?: Book;
  /** Highest requirement set of Excel that the host has. */
  readonly excelApi?: string;
  /** Whether a child of a null object is a null object; if not, it is an error. */
  readonly nullsPropagate?: boolean;
  /** Whether a failing request answers what was done before the failure. */
  readonly answersOnFailure?: boolean;
  readonly spilledFormulas?: 'value' | 'formula';
  /** Longest answer, in bytes or so. */
  readonly answerLimit?: number;
  /** Longest request, in bytes. */
  readonly requestLimit?: number;
  /** How long we are told that a request may be, in bytes. */
  readonly mostBytes?: number;
  /** Whether the host answers from a process of its own, so that the page can do other things meanwhile. */
  readonly answersLater?: boolean;
}

export interface Request {
  readonly actions: number;
  readonly characters: number;
  /** Of the answer; 0 where the request was refused. */
  answered: number;
}

/** An Excel without Excel: the real client library, talking to a workbook in memory. */
export interface Simulated {
  readonly book: Book;
  readonly host: ExcelHost;
  readonly library: Library;
  /** Requests since the start, the library's own tidying up left out. */
  readonly requests: Request[];
  /** Members used, as `Range.values`. */
  readonly used: Set<string>;
  /** What the workbook itself took, which in Excel is Excel's. */
  hostSpent: Spent;
  /** How many objects of the workbook the client keeps hold of. */
  readonly kept: () => number;
  /** Asked before each request, counted from 0 since it was set; what it answers goes wrong. */
  trouble: ((request: number, actions: number) => Trouble | null) | null;
  /** Settles when a person has done with the cell they are editing; null while none is edited. */
  editing: Promise<void> | null;
}

/** A simulated Excel. */
export function simulate(options: SimulatedOptions = {}): Simulated {
  const book = options.book ?? new Book();
  const excelApi = options.excelApi ?? '1.20';
  const isSetSupported = (name: string, version: string): boolean =>
    name !== 'ExcelApi' || compareVersions(version, excelApi) <= 0;
  const library = loadLibrary(excelApi);
  const requests: Request[] = [];
  const used = new Set<string>();
  let failing: number | null = null;
  let code = '';
  const root = workbookObject(book, {
    spilledFormulas: options.spilledFormulas ?? 'value',
    answerLimit: options.answerLimit ?? 5_000_000,
    listening: (to, on) => {
      const say = to === 'changed' ? sayChanged : sayDeleted;
      book[to === 'changed' ? 'heard' : 'heardGone'] = on ? (sheet) => say(library, sheet.id) : null;
    },
  });
  const interpreter = new Host(root, {
    beforeAction: (index) => {
      if (index === failing) throw new HostError(code);
    },
    nullsPropagate: options.nullsPropagate ?? true,
    used: (member) => used.add(member),
  });
  book.held = () => [...interpreter.held].filter((object) => object instanceof RangeObject);
  const simulated: Simulated = {
    book,
    library,
    requests,
    used,
    hostSpent: NOTHING_SPENT,
    kept: () => interpreter.kept,
    editing: null,
    trouble: null,
    host: { run, isSetSupported, mostBytes: options.mostBytes },
  };
  let asked = 0;

  const execute = (sent: string): HostAnswer => {
    const body = JSON.parse(sent) as RequestBody;
    if (isTidying(body)) return { text: JSON.stringify(interpreter.execute(body)) };
    const characters = sent.length;
    const asking = { actions: body.Actions.length, characters, answered: 0 };
    requests.push(asking);
    if (Buffer.byteLength(sent) > (options.requestLimit ?? 5_000_000))
      return refusal('RequestPayloadSizeLimitExceeded');
    const trouble = simulated.trouble?.(asked, body.Actions.length) ?? null;
    asked += 1;
    if (trouble?.at === 'before') return refusal(trouble.code);
    failing = typeof trouble?.at === 'number' ? trouble.at : null;
    code = trouble?.code ?? '';
    const answer = interpreter.execute(body);
    failing = null;
    const text = JSON.stringify(answer);
    if (Buffer.byteLength(text) > (options.answerLimit ?? 5_000_000))
      return refusal('ResponsePayloadSizeLimitExceeded');
    asking.answered = text.length;
    if (trouble?.at === 'after') return refusal(trouble.code);
    if (!answer.Error || options.answersOnFailure !== false) return { text };
    delete answer.Results;
    return { text: JSON.stringify(answer) };
  };
  const elsewhere = () => (options.answersLater ? new Promise((done) => setImmediate(done)) : undefined);
  const sessionThat = (waits: boolean): object =>
    sessionFor(library, async (sent) => {
      // While a cell is edited a batch waits or fails, as its options say (Microsoft's descriptions of `Excel.RunOptions`).
      if (simulated.editing && !waits) return refusal('InvalidOperationInCellEditMode');
      await simulated.editing;
      await elsewhere();
      const start = spentNow();
      const answer = execute(sent);
      simulated.hostSpent = together(simulated.hostSpent, spentBetween(start, spentNow()));
      await elsewhere();
      return answer;
    });
  const sessions = { waiting: sessionThat(true), failing: sessionThat(false) };

  function run<T>(runOptions: Excel.RunOptions, batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
    const session = runOptions.delayForCellEdit ? sessions.waiting : sessions.failing;
    return library.Excel.run({ ...runOptions, session } as Excel.RunOptions, batch);
  }
  // `asked` starts again whenever a test sets what is to go wrong.
  let trouble: Simulated['trouble'] = null;
  Object.defineProperty(simulated, 'trouble', {
    get: () => trouble,
    set: (next: Simulated['trouble']) => {
      trouble = next;
      asked = 0;
    },
  });
  return simulated;
}

function refusal(code: string): HostAnswer {
  return { text: 'null', refused: { code, message: code } };
}

/** The library lets go of its references after each run, in a request of its own that nobody waits for. */
function isTidying({ Actions }: RequestBody): boolean {
  const letsGo = (action: Action): boolean => action.ActionType === 3 && action.Name === '_RemoveReference';
  return Actions.some(letsGo) && Actions.every((action) => letsGo(action) || action.ActionType === 1);
}
