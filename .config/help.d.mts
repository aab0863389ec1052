import type { Metadata } from './metadata.mjs';

export function exampleInCell(name: string, text: string): string;
export function helpHtml(metadata: Metadata, sourceText: string): string;
