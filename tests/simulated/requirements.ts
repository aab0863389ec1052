import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { compareVersions } from './library';

const typings = path.join(
  path.dirname(createRequire(import.meta.url).resolve('@types/office-js/package.json')),
  'index.d.ts',
);

/** `Range.getTables` → `1.9`: the requirement set of Excel in which each member came, as its published description says. */
export function requirementSets(): ReadonlyMap<string, string> {
  const sets = new Map<string, string>();
  let inExcel = false;
  let className = '';
  let said: string | null = null;
  for (const line of readFileSync(typings, 'utf8').split(/\r?\n/)) {
    if (/^declare namespace /.test(line)) inExcel = line.startsWith('declare namespace Excel ');
    if (!inExcel) continue;
    const api = /\[Api set: ExcelApi (\d+\.\d+)/.exec(line);
    const begins = /^ {4}(?:export )?(?:class|interface) (\w+)/.exec(line);
    const member = /^ {8}(?:readonly )?(\w+)\??[(:<]/.exec(line);
    if (api) said = api[1] ?? null;
    else if (begins) {
      className = begins[1] ?? '';
      said = null;
    } else if (member && className) {
      keepEarlier(sets, `${className}.${member[1]}`, said);
      said = null;
    }
  }
  return sets;
}

/** A member described several times, for its several forms, came with the earliest. */
function keepEarlier(sets: Map<string, string>, member: string, set: string | null): void {
  const known = sets.get(member);
  if (set !== null && (known === undefined || compareVersions(set, known) < 0)) sets.set(member, set);
}
