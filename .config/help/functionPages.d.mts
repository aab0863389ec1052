import type { Parameter } from '../metadata.mjs';

export function unitOf(parameter: Parameter): string | undefined;
