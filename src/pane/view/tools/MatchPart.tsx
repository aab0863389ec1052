/** One list looked over before it is connected: for each column of ours the heading, the unit, and what stands below it. */
import { Button, makeStyles, tokens } from '@fluentui/react-components';
import { useCallback, useId, useMemo } from 'react';
import { CONNECTABLE } from '../../../workbook/tables/headings';
import type { TableSchema } from '../../../workbook/schema';
import type { ConnectWarning, HeadingRow, ShopUnit } from '../../../workbook/connect/types';
import { sayConnectWarning } from '../../../words/connect';
import { sameHeadings } from '../../../workbook/connect/headingRow';
import type { Unread } from '../../../workbook/connect/unread';
import { useLong } from '../../state/useLong';
import type { PaneNow } from '../../state/usePane';
import { Choice, FieldLine } from '../fields';
import { Fold } from '../Fold';
import { connectDeed } from './listsDeeds';
import {
  asked,
  bodyOf,
  headingFault,
  headingRowOptions,
  headingsNow,
  missed,
  offered,
  picked,
  pickRows,
  stillNeeded,
  unreadIn,
  unused,
  type HeadingOption,
  type Match,
  type PickRow,
} from './listsModel';
import {
  foundLine,
  headingRowText,
  listName,
  LISTS_WORDS,
  rowsNamed,
  sayHeadingFault,
  sayUnread,
  UNIT_WORDS,
} from './listsWords';
import { Buttons, Part, Says, Sentences } from './parts';

const useStyles = makeStyles({
  list: { margin: 0, padding: 0, listStyleType: 'none' },
  row: { borderTop: `1px solid ${tokens.colorNeutralStroke2}`, padding: '6px 0' },
  label: { margin: '0 0 2px', display: 'flex', justifyContent: 'space-between', columnGap: '8px' },
  needed: { color: tokens.colorNeutralForeground2, fontSize: tokens.fontSizeBase200 },
  pair: { display: 'grid', gridTemplateColumns: 'minmax(0, 1fr) 96px', columnGap: '6px' },
  samples: {
    margin: '2px 0 0',
    color: tokens.colorNeutralForeground2,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    overflowWrap: 'anywhere',
  },
  unread: { borderLeft: `3px solid ${tokens.colorPaletteMarigoldBorder2}`, paddingLeft: '8px' },
});

interface MatchProps {
  readonly pane: PaneNow;
  readonly match: Match;
  readonly tables: readonly TableSchema[];
  /** That the list stands for a table already; null where it does not. */
  readonly already: string | null;
  readonly onMatch: (match: Match) => void;
  readonly onTable: (table: string) => void;
  readonly onHeadings: (taken: HeadingRow) => void;
  readonly onDone: () => void;
}

type HeadingKey = 'none' | `c${number}`;

/** Headings of the list by a key that keeps their order: an object puts plain numbers first. */
function headingOptions(match: Match): Readonly<Record<HeadingKey, string>> {
  const named = offered(match).map(([at, heading]) => [`c${at}`, heading] as const);
  return { none: LISTS_WORDS.noColumn, ...Object.fromEntries(named) };
}

type UnitKey = NonNullable<ShopUnit> | 'none';

function unitOptions(units: readonly ShopUnit[], own: string): Readonly<Record<UnitKey, string>> {
  const options = units.map((unit) => [unit ?? 'none', unit ? UNIT_WORDS[unit] : own] as const);
  return Object.fromEntries(options) as Record<UnitKey, string>;
}

/** What a sample shows: as it stands, and after an arrow as it is read where that differs. */
function sampleText({ samples }: PickRow, unit: string): string {
  const own = unit === '' ? '' : ` ${unit}`;
  return samples.map(({ theirs, ours }) => (ours === null ? theirs : `${theirs} → ${ours}${own}`)).join(' · ');
}

interface RowProps {
  readonly row: PickRow;
  /** Counted over all rows; not there while that is being done. */
  readonly unread: Unread | undefined;
  readonly options: Readonly<Record<HeadingKey, string>>;
  readonly onPick: (pick: PickRow['pick']) => void;
}

function MatchRow({ row, unread, options, onPick }: RowProps) {
  const styles = useStyles();
  const { column, pick, units } = row;
  const samples = sampleText(row, column.unit ?? '');
  return (
    <li className={styles.row}>
      <p className={styles.label}>
        <span>{column.header}</span>
        {column.needed && <span className={styles.needed}>{LISTS_WORDS.needed}</span>}
      </p>
      <div className={units.length > 1 ? styles.pair : undefined}>
        <Choice
          label={LISTS_WORDS.columnLabel(column.header)}
          value={pick.position === null ? 'none' : `c${pick.position}`}
          options={options}
          onChoose={(key) => onPick({ ...pick, position: key === 'none' ? null : Number(key.slice(1)) })}
        />
        {units.length > 1 && (
          <Choice
            label={LISTS_WORDS.unitLabel(column.header)}
            value={pick.unit ?? units[0] ?? ('none' as UnitKey)}
            options={unitOptions(units, column.unit ?? '')}
            onChoose={(unit) => onPick({ ...pick, unit: unit === 'none' ? null : unit })}
          />
        )}
      </div>
      {samples !== '' && <p className={styles.samples}>{samples}</p>}
      {unread !== undefined && unread.count > 0 && (
        <p className={`${styles.samples} ${styles.unread}`} role="status">
          {sayUnread(column, pick.unit, unread)}
        </p>
      )}
    </li>
  );
}

interface RowsProps extends Pick<MatchProps, 'match' | 'onMatch'> {
  readonly rows: readonly PickRow[];
  readonly unread: ReadonlyMap<string, Unread> | undefined;
}

function Rows({ rows, unread, match, onMatch }: RowsProps) {
  const styles = useStyles();
  const options = useMemo(() => headingOptions(match), [match]);
  return (
    <ul className={styles.list}>
      {rows.map((row) => (
        <MatchRow
          key={row.column.key}
          row={row}
          unread={unread?.get(row.column.key)}
          options={options}
          onPick={(pick) => onMatch(picked(match, row.column.key, pick))}
        />
      ))}
    </ul>
  );
}

/** What is needed and not there yet is said at the end, and changes as one chooses. */
function warningsOf(match: Match): string[] {
  const { schema, likeness, read, picks } = match;
  const used = new Set([...picks.values()].map(({ position }) => position));
  // Two columns of notes that nothing of ours is to be read from may be headed alike.
  const concerns = (each: ConnectWarning): boolean =>
    each.warning !== 'headingsAlike' || each.positions.some((position) => used.has(position));
  const found = likeness.warnings
    .filter((each) => each.warning !== 'neededMissing' && concerns(each))
    .map((warning) => sayConnectWarning(schema, likeness, warning, read.list.at));
  return [...missed(match).map((key) => LISTS_WORDS.missed[key]), ...found];
}

const headingsKey = ({ row, lines }: HeadingRow): string => `r${row}-${lines}`;

/** What stands in the row that is taken is told below the field, and need not stand in it as well. */
function rowText(each: HeadingOption, now: HeadingOption, untold: boolean): string {
  return sameHeadings(each.taken, now.taken) && !untold ? rowsNamed(each.rows) : headingRowText(each);
}

/** Which row was taken for the headings, and another to be taken; a table has but one. */
function HeadingsLine({ match, onHeadings }: Pick<MatchProps, 'match' | 'onHeadings'>) {
  const id = useId();
  const choices = useMemo(() => headingRowOptions(match), [match]);
  const now = headingsNow(match);
  const fault = headingFault(match);
  if (choices.length === 0) {
    return (
      <Says quiet small>
        {`${LISTS_WORDS.headings}: ${now.texts.join(' · ')}`}
      </Says>
    );
  }
  const options = Object.fromEntries(
    choices.map((each) => [headingsKey(each.taken), rowText(each, now, fault !== null)]),
  );
  const onChoose = (key: string) => {
    const choice = choices.find(({ taken }) => headingsKey(taken) === key);
    if (choice) onHeadings(choice.taken);
  };
  return (
    <FieldLine
      label={LISTS_WORDS.headings}
      id={id}
      says={fault ? sayHeadingFault(fault, now.rows) : now.texts.join(' · ')}
    >
      <Choice id={id} value={headingsKey(now.taken)} options={options} onChoose={onChoose} />
    </FieldLine>
  );
}

/** What was found below the headings, column by column, to be looked over and corrected. */
function Matched({ match, onMatch }: Pick<MatchProps, 'match' | 'onMatch'>) {
  const rows = useMemo(() => pickRows(match), [match]);
  const { answer: unread } = useLong(useCallback(() => unreadIn(match), [match]));
  const { likeness, schema } = match;
  // What was found stands first; a row keeps its place while a person changes it.
  const first = useMemo(() => {
    const found = likeness.proposals.filter(({ position }) => position !== null).map(({ key }) => key);
    return new Set([...found, ...schema.columns.filter(({ needed }) => needed).map(({ key }) => key)]);
  }, [likeness, schema]);
  const shown = rows.filter(({ column }) => first.has(column.key));
  const others = rows.filter(({ column }) => !first.has(column.key));
  const found = rows.filter(({ pick }) => pick.position !== null).length;
  const needed = stillNeeded(match);
  const rest = unused(match);
  return (
    <>
      <Says live>{foundLine(found, rows.length, bodyOf(match).length)}</Says>
      <Sentences texts={warningsOf(match)} flagged />
      <Rows rows={shown} unread={unread} match={match} onMatch={onMatch} />
      {others.length > 0 && (
        <Fold title={LISTS_WORDS.more(others.length)}>
          <Rows rows={others} unread={unread} match={match} onMatch={onMatch} />
        </Fold>
      )}
      {rest.length > 0 && (
        <Says quiet small>
          {LISTS_WORDS.notUsed(rest)}
        </Says>
      )}
      {needed.length > 0 && <Says flagged>{LISTS_WORDS.say(needed)}</Says>}
    </>
  );
}

export function MatchPart({ pane, match, already, onMatch, onTable, onHeadings, onDone }: MatchProps) {
  const { state, does } = pane;
  const tableId = useId();
  const { schema, read } = match;
  const fault = headingFault(match);
  const wanting = fault !== null || stillNeeded(match).length > 0;
  const tables = Object.fromEntries(CONNECTABLE.map((name) => [name, name]));
  return (
    <Part title={listName(read.list)} arriving>
      {already !== null && <Says flagged>{already}</Says>}
      <FieldLine label={LISTS_WORDS.standsFor} id={tableId}>
        <Choice id={tableId} value={schema.name} options={tables} onChoose={onTable} />
      </FieldLine>
      <HeadingsLine match={match} onHeadings={onHeadings} />
      {(fault === null || fault === 'lower') && <Matched match={match} onMatch={onMatch} />}
      <Buttons>
        <Button
          appearance="primary"
          disabledFocusable={state.task !== null || wanting}
          onClick={() => does.deed(connectDeed(asked(match), onDone))}
        >
          {LISTS_WORDS.connect}
        </Button>
        <Button appearance="subtle" onClick={onDone}>
          {LISTS_WORDS.back}
        </Button>
      </Buttons>
    </Part>
  );
}
