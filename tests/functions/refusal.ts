/** What a cell would show for a call that is refused. */
export function refusal(call: () => unknown): { code: string; message: string } {
  try {
    const value = call();
    throw new Error(`No refusal: it answered ${JSON.stringify(value)}.`);
  } catch (thrown) {
    const { code, message } = thrown as { code?: unknown; message?: unknown };
    if (typeof code !== 'string') throw thrown;
    return { code, message: String(message) };
  }
}
