/** What the file of a copy is called. */

/** Longer names are cut short by some systems. */
const LONGEST = 60;

/**
 * From the shop and, where the workbook's pages are all for one, the job; what stands in brackets is left out.
 *
 * @example copyName('Demo workshop (invented)', ['R-201']) //=> 'setwright-demo-workshop-r-201.xlsx'
 */
export function copyName(shop: string, jobs: readonly (string | null)[]): string {
  const distinct = [...new Set(jobs)];
  const job = distinct.length === 1 ? (distinct[0] ?? '') : '';
  const parts = ['setwright', shop.replace(/\([^)]*\)/g, ''), job].map(bare).filter((part) => part !== '');
  return `${parts.join('-').slice(0, LONGEST).replace(/-+$/, '')}.xlsx`;
}

/**
 * For a file that was opened: its own name with something behind it, so that a copy never takes its place.
 *
 * @example copyOfName('Stock 2026.xlsx') //=> 'Stock 2026-setwright.xlsx'
 */
export function copyOfName(opened: string): string {
  const stem = opened.replace(/\.xls[xm]$/i, '');
  const numbered = /^(.*-setwright)(?:-(\d+))?$/.exec(stem);
  if (!numbered) return `${stem}-setwright.xlsx`;
  return `${numbered[1] ?? ''}-${Number(numbered[2] ?? 1) + 1}.xlsx`;
}

/** Letters and digits, with a hyphen for all else: what every file system takes. */
function bare(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
}
