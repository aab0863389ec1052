export function manifestXml(template: string, values: { base: string; version: string }): string;
