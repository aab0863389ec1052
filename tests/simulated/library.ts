import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import vm from 'node:vm';
import type { RequestBody, ResponseBody } from './wire';

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
  };
  Office: object;
}

/** Asks the host; a rejection stands for a connection that broke. */
export type Executor = (body: RequestBody) => Promise<HostAnswer>;
export interface HostAnswer {
  readonly body: ResponseBody | null;
  /** An error of the whole request, before any action. */
  readonly refused?: { readonly code: string; readonly message: string };
}

let script: vm.Script | undefined;

/** The unmodified client library of Excel, in a world of its own that is no browser. */
export function loadLibrary(isSetSupported: (name: string, version: string) => boolean): Library {
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
  return world as unknown as Library;
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
        executeAsync: async (_data: unknown, _flags: unknown, message: { Body: RequestBody }) => {
          // Through text and back, as on the real wire: NaN and undefined become null.
          const request = JSON.parse(JSON.stringify(message.Body)) as RequestBody;
          const { body, refused } = await execute(request);
          return {
            HttpStatusCode: refused ? 400 : 200,
            ErrorCode: refused?.code ?? null,
            ErrorMessage: refused?.message ?? null,
            Headers: {},
            Body: JSON.parse(JSON.stringify(body)) as ResponseBody | null,
          };
        },
      };
    }
  }
  return new SimulatedSession();
}
