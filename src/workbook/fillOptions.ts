/** Filling options of one job, priced beside each other, into a sheet of its own. */
import { compareQuotes, type QuoteComparison } from '../core/index';
import { fillPage, type MakePage } from './fillPage';
import { jobFacts } from './jobFacts';
import type { InTheWay } from './outcomes';
import { dressOptions, optionsPage } from './optionsSheet';
import type { WorkbookPort } from './port';
import type { OptionsDone } from './quoteDone';
import { quoteOptions, type JobAsked, type OptionAsked } from './quoteScope';
import { pageSheetName } from './sheetName';
import type { Shop } from './shop';

export interface OptionsRequest extends Omit<JobAsked, 'choices'> {
  readonly options: readonly OptionAsked[];
  /** What `occupied` told the person, who agreed that it may go: this and nothing else. */
  readonly agreed?: InTheWay | undefined;
}

/** Writes what each option costs. Filled again for the same job, the page is rewritten in place; it gets no number. */
export async function fillOptions(port: WorkbookPort, shop: Shop, request: OptionsRequest): Promise<OptionsDone> {
  const { job, terms, options, agreed } = request;
  type No = Extract<OptionsDone, { reason: 'notQuoted' | 'notCompared' }>;
  let alike: QuoteComparison['alike'] = [];
  const make: MakePage<No> = (tables) => {
    const { quotes, issues } = quoteOptions(tables, { job, terms, options });
    if (issues.length > 0) return { done: false, reason: 'notQuoted', issues };
    const compared = compareQuotes(quotes);
    if (!compared.ok) return { done: false, reason: 'notCompared', issue: compared.issue };
    alike = compared.value.alike;
    const page = optionsPage({ ...jobFacts(tables, job), date: terms.issued }, quotes, compared.value);
    return {
      cells: page.cells,
      list: { from: 0, rows: 0 },
      key: `options:job:${job.trim().toLowerCase()}`,
      job,
      sheetName: (taken) => pageSheetName('Options', job, taken),
      dress: (at) => dressOptions(at, page, compared.value),
      label: `Options for job ${job}`,
    };
  };
  const end = await fillPage(port, shop, make, agreed);
  return end.done ? { ...end, options: options.length, alike } : end;
}
