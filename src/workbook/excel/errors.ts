import { PortError } from '../port';
import type { PortErrorCode } from '../port';

/** Excel's error codes that mean something to the person; all others are `host`. */
const meanings: Readonly<Record<string, PortErrorCode>> = {
  AccessDenied: 'protected',
  InvalidOperationInCellEditMode: 'editing',
  InvalidSelection: 'unsupported',
  UnsupportedOperation: 'unsupported',
  ApiNotAvailable: 'unsupported',
  ApiNotFound: 'unsupported',
  NotImplemented: 'unsupported',
  RequestPayloadSizeLimitExceeded: 'tooLong',
  ResponsePayloadSizeLimitExceeded: 'tooLong',
};

/** The host refused before it did anything. */
const nothingDone: readonly string[] = ['InvalidOperationInCellEditMode', 'RequestPayloadSizeLimitExceeded'];

export function hostCode(error: unknown): string {
  return typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';
}

/** Code and message in the host's own words; for a developer, not for the person at the bench. */
export function hostWords(error: unknown): string {
  const message = error instanceof Error || hasMessage(error) ? error.message : String(error);
  const code = hostCode(error);
  return code && code !== message ? `${code}: ${message}` : message;
}

// The library's errors come from a world of their own in tests: `instanceof Error` does not hold for them.
function hasMessage(error: unknown): error is { readonly message: string } {
  return typeof error === 'object' && error !== null && 'message' in error && typeof error.message === 'string';
}

/** The error as the port throws it. */
export function toPortError(error: unknown): PortError {
  if (error instanceof PortError) return error;
  return new PortError(meanings[hostCode(error)] ?? 'host', [], hostWords(error));
}

/** Whether the host says that it did nothing of the request. */
export function didNothing(error: unknown): boolean {
  return nothingDone.includes(hostCode(error));
}
