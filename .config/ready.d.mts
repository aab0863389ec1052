interface LockEntry {
  version?: string;
  integrity?: string;
  link?: boolean;
  optional?: boolean;
  devOptional?: boolean;
}
interface Lock {
  packages: Record<string, LockEntry>;
}
export function nodeIsNewEnough(version: string): boolean;
export function stampOf(lockText: string | Uint8Array, nodeVersion: string, platform?: string): string;
export function treeAgrees(lock: Lock, installed: Lock): boolean;
