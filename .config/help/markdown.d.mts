export function inline(text: string, up?: string): string;
export function readPage(text: string, up?: string): { title: string; body: string };
