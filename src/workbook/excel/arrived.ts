/** What an answer brought; a request that failed need not have brought what was asked for, and then the client library throws. */
export function ifArrived<T>(get: () => T): T | null {
  try {
    return get();
  } catch {
    return null;
  }
}
