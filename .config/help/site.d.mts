import type { Metadata } from '../metadata.mjs';

/** What `.config/help/facts.ts` gathers. */
export type Facts = Readonly<Record<string, unknown>>;
export interface HelpInput {
  metadata: Metadata;
  sourceText: string;
  facts: Facts;
  version: string;
  styles: string;
}
export function readFacts(): Promise<Facts>;
export function helpSite(input: HelpInput): Map<string, string>;
