import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import vm from 'node:vm';

const dist = path.join(
  path.dirname(createRequire(import.meta.url).resolve('@microsoft/office-js/package.json')),
  'dist',
);
const libraryFile = 'excel-win32-16.01.debug.js';

/** What the session needs of the library's inner world, and what tests look at. */
export interface Library {
  readonly Excel: typeof Excel & Readonly<Record<string, { readonly prototype: object }>>;
  readonly OfficeExtension: {
    readonly SessionBase: new () => object;
    readonly Constants: { readonly eventMessageCategory: number; readonly eventWorkbookId: string };
    // The library's own hooks for tests of events.
    readonly _testSetRichApiMessageReadyImpl: (ready: () => Promise<void>) => void;
    readonly _testTriggerRichApiMessageEvent: (message: object) => void;
  };
  Office: object;
}

/** Asks the host by the text of a request; a rejection stands for a connection that broke. */
export type Executor = (request: string) => Promise<HostAnswer>;
export interface HostAnswer {
  /** The body of the answer, as it goes over the wire. */
  readonly text: string;
  /** An error of the whole request, before any action. */
  readonly refused?: { readonly code: string; readonly message: string };
}

let script: vm.Script | undefined;
const loaded = new Map<string, Library>();

/** The unmodified client library of Excel as a host up to some requirement set sees it, in a world of its own that is no browser. */
export function loadLibrary(excelApi: string): Library {
  const known = loaded.get(excelApi);
  if (known) return known;
  const library = loadFresh((name, version) => name !== 'ExcelApi' || compareVersions(version, excelApi) <= 0);
  loaded.set(excelApi, library);
  return library;
}

/** Negative, zero or positive. @example compareVersions('1.9', '1.12') //=> -3 */
export function compareVersions(one: string, other: string): number {
  const [a = 0, b = 0] = one.split('.').map(Number);
  const [c = 0, d = 0] = other.split('.').map(Number);
  return a - c || b - d;
}

function loadFresh(isSetSupported: (name: string, version: string) => boolean): Library {
  const world: Record<string, unknown> = {
    console,
    setTimeout,
    clearTimeout,
    setInterval,
    clearInterval,
    performance,
    URL,
    name: '',
    addEventListener: () => undefined,
    location: { protocol: 'https:', hash: '', search: '', href: 'https://localhost/' },
    navigator: { userAgent: 'node' },
  };
  world.window = world;
  world.self = world;
  script ??= new vm.Script(readFileSync(path.join(dist, libraryFile), 'utf8'), { filename: libraryFile });
  script.runInContext(vm.createContext(world));
  // The library asks Office's context which requirement sets there are; outside Office there is no context to ask.
  world.Office = Object.create(world.Office as object, { context: { value: { requirements: { isSetSupported } } } });
  const library = world as unknown as Library;
  library.OfficeExtension._testSetRichApiMessageReadyImpl(() => Promise.resolve());
  return library;
}

/** Numbers of the events in the library's wire format. */
const cellsChanged = 10;
const sheetDeleted = 15;

/** Lets the library hear that cells of a sheet changed. */
export function sayChanged(library: Library, worksheetId: string): void {
  say(library, cellsChanged, { worksheetId, address: 'A1', changeType: 'RangeEdited', source: 'Local' });
}

/** Lets the library hear that a sheet was deleted. */
export function sayDeleted(library: Library, worksheetId: string): void {
  say(library, sheetDeleted, { worksheetId, source: 'Local' });
}

function say({ OfficeExtension }: Library, messageType: number, what: object): void {
  const { eventMessageCategory, eventWorkbookId } = OfficeExtension.Constants;
  const entry = {
    messageCategory: eventMessageCategory,
    messageType,
    targetId: eventWorkbookId,
    message: JSON.stringify(what),
  };
  OfficeExtension._testTriggerRichApiMessageEvent({ entries: [entry] });
}

/** A session whose requests go to `execute` instead of to Excel. */
export function sessionFor(library: Library, execute: Executor): object {
  class SimulatedSession extends library.OfficeExtension.SessionBase {
    // Names of the library's own hooks.
    _resolveRequestUrlAndHeaderInfo(): Promise<null> {
      return Promise.resolve(null);
    }
    _createRequestExecutorOrNull(): object {
      return {
        executeAsync: async (_data: unknown, _flags: unknown, message: { Body: unknown }) => {
          // Through text and back, as on the real wire: NaN and undefined become null.
          const { refused, text } = await execute(JSON.stringify(message.Body));
          return {
            HttpStatusCode: refused ? 400 : 200,
            ErrorCode: refused?.code ?? null,
            ErrorMessage: refused?.message ?? null,
            Headers: {},
            Body: JSON.parse(text) as unknown,
          };
        },
      };
    }
  }
  return new SimulatedSession();
}
