/** A long calculation as a screen needs it: begun when its subject changes, stopped when that is no longer asked. */
import { useEffect, useState } from 'react';
import type { Progress } from '../../core/index';
import { inSlices } from './slices';

export interface Long<Answer> {
  /** Of the subject that is shown now; the last one while the next is worked out. */
  readonly answer: Answer | undefined;
  /** Whether `answer` is of the subject as it stands now. */
  readonly settled: boolean;
  readonly progress: Progress | undefined;
}

/**
 * `begin` must be the same function as long as the subject is the same (`useCallback`); null: there is nothing to work out.
 *
 * @param about an answer about something else is not shown while the next is worked out
 */
export function useLong<Answer>(begin: (() => Generator<Progress, Answer>) | null, about?: unknown): Long<Answer> {
  const [done, setDone] = useState<{ readonly of: unknown; readonly about: unknown; readonly answer: Answer }>();
  const [progress, setProgress] = useState<Progress | undefined>();
  useEffect(() => {
    if (!begin) return undefined;
    const stop = new AbortController();
    void inSlices(begin(), { signal: stop.signal, onProgress: setProgress }).then((answer) => {
      if (stop.signal.aborted || answer === undefined) return;
      setProgress(undefined);
      setDone({ of: begin, about, answer });
    });
    return () => {
      stop.abort();
      setProgress(undefined);
    };
  }, [begin]);
  const shown = begin && done?.about === about ? done?.answer : undefined;
  return { answer: shown, settled: begin !== null && done?.of === begin, progress };
}
