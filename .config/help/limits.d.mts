export function limitsOf(id: string): string[];
export const groups: readonly [string, readonly string[]][];
