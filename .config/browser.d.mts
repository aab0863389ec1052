import type { LaunchOptions } from 'playwright-core';

export function usualPlaces(platform?: string, env?: Record<string, string | undefined>): string[];
export function findBrowser(
  platform?: string,
  env?: Record<string, string | undefined>,
  exists?: (path: string) => boolean,
): string | undefined;
export function needBrowser(): string;
export function launchOptions(executablePath: string): LaunchOptions;
