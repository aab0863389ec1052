export function checkedBase(text: string): string;
export function buildSite(options?: { base?: string; force?: boolean }): Promise<boolean>;
