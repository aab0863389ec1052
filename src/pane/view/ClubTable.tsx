/** The preview as a table: one line a club, its details under it when asked. Plain table markup, read as a table. */
import { Button, makeStyles, mergeClasses, tokens } from '@fluentui/react-components';
import { Fragment, useId } from 'react';
import type { ClubPlan } from '../../core/index';
import { readingText } from '../../words/readings';
import { isOpen } from '../state/decisions';
import { changeOf, onLetters } from '../state/plot';
import { numberText, PREVIEW, signedText, TABLE } from '../words';
import { detailsOf, notesOf } from './details';
import { Chevron, Flag } from './glyphs';
import { VerdictWord } from './VerdictMark';
import { NARROW } from './narrow';

const useStyles = makeStyles({
  scroller: { overflowX: 'auto', margin: '0 -12px', padding: '0 12px' },
  table: {
    borderCollapse: 'collapse',
    width: '100%',
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
  },
  caption: { position: 'absolute', width: '1px', height: '1px', overflow: 'hidden', clip: 'rect(0 0 0 0)' },
  head: {
    textAlign: 'left',
    fontWeight: tokens.fontWeightRegular,
    color: tokens.colorNeutralForeground2,
    padding: '2px 4px',
    whiteSpace: 'nowrap',
    [NARROW]: { padding: '2px' },
  },
  line: { borderTop: `1px solid ${tokens.colorNeutralStroke2}` },
  cell: {
    padding: '1px 4px',
    whiteSpace: 'nowrap',
    textAlign: 'left',
    verticalAlign: 'middle',
    fontWeight: tokens.fontWeightRegular,
    height: '26px',
    [NARROW]: { padding: '1px 2px' },
  },
  first: { paddingLeft: 0, [NARROW]: { paddingLeft: 0 } },
  last: { paddingRight: 0, width: '72px', [NARROW]: { paddingRight: 0, width: 'auto' } },
  right: { textAlign: 'right' },
  middle: { textAlign: 'center' },
  open: {
    display: 'inline-flex',
    alignItems: 'center',
    columnGap: '2px',
    minHeight: '24px',
    width: '100%',
    maxWidth: '112px',
    padding: 0,
    border: 'none',
    background: 'none',
    color: 'inherit',
    font: 'inherit',
    textAlign: 'left',
    whiteSpace: 'normal',
    cursor: 'pointer',
    borderRadius: tokens.borderRadiusSmall,
    ':hover': { color: tokens.colorBrandForeground1 },
    ':focus-visible': { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: '1px' },
  },
  arrow: { color: tokens.colorNeutralForeground3, padding: '0 1px' },
  details: { padding: '4px 0 8px 16px' },
  pairs: { display: 'grid', gridTemplateColumns: '92px minmax(0, 1fr)', columnGap: '8px', rowGap: '2px', margin: 0 },
  term: { color: tokens.colorNeutralForeground2 },
  says: { margin: 0, overflowWrap: 'anywhere' },
  notes: { margin: '6px 0 0', paddingLeft: '16px' },
  more: { display: 'flex', alignItems: 'center', justifyContent: 'space-between', columnGap: '8px', marginTop: '6px' },
});

function Readings({ club }: { readonly club: ClubPlan }) {
  const styles = useStyles();
  const after = club.readingAfter;
  const change = changeOf(club);
  const before = club.readingBefore;
  // Off the letters the change says more than two long numbers; the details hold both.
  const told = after ?? (change === undefined ? before : undefined);
  if (told === undefined || !onLetters(told))
    return <>{change === undefined ? TABLE.none : `${signedText(change)} pt`}</>;
  return (
    <>
      {before === undefined ? TABLE.none : readingText(before)}
      <span className={styles.arrow} aria-hidden="true">
        {TABLE.arrow}
      </span>
      <span className={styles.caption}>{TABLE.to}</span>
      {after === undefined ? TABLE.none : readingText(after)}
    </>
  );
}

function Details({ club, id }: { readonly club: ClubPlan; readonly id: string }) {
  const styles = useStyles();
  const notes = notesOf(club);
  return (
    <tr id={id}>
      <td colSpan={5} className={styles.details}>
        <dl className={styles.pairs}>
          {detailsOf(club).map(([name, text]) => (
            <Fragment key={name}>
              <dt className={styles.term}>{name}</dt>
              <dd className={styles.says}>{text}</dd>
            </Fragment>
          ))}
        </dl>
        {notes.length > 0 && (
          <ul className={styles.notes}>
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        )}
      </td>
    </tr>
  );
}

interface LineProps {
  readonly club: ClubPlan;
  readonly opened: boolean;
  readonly onOpen: (row: number) => void;
}

function Line({ club, opened, onOpen }: LineProps) {
  const styles = useStyles();
  const id = useId();
  return (
    <>
      <tr className={styles.line}>
        <th scope="row" className={mergeClasses(styles.cell, styles.first)}>
          <button
            type="button"
            className={styles.open}
            aria-expanded={opened}
            aria-controls={opened ? id : undefined}
            onClick={() => onOpen(club.row)}
          >
            <Chevron down={opened} />
            <span>{club.name}</span>
            {isOpen(club) && <Flag label={TABLE.flagged} />}
          </button>
        </th>
        <td className={mergeClasses(styles.cell, styles.middle)}>
          {club.lowerLayers ? `${club.layers}+${club.lowerLayers}` : club.layers}
        </td>
        <td className={styles.cell}>
          <Readings club={club} />
        </td>
        <td className={mergeClasses(styles.cell, styles.right)}>
          {club.remedy?.grams ? numberText(club.remedy.grams) : TABLE.none}
        </td>
        <td className={mergeClasses(styles.cell, styles.last)}>
          <VerdictWord verdict={club.verdictAfter} />
        </td>
      </tr>
      {opened && <Details club={club} id={id} />}
    </>
  );
}

interface TableProps {
  readonly clubs: readonly ClubPlan[];
  readonly all: number;
  readonly open: readonly number[];
  readonly onOpen: (row: number) => void;
  readonly onMore: () => void;
}

export function ClubTable({ clubs, all, open, onOpen, onMore }: TableProps) {
  const styles = useStyles();
  const id = useId();
  return (
    <>
      <div className={styles.scroller} role="region" aria-labelledby={id} tabIndex={0}>
        <table className={styles.table}>
          <caption id={id} className={styles.caption}>
            {TABLE.caption}
          </caption>
          <thead>
            <tr>
              <th scope="col" className={mergeClasses(styles.head, styles.first)}>
                {TABLE.club}
              </th>
              <th scope="col" className={mergeClasses(styles.head, styles.middle)}>
                {TABLE.layers}
              </th>
              <th scope="col" className={styles.head}>
                {TABLE.reading}
              </th>
              <th scope="col" className={mergeClasses(styles.head, styles.right)}>
                {TABLE.add}
              </th>
              <th scope="col" className={mergeClasses(styles.head, styles.last)}>
                {TABLE.verdict}
              </th>
            </tr>
          </thead>
          <tbody>
            {clubs.map((club) => (
              <Line key={club.row} club={club} opened={open.includes(club.row)} onOpen={onOpen} />
            ))}
          </tbody>
        </table>
      </div>
      {clubs.length < all && (
        <div className={styles.more}>
          <span>{PREVIEW.more(clubs.length, all)}</span>
          <Button size="small" onClick={onMore}>
            {PREVIEW.moreButton}
          </Button>
        </div>
      )}
    </>
  );
}
