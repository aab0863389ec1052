/** Makes a file away from the page, so that the page stays alive. */
import { bytesOf } from './file';
import { unpacker, type Parcel } from './parcels';

/** What comes back. */
export type Made = { readonly bytes: Uint8Array } | { readonly said: string };

/** What a worker's own scope has of all that a page's has. */
interface Scope {
  onmessage: ((event: MessageEvent<Parcel>) => void) | null;
  postMessage(made: Made, transfer: Transferable[]): void;
}

const scope = self as unknown as Scope;
const unpack = unpacker();

scope.onmessage = ({ data }) => {
  const workbook = unpack(data);
  if (!workbook) return;
  bytesOf(workbook).then(
    (bytes) => scope.postMessage({ bytes }, [bytes.buffer]),
    (error: unknown) => scope.postMessage({ said: error instanceof Error ? error.message : String(error) }, []),
  );
};
