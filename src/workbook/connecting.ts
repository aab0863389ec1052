/**
 * A port that follows connections to a shop's own lists. Most workbooks have none: what it takes to follow them is loaded when the
 * table Headings is first seen.
 */
import type { Answers, Query, WorkbookPort } from './port';

export interface ConnectingPort extends WorkbookPort {
  /** The workbook as it is, lists under their own headings. */
  readonly bare: WorkbookPort;
}

export function connecting(host: WorkbookPort): ConnectingPort {
  const bare = keeping(host);
  let port = bare;
  return {
    ...bare,
    bare,
    read: async <const Qs extends readonly Query[]>(queries: Qs): Promise<Answers<Qs>> => {
      if (port !== bare) return port.read(queries);
      const answers = await bare.read<readonly Query[]>([...queries, { read: 'table', table: 'Headings' }]);
      if (!answers.at(-1)) return answers.slice(0, -1) as unknown as Answers<Qs>;
      const { connectPort } = await import('./connect/connectedPort');
      // Two looks may come here at once: both go on by one port.
      if (port === bare) port = connectPort(bare);
      return port.read(queries);
    },
    apply: (changes, looked, options) => port.apply(changes, looked, options),
    selection: () => port.selection(),
  };
}

/** The workbook, whose tables are the same objects as long as they are the same. What that takes comes while they are first read. */
function keeping(host: WorkbookPort): WorkbookPort {
  const keeper = import('./keeping').then(({ tableKeeper }) => tableKeeper());
  // What fails to load is said when it is needed.
  keeper.catch(() => undefined);
  return {
    capabilities: host.capabilities,
    read: async <const Qs extends readonly Query[]>(queries: Qs): Promise<Answers<Qs>> => {
      const answers = await host.read<readonly Query[]>(queries);
      return (await (
        await keeper
      )(queries, answers)) as unknown as Answers<Qs>;
    },
    apply: (changes, looked, options) => host.apply(changes, looked, options),
    revert: (receipt) => host.revert(receipt),
    selection: () => host.selection(),
    recall: (key) => host.recall(key),
    remember: (key, value) => host.remember(key, value),
    watch: (changed) => host.watch(changed),
  };
}

/** The workbook as it is behind a port that may follow connections. */
export function bareOf(port: WorkbookPort): WorkbookPort {
  return 'bare' in port ? (port as ConnectingPort).bare : port;
}
