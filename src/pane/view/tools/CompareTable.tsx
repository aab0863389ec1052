/** The grips that were tried, a line each: ticked for the shortlist, opened for the rest of the figures. */
import { Button, makeStyles, mergeClasses, tokens } from '@fluentui/react-components';
import { Fragment, useId } from 'react';
import type { Count, Tried } from '../../../core/index';
import { COUNT_WORDS, bestAtText } from '../../../words/choose';
import { countText, layersText, tiedName } from '../../compareText';
import { COMPARE_WORDS } from '../../toolWords';
import { Chevron } from '../glyphs';

const useStyles = makeStyles({
  scroller: { overflowX: 'auto', margin: '0 -12px', padding: '0 12px' },
  table: {
    borderCollapse: 'collapse',
    width: '100%',
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    fontVariantNumeric: 'tabular-nums',
  },
  head: {
    textAlign: 'left',
    fontWeight: tokens.fontWeightRegular,
    color: tokens.colorNeutralForeground2,
    padding: '2px 3px',
    whiteSpace: 'nowrap',
  },
  line: { borderTop: `1px solid ${tokens.colorNeutralStroke2}` },
  cell: {
    padding: '2px 3px',
    textAlign: 'left',
    verticalAlign: 'middle',
    fontWeight: tokens.fontWeightRegular,
    whiteSpace: 'nowrap',
  },
  right: { textAlign: 'right' },
  first: { paddingLeft: 0, width: '22px' },
  last: { paddingRight: 0 },
  tick: { width: '16px', height: '16px', margin: '4px 0', accentColor: tokens.colorBrandBackground, display: 'block' },
  open: {
    display: 'inline-flex',
    alignItems: 'center',
    columnGap: '2px',
    minHeight: '24px',
    padding: 0,
    border: 'none',
    background: 'none',
    color: 'inherit',
    font: 'inherit',
    textAlign: 'left',
    whiteSpace: 'normal',
    overflowWrap: 'anywhere',
    cursor: 'pointer',
    borderRadius: tokens.borderRadiusSmall,
    ':hover': { color: tokens.colorBrandForeground1 },
    ':focus-visible': { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: '1px' },
  },
  item: { display: 'inline-block', maxWidth: '112px', overflowWrap: 'anywhere' },
  // A line breaks between items, not at the hyphen of one that fits.
  whole: { whiteSpace: 'nowrap' },
  unbeaten: { fontWeight: tokens.fontWeightSemibold },
  hidden: { position: 'absolute', width: '1px', height: '1px', overflow: 'hidden', clip: 'rect(0 0 0 0)' },
  details: { padding: '2px 0 10px 22px' },
  pairs: { display: 'grid', gridTemplateColumns: '92px minmax(0, 1fr)', columnGap: '8px', rowGap: '2px', margin: 0 },
  term: { color: tokens.colorNeutralForeground2 },
  says: { margin: 0, overflowWrap: 'anywhere' },
  fit: { marginTop: '8px' },
});

/** Letters of an item that fit its column. */
const FITS = 12;

const SHOWN: readonly Count[] = ['sizeError', 'largestChange', 'out', 'weight'];
const HEADS = [COMPARE_WORDS.size, COMPARE_WORDS.change, COMPARE_WORDS.out, COMPARE_WORDS.add];

function detailsOf(tried: Tried): readonly (readonly [string, string])[] {
  const { candidate, bestAt } = tried;
  const [first] = candidate.items;
  return [
    [COMPARE_WORDS.grip, [first?.description, first?.size].filter(Boolean).join(', ')],
    [COMPARE_WORDS.layers, layersText(tried)],
    ...(['sizeError', 'largestChange', 'weight', 'massAdded', 'price', 'short'] as const).map(
      (count) => [COUNT_WORDS[count], countText(tried, count, true)] as const,
    ),
    [COMPARE_WORDS.bestAt, bestAt.length ? bestAtText(bestAt).replace(/^best at /, '') : COMPARE_WORDS.bestAtNothing],
  ];
}

function Details({
  tried,
  id,
  settled,
  onFit,
}: {
  readonly tried: Tried;
  readonly id: string;
  readonly settled: boolean;
  readonly onFit: (tried: Tried) => void;
}) {
  const styles = useStyles();
  return (
    <tr id={id}>
      <td colSpan={6} className={styles.details}>
        <dl className={styles.pairs}>
          {detailsOf(tried).map(([name, text]) => (
            <Fragment key={name}>
              <dt className={styles.term}>{name}</dt>
              <dd className={styles.says}>{text}</dd>
            </Fragment>
          ))}
        </dl>
        <Button
          size="small"
          appearance="primary"
          className={styles.fit}
          disabledFocusable={!settled}
          onClick={() => onFit(tried)}
        >
          {COMPARE_WORDS.fit}
        </Button>
      </td>
    </tr>
  );
}

interface LineProps {
  readonly tried: Tried;
  readonly ticked: boolean;
  readonly opened: boolean;
  /** Whether it is of the clubs as they are now. */
  readonly settled: boolean;
  readonly onTick: (key: string, ticked: boolean) => void;
  readonly onOpen: (key: string) => void;
  readonly onFit: (tried: Tried) => void;
}

function Line({ tried, ticked, opened, settled, onTick, onOpen, onFit }: LineProps) {
  const styles = useStyles();
  const id = useId();
  const { key } = tried.candidate;
  const name = tiedName(tried);
  return (
    <>
      <tr className={styles.line}>
        <td className={mergeClasses(styles.cell, styles.first)}>
          <input
            type="checkbox"
            className={styles.tick}
            aria-label={COMPARE_WORDS.tick(name)}
            checked={ticked}
            onChange={(event) => onTick(key, event.target.checked)}
          />
        </td>
        <th scope="row" className={styles.cell}>
          <button
            type="button"
            className={mergeClasses(styles.open, tried.unbeaten && styles.unbeaten)}
            aria-expanded={opened}
            aria-controls={opened ? id : undefined}
            onClick={() => onOpen(key)}
          >
            <Chevron down={opened} />
            <span>
              {tried.candidate.items.map(({ item }, at) => (
                <Fragment key={item}>
                  {at > 0 && ', '}
                  <span className={mergeClasses(styles.item, item.length <= FITS && styles.whole)}>{item}</span>
                </Fragment>
              ))}
              {tried.unbeaten && <span className={styles.hidden}>, {COMPARE_WORDS.unbeaten}</span>}
            </span>
          </button>
        </th>
        {SHOWN.map((count, at) => (
          <td key={count} className={mergeClasses(styles.cell, styles.right, at === SHOWN.length - 1 && styles.last)}>
            {countText(tried, count, false)}
          </td>
        ))}
      </tr>
      {opened && <Details tried={tried} id={id} settled={settled} onFit={onFit} />}
    </>
  );
}

interface TableProps extends Omit<LineProps, 'tried' | 'ticked' | 'opened'> {
  readonly tried: readonly Tried[];
  readonly shortlist: readonly string[];
  readonly looked: string | null;
}

export function CompareTable({ tried, shortlist, looked, ...rest }: TableProps) {
  const styles = useStyles();
  const id = useId();
  return (
    <div className={styles.scroller} role="region" aria-labelledby={id} tabIndex={0}>
      <table className={styles.table}>
        <caption id={id} className={styles.hidden}>
          {COMPARE_WORDS.caption}
        </caption>
        <thead>
          <tr>
            <td className={mergeClasses(styles.head, styles.first)} />
            <th scope="col" className={styles.head}>
              {COMPARE_WORDS.grip}
            </th>
            {HEADS.map((head, at) => (
              <th
                key={head}
                scope="col"
                className={mergeClasses(styles.head, styles.right, at === HEADS.length - 1 && styles.last)}
              >
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {tried.map((each) => (
            <Line
              key={each.candidate.key}
              tried={each}
              ticked={shortlist.includes(each.candidate.key)}
              opened={looked === each.candidate.key}
              {...rest}
            />
          ))}
        </tbody>
      </table>
    </div>
  );
}
