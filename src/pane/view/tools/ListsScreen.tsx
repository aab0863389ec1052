/** Lists that the shop keeps anyway, made to stand for tables of ours: found, matched heading by heading, connected. */
import { Button, makeStyles } from '@fluentui/react-components';
import { useCallback, useEffect, useRef, useState } from 'react';
import { readConnections, type Connection } from '../../../workbook/connect/connections';
import { findLists, listAtSelection, readConnected, readList, type List } from '../../../workbook/connect/lists';
import { plansBehind, type PlanBehind } from '../../../workbook/connect/plansBehind';
import { connectedAlready, connectedNow, type Connected } from '../../../workbook/connect/connectedNow';
import { calledOf } from '../../../workbook/connect/listPlace';
import { bareOf } from '../../../workbook/connecting';
import type { GoOn } from '../../../workbook/pace';
import type { PlanPlace } from '../../../workbook/planPlaces';
import { columnsAt } from '../../../workbook/headings';
import { CLUBS, QUOTES, TABLES } from '../../../workbook/schema';
import { jobName } from '../../../workbook/shop';
import { HEADINGS } from '../../../workbook/tables/headings';
import { sayIssue } from '../../../words/issues';
import { sayPortError } from '../../../words/portErrors';
import { PortError } from '../../../workbook/port';
import { overlap, sameName } from '../../../workbook/shared/address';
import { shopOf } from '../../state/seen';
import { nextTurn } from '../../../workbook/pace';
import type { PaneNow } from '../../state/usePane';
import { besideDeed, disconnectDeed, followDeed, takeRowsInDeed } from './listsDeeds';
import { asConnected, beginMatch, type Match } from './listsModel';
import { connectedLine, connectedText, listName, LISTS_WORDS, looksLike, sayBehind } from './listsWords';
import { ListRows, type ListRow } from './ListRows';
import { MatchPart } from './MatchPart';
import { Buttons, Part, Says, Sentences } from './parts';

interface Looked {
  readonly lists: readonly List[];
  readonly connections: readonly Connected[];
  readonly behind: readonly PlanBehind[];
  readonly problem: string | null;
}

/** What a look through the workbook gave, and how to look again. */
function useLists({ inspect, state }: PaneNow) {
  const [looked, setLooked] = useState<Looked | null>(null);
  const turn = useRef(0);
  const lookFailed = state.outcome?.kind === 'failed' && state.outcome.look ? state.outcome : null;
  const look = useCallback(async () => {
    const mine = (turn.current += 1);
    const plans = state.shop ? shopOf(state.shop).plans : [];
    const found = await inspect((port) => lookThrough(bareOf(port), plans)).catch(failed);
    if (mine === turn.current) setLooked(found);
    // Where a list is gone there is no new shop: that is to be seen here all the same.
  }, [inspect, state.shop, lookFailed]);
  // The pane looks again after every run of edits and after whatever it did itself.
  useEffect(() => void look(), [look]);
  return { looked, look };
}

function failed(error: unknown): Looked {
  const problem = error instanceof PortError ? sayPortError(error) : LISTS_WORDS.unreadable;
  return { lists: [], connections: [], behind: [], problem };
}

/** Lets the page draw and take input between two tables that a list is held against. */
const resting: GoOn = () => nextTurn().then(() => true);

async function lookThrough(port: Parameters<typeof findLists>[0], plans: readonly PlanPlace[]): Promise<Looked> {
  const [headings] = await port.read([{ read: 'table', table: HEADINGS.name }]);
  const read = headings ? readConnections([headings.headers, ...headings.rows], headings.at.row + 1) : null;
  const connections = read?.ok ? read.value : [];
  const lists = await findLists(port, resting);
  return {
    lists,
    connections: await connectedNow(port, connections, lists),
    behind: await plansBehind(port, connections, plans),
    problem: read && !read.ok ? sayIssue(read.issue) : null,
  };
}

const useStyles = makeStyles({ screen: { display: 'flex', flexDirection: 'column', rowGap: '12px' } });

interface FoundProps {
  readonly pane: PaneNow;
  readonly looked: Looked;
  readonly onMatch: (list: Pick<List, 'table' | 'at'>, table: string | null, before?: Connection) => void;
}

function ConnectedPart({ pane, looked, onMatch }: FoundProps) {
  const { connections } = looked;
  if (connections.length === 0) return null;
  const rows = connections.map(({ connection, at, broken, goesOn }): ListRow => {
    const { schema, columns } = connection;
    const end = { says: LISTS_WORDS.end, label: LISTS_WORDS.endOf(schema.name) };
    return {
      key: schema.name,
      title: connectedLine(schema.name, at ? listName(at) : calledOf(connection)),
      text: at ? connectedText(schema, columns.length, broken, goesOn) : LISTS_WORDS.gone,
      flagged: !at || broken.length + goesOn > 0,
      buttons: [
        ...(at && goesOn > 0 && broken.length === 0
          ? [
              {
                says: LISTS_WORDS.takeIn,
                label: LISTS_WORDS.takeInOf(schema.name),
                onPress: () => pane.does.deed(takeRowsInDeed(at, connection)),
              },
            ]
          : []),
        ...(at
          ? [
              {
                says: LISTS_WORDS.change,
                label: LISTS_WORDS.changeOf(schema.name),
                onPress: () => onMatch(at, schema.name, connection),
              },
            ]
          : []),
        { ...end, onPress: () => pane.does.deed(disconnectDeed(schema.name, () => undefined)) },
      ],
    };
  });
  return (
    <Part title={LISTS_WORDS.connected}>
      <ListRows rows={rows} busy={pane.state.task !== null} />
    </Part>
  );
}

/** Numbers of the quotes that were issued: their sheets are no places of ours that we keep. */
function quoteNumbers({ state }: PaneNow): ReadonlySet<string> {
  const matrix = state.shop && shopOf(state.shop).matrices.Quotes;
  const at = matrix ? columnsAt(QUOTES, matrix[0] ?? [])('number') : -1;
  return new Set(
    (matrix ?? [])
      .slice(1)
      .map((row) => jobName(row[at]))
      .filter(Boolean),
  );
}

function FoundPart({ pane, looked, onMatch }: FoundProps) {
  const { shop } = pane.state;
  // Plans, quotes and the like are ours: no list of the shop's.
  const pages = shop ? shopOf(shop).plans.map(({ block }) => block.sheet) : [];
  const quotes = quoteNumbers(pane);
  const isFree = (list: List): boolean =>
    !pages.some((sheet) => sameName(sheet, list.at.sheet)) &&
    !quotes.has(/^Quote (\d+)\b/.exec(list.at.sheet)?.[1] ?? '') &&
    looked.connections.every(({ at }) => !at || overlap(at.at, list.at) === null);
  const free = looked.lists.filter(isFree);
  const rows = free.map((list): ListRow => {
    const name = listName(list);
    return {
      key: name,
      title: name,
      text: looksLike(list),
      buttons: [{ says: LISTS_WORDS.match, label: LISTS_WORDS.matchOf(name), onPress: () => onMatch(list, list.like) }],
    };
  });
  return (
    <Part title={LISTS_WORDS.found} ruled={looked.connections.length > 0}>
      {rows.length === 0 ? (
        <Says quiet>{looked.connections.length > 0 ? LISTS_WORDS.noOther : LISTS_WORDS.none}</Says>
      ) : (
        <ListRows rows={rows} busy={pane.state.task !== null} />
      )}
    </Part>
  );
}

/** A live plan reads what it read when it was filled, whatever was connected since. */
function BehindPart({ pane, looked }: Pick<FoundProps, 'pane' | 'looked'>) {
  const { behind } = looked;
  if (behind.length === 0) return null;
  return (
    <Part title={LISTS_WORDS.behindTitle} ruled>
      <Sentences texts={behind.map(sayBehind)} flagged />
      <Buttons>
        <Button
          appearance="primary"
          disabledFocusable={pane.state.task !== null}
          onClick={() => pane.does.deed(followDeed(behind))}
        >
          {LISTS_WORDS.follow}
        </Button>
      </Buttons>
    </Part>
  );
}

/** Results go where the clubs stand, in a list of the shop's own or in ours. */
function ResultsPart({ pane }: Pick<FoundProps, 'pane'>) {
  const { shop, who, task } = pane.state;
  if (!shop || shop.missing.includes('Clubs') || who.by !== 'job' || who.job === '') return null;
  return (
    <Part title={LISTS_WORDS.results} ruled>
      <Says quiet small>
        {LISTS_WORDS.resultsHow}
      </Says>
      <Buttons>
        <Button disabledFocusable={task !== null} onClick={() => pane.does.deed(besideDeed(who.job))}>
          {LISTS_WORDS.writeResults(who.job)}
        </Button>
      </Buttons>
    </Part>
  );
}

/** Tables that lists do not stand for and that are not there yet. */
function RestPart({ pane, looked }: Pick<FoundProps, 'pane' | 'looked'>) {
  const { shop, task } = pane.state;
  // A workbook of which nothing is ours is set up by its first screen.
  const begun = looked.connections.length > 0 || !shop?.missing.includes(CLUBS.name);
  if (!shop || !begun || shop.missing.length === 0) return null;
  return (
    <Part ruled>
      <Says>{LISTS_WORDS.restMissing(shop.missing)}</Says>
      <Buttons>
        <Button appearance="primary" disabledFocusable={task !== null} onClick={pane.does.setUp}>
          {LISTS_WORDS.setUpRest}
        </Button>
      </Buttons>
    </Part>
  );
}

export function ListsScreen({ pane }: { readonly pane: PaneNow }) {
  const styles = useStyles();
  const { state, send, inspect } = pane;
  const { looked, look } = useLists(pane);
  const [match, setMatch] = useState<Match | null>(null);
  const [says, setSays] = useState<string | null>(null);
  const [already, setAlready] = useState<string | null>(null);
  const onMatch: FoundProps['onMatch'] = (list, table, before) => {
    setSays(null);
    setAlready(null);
    const begin = async () => {
      if (before) {
        const again = await inspect((port) => readConnected(bareOf(port), list, before, resting));
        const begun = again && beginMatch(again.read, before.schema.name, again.taken);
        setMatch(begun && asConnected(begun, before));
        return;
      }
      const read = await inspect((port) => readList(bareOf(port), list, resting));
      setMatch(read && beginMatch(read, table ?? read.list.like ?? 'Stock'));
    };
    begin().catch((error: unknown) => setSays(failed(error).problem));
  };
  const onSelected = () => {
    const begin = async () => {
      const list = await inspect((port) => listAtSelection(bareOf(port)));
      const again = list && looked && connectedAlready(looked.connections, list.at);
      if (again) {
        onMatch(again.list, again.connection.schema.name, again.connection);
        setAlready(LISTS_WORDS.already(again.connection.schema.name));
      } else if (list) onMatch(list, null);
      else setSays(LISTS_WORDS.nothingSelected);
    };
    begin().catch((error: unknown) => setSays(failed(error).problem));
  };
  if (match) {
    const done = () => setMatch(null);
    return (
      <div className={styles.screen}>
        <MatchPart
          pane={pane}
          match={match}
          tables={TABLES}
          already={already}
          onMatch={setMatch}
          onTable={(table) => setMatch(beginMatch(match.read, table, match.chosen))}
          onHeadings={(taken) => setMatch(beginMatch(match.read, match.schema.name, taken))}
          onDone={done}
        />
      </div>
    );
  }
  return (
    <div className={styles.screen}>
      <Part title={LISTS_WORDS.title}>
        <Says quiet small>
          {LISTS_WORDS.how}
        </Says>
        {looked === null && <Says live>{LISTS_WORDS.looking}</Says>}
        {looked?.problem && <Sentences texts={[looked.problem]} flagged />}
      </Part>
      {looked && (
        <>
          <ConnectedPart pane={pane} looked={looked} onMatch={onMatch} />
          <BehindPart pane={pane} looked={looked} />
          <FoundPart pane={pane} looked={looked} onMatch={onMatch} />
        </>
      )}
      <Says live flagged={says !== null}>
        {says}
      </Says>
      <Buttons>
        <Button disabledFocusable={state.task !== null} onClick={onSelected}>
          {LISTS_WORDS.selected}
        </Button>
        <Button appearance="subtle" onClick={() => void look()}>
          {LISTS_WORDS.again}
        </Button>
        {state.stage !== 'plan' && (
          <Button appearance="subtle" onClick={() => send({ on: 'screen', screen: 'plan' })}>
            {LISTS_WORDS.back}
          </Button>
        )}
      </Buttons>
      {looked && <RestPart pane={pane} looked={looked} />}
      <ResultsPart pane={pane} />
    </div>
  );
}
