/** A small table of figures that fits a narrow pane and scrolls in itself where it does not. */
import { makeStyles, mergeClasses, tokens } from '@fluentui/react-components';
import { useId, type ReactNode } from 'react';

const useStyles = makeStyles({
  scroller: { overflowX: 'auto', margin: '0 -12px', padding: '0 12px' },
  table: {
    borderCollapse: 'collapse',
    width: '100%',
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    fontVariantNumeric: 'tabular-nums',
  },
  caption: { position: 'absolute', width: '1px', height: '1px', overflow: 'hidden', clip: 'rect(0 0 0 0)' },
  head: {
    textAlign: 'left',
    fontWeight: tokens.fontWeightRegular,
    color: tokens.colorNeutralForeground2,
    padding: '2px 4px',
    verticalAlign: 'bottom',
  },
  line: { borderTop: `1px solid ${tokens.colorNeutralStroke2}` },
  cell: { padding: '3px 4px', textAlign: 'left', fontWeight: tokens.fontWeightRegular, verticalAlign: 'baseline' },
  right: { textAlign: 'right', whiteSpace: 'nowrap' },
  first: { paddingLeft: 0, overflowWrap: 'break-word' },
  // A short code breaks nowhere, not at its hyphen either.
  whole: { whiteSpace: 'nowrap' },
  wrapped: { whiteSpace: 'normal' },
  named: { minWidth: '76px' },
  last: { paddingRight: 0 },
});

export interface DataRow {
  readonly key: string | number;
  readonly cells: readonly ReactNode[];
}

interface DataTableProps {
  readonly caption: string;
  readonly headers: readonly string[];
  readonly rows: readonly DataRow[];
  /** Columns that hold numbers, from 0. */
  readonly numbers: readonly number[];
  /** Many columns of short numbers: headings take several lines, and names keep a width in which they can be read. */
  readonly crowded?: boolean;
}

/** Letters of a code that stay on one line. */
const SHORT = 8;
const isShort = (cell: ReactNode): boolean => typeof cell === 'string' && cell.length <= SHORT;

export function DataTable({ caption, headers, rows, numbers, crowded = false }: DataTableProps) {
  const styles = useStyles();
  const id = useId();
  const look = (at: number) =>
    mergeClasses(
      numbers.includes(at) && styles.right,
      at === 0 && styles.first,
      at === 0 && crowded && styles.named,
      at === headers.length - 1 && styles.last,
    );
  return (
    <div className={styles.scroller} role="region" aria-labelledby={id} tabIndex={0}>
      <table className={styles.table}>
        <caption id={id} className={styles.caption}>
          {caption}
        </caption>
        <thead>
          <tr>
            {headers.map((header, at) => {
              const className = mergeClasses(styles.head, look(at), crowded && styles.wrapped);
              // A corner that says nothing is no heading.
              return header === '' ? (
                <td key={at} className={className} />
              ) : (
                <th key={at} scope="col" className={className}>
                  {header}
                </th>
              );
            })}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, cells }) => (
            <tr key={key} className={styles.line}>
              {cells.map((cell, at) =>
                at === 0 ? (
                  <th
                    key={at}
                    scope="row"
                    className={mergeClasses(styles.cell, look(at), isShort(cell) && styles.whole)}
                  >
                    {cell}
                  </th>
                ) : (
                  <td key={at} className={mergeClasses(styles.cell, look(at))}>
                    {cell}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
