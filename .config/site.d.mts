export function checkedBase(text: string): string;
export function buildSite(options?: { base?: string; force?: boolean }): Promise<boolean>;
export const sharesPath: string;
export function baseFrom(words: readonly string[]): string;
export function writePlainFiles(folder: string, base: string): Promise<void>;
