/** What a person may have set of a table, so that one that is made again is as it was. */
import { ifArrived } from './arrived';

const LOOKS = [
  'style',
  'showBandedRows',
  'showBandedColumns',
  'highlightFirstColumn',
  'highlightLastColumn',
  'showFilterButton',
] as const;

export interface TableLooks extends Pick<Excel.Table, (typeof LOOKS)[number]> {
  /** What each column is filtered by; null where it is not. */
  readonly filters: readonly (Excel.FilterCriteria | null)[];
}

/** Asks for them; the answer can be had after the round trip, null where it brought none. */
export function askTableLooks(table: Excel.Table): () => TableLooks | null {
  table.load(LOOKS.join());
  const columns = table.columns.load('items/filter/criteria');
  return () =>
    ifArrived(() => {
      const { style, showBandedRows, showBandedColumns } = table;
      const { highlightFirstColumn, highlightLastColumn, showFilterButton } = table;
      return {
        ...{ style, showBandedRows, showBandedColumns, highlightFirstColumn, highlightLastColumn, showFilterButton },
        filters: columns.items.map(({ filter }) => filterOf(filter.criteria)),
      };
    });
}

/** Criteria that say nothing are none. */
function filterOf(criteria: Partial<Excel.FilterCriteria> | null | undefined): Excel.FilterCriteria | null {
  return criteria?.filterOn ? { ...criteria, filterOn: criteria.filterOn } : null;
}

export function giveTableLooks(table: Excel.Table, { filters, ...looks }: TableLooks): void {
  table.set(looks);
  for (const [at, criteria] of filters.entries()) {
    if (criteria) table.columns.getItemAt(at).filter.apply(criteria);
  }
}
