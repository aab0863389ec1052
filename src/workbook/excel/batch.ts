import { nextTurn, pauses } from '../pace';
import type { Block } from '../port';
import type { ExcelHost } from './host';

/** One request holds 5 MB on the web; the rest is for what is not counted. */
const mostBytes = 4_800_000;

const utf8 = new TextEncoder();

/** How many bytes a text takes on its way. */
export function bytesOf(text: string): number {
  // Most texts hold nothing else, and encoding them would take room of their own.
  return ASCII.test(text) ? text.length : utf8.encode(text).length;
}

/** Characters of one byte. */
const ASCII = /^[\u0000-\u007f]*$/;

/** A request longer than this takes the client library some milliseconds to put together. */
const LONG = 200_000;

/** A batch of changes under way, which sends what it has before it grows too long. */
export interface Batch {
  readonly context: Excel.RequestContext;
  /** How many bytes one request may take, and one answer. */
  readonly most: number;
  /** Makes room for so many bytes; sends what is there if need be. */
  room(bytes: number): Promise<void>;
  /** Makes room for so many bytes of an answer, which is as long as a request at most. */
  answers(bytes: number): Promise<void>;
  /** How long an answer is that is needed before cells of a block are put into a request: it has to come with that very request. */
  looking(at: Block): number;
  /** To be awaited right before cells are put into the request. */
  writing(at: Block): Promise<void>;
  /** Gives the page a turn, where that is due. */
  pause(): Promise<void>;
  /** Sends what is there; more follows. */
  sendPart(): Promise<void>;
  /** Sends what is there. */
  send(): Promise<void>;
  /** How often it was sent. */
  sent(): number;
}

/** What is done around the requests of a batch. */
export interface Around {
  /** After each round trip, when what it loaded has arrived; may throw to stop. */
  answered(): Promise<void>;
  /** Last in a request that others follow. */
  leaving(): void;
  /** First in a request that follows others. */
  resuming(): void;
  looking(at: Block): number;
  writing(at: Block): Promise<void>;
}

/** @param mostAnswered how many bytes one answer may take, where that is less than a request may */
export function startBatch(
  context: Excel.RequestContext,
  { mostBytes: most = mostBytes }: ExcelHost,
  around: Partial<Around> = {},
  mostAnswered = most,
): Batch {
  let bytes = 0;
  let answering = 0;
  let latest = 0;
  let sent = 0;
  quieten(context);
  const send = async (): Promise<void> => {
    // The client library puts a request together in one piece, to which nothing else is to come.
    if (bytes > LONG) await nextTurn();
    // Counted before it is sent: when it fails, something may have been done.
    sent += 1;
    const isLong = answering > LONG;
    bytes = 0;
    answering = 0;
    await context.sync();
    if (isLong) await nextTurn();
    await around.answered?.();
  };
  const sendPart = async (): Promise<void> => {
    around.leaving?.();
    await send();
    quieten(context);
    around.resuming?.();
  };
  const room = async (more: number): Promise<void> => {
    if (bytes > 0 && bytes + more > most) {
      await sendPart();
    }
    bytes += more;
    latest = more;
  };
  const answers = async (more: number): Promise<void> => {
    if (answering > 0 && answering + more > Math.min(most, mostAnswered)) {
      await sendPart();
      // What room was made for is put into the next one.
      bytes = latest;
    }
    answering += more;
  };
  const looking = (at: Block): number => around.looking?.(at) ?? 0;
  const writing = (at: Block): Promise<void> => around.writing?.(at) ?? Promise.resolve();
  return { context, most, room, answers, looking, writing, pause: pauses(), sendPart, send, sent: () => sent };
}

/** Neither calculation nor drawing between the changes; both come back by themselves after the round trip. */
function quieten({ application }: Excel.RequestContext): void {
  application.suspendApiCalculationUntilNextSync();
  application.suspendScreenUpdatingUntilNextSync();
}
