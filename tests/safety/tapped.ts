/** A port in front of a port: every call can be watched, held up, refused or lost. */
import type { Change, WorkbookPort } from '../../src/workbook/port';

/** One round trip that is about to be made. */
export interface Trip {
  /** Which one it is, from 1. */
  readonly number: number;
  readonly method: 'read' | 'apply' | 'revert' | 'selection' | 'recall' | 'remember';
  /** Of an apply. */
  readonly changes: readonly Change[];
}

export type Tap = <T>(trip: Trip, go: () => Promise<T>) => Promise<T>;

export function tapped(port: WorkbookPort, tap: Tap): WorkbookPort {
  let number = 0;
  const through = <T>(method: Trip['method'], go: () => Promise<T>, changes: readonly Change[] = []): Promise<T> => {
    number += 1;
    return tap({ number, method, changes }, go);
  };
  return {
    capabilities: port.capabilities,
    read: (queries) => through('read', () => port.read(queries)),
    apply: (...of) => through('apply', () => port.apply(...of), of[0]),
    revert: (receipt) => through('revert', () => port.revert(receipt)),
    selection: () => through('selection', () => port.selection()),
    recall: (key) => through('recall', () => port.recall(key)),
    remember: (key, value) => through('remember', () => port.remember(key, value)),
    watch: (changed) => port.watch(changed),
  };
}
