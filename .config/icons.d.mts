export const iconSizes: readonly number[];
export function iconPng(size: number): Buffer;
