export function checkedBase(text: string): string;
export function buildSite(options?: { base?: string; force?: boolean }): Promise<boolean>;
export function baseFrom(words: readonly string[]): string;
export function writePlainFiles(folder: string, base: string): Promise<void>;
