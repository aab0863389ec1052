/** How far the embedded spreadsheet can go. */
import type { Capabilities } from '../port';

export const EMBEDDED: Capabilities = { host: 'embedded', spill: true, pageSetup: false, undoGroup: true };
