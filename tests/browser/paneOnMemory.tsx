/**
 * The pane in a page of its own, on a workbook in memory: every screen can be reached, and a test plays the person in the
 * sheet through `window.sheet`. Bundled and served by `memoryPane.ts`.
 */
import { useState } from 'react';
import { createRoot } from 'react-dom/client';
import type { ThemeName } from '../../src/pane/state/hostTheme';
import { wearPage } from '../../src/pane/theme';
import { Pane } from '../../src/pane/view/Pane';
import { demoTables } from '../../src/tryout/demo/demoTables';
import { PortError, type Seen } from '../../src/workbook/port';
import { setUp } from '../../src/workbook/setUp';
import { MemoryPort } from '../workbook/memoryPort';
import { typeForeign } from '../workbook/connect/foreign';
import { olderWorkshop } from '../workbook/olderWorkshop';
import { spillPlan } from '../workbook/workshop';

/** What a test can do in the sheet. */
export interface Sheet {
  /** Types into a table's column, by header, and tells the pane as a host does. */
  type(table: string, row: number, header: string, value: Seen): void;
  read(table: string, row: number, header: string): Seen;
  /** What a cell shows; null too where there is no such sheet. */
  shows(sheet: string, row: number, column: number): Seen;
  fill(table: string, rows: readonly Readonly<Record<string, Seen>>[]): void;
  put(sheet: string, row: number, column: number, value: Seen): void;
  select(sheet: string, row: number, column: number, rows: number): void;
  rename(table: string, name: string): void;
  /** The next writes fail as they would while a person edits a cell. */
  refuse(refusing: boolean): void;
  /** How long each write takes from now on. */
  slow(milliseconds: number): void;
  /** Another theme, as a host's own is changed while the pane is open. */
  wear(theme: ThemeName): void;
}

declare global {
  interface Window {
    sheet: Sheet;
  }
}

type Content = 'empty' | 'setUp' | 'demo' | 'foreign' | 'older';

async function openWorkbook(content: Content): Promise<MemoryPort> {
  if (content === 'older') return olderWorkshop();
  const port = new MemoryPort();
  port.calculate = spillPlan;
  if (content === 'setUp') await setUp(port);
  if (content === 'foreign') typeForeign(port);
  if (content === 'demo') {
    for (const [name, rows] of Object.entries(demoTables)) {
      port.typeTable(
        name,
        name,
        rows.map((row) => row.map((cell) => (cell === '' ? null : cell))),
      );
    }
  }
  return port;
}

/** How the first look at the workbook goes: as it should, not until it is let, or not at all. */
type Look = 'well' | 'never' | 'fails';

function lookBadly(port: MemoryPort, look: Look): void {
  if (look === 'never') port.read = () => new Promise(() => undefined);
  if (look === 'fails') port.read = () => Promise.reject(new PortError('editing'));
}

function playSheet(port: MemoryPort): Omit<Sheet, 'wear'> {
  let changed: (sheet: string) => void = () => undefined;
  let refusing = false;
  let milliseconds = 0;
  const write = port.apply.bind(port);
  const hidden = new Set<string>();
  const read = port.read.bind(port);
  port.read = (queries) =>
    read(
      queries.map((query) =>
        query.read === 'table' && hidden.has(query.table) ? { ...query, table: ` ${query.table}` } : query,
      ) as typeof queries & never,
    );
  port.watch = (told) => {
    changed = told;
    return () => undefined;
  };
  port.apply = async (...given) => {
    await new Promise((done) => setTimeout(done, milliseconds));
    if (refusing) throw new PortError('editing');
    return write(...given);
  };
  const cellOf = (table: string, row: number, header: string) => {
    const seen = port.tableSeen(table);
    const column = seen?.headers.indexOf(header) ?? -1;
    if (!seen || column < 0) throw new Error(`no ${table}, ${header}`);
    return { sheet: seen.at.sheet, row: seen.at.row + row, column: seen.at.column + column };
  };
  return {
    type(table, row, header, value) {
      const cell = cellOf(table, row, header);
      port.type(cell.sheet, cell.row, cell.column, value);
      changed(cell.sheet);
    },
    read(table, row, header) {
      const cell = cellOf(table, row, header);
      return port.shows(cell.sheet, cell.row, cell.column);
    },
    shows: (sheet, row, column) => port.shows(sheet, row, column),
    fill(table, rows) {
      port.fillTable(table, rows);
      changed(table);
    },
    put(sheet, row, column, value) {
      port.type(sheet, row, column, value);
      changed(sheet);
    },
    select(sheet, row, column, rows) {
      port.selected = { sheet, row, column, rows, columns: 1 };
    },
    rename(table, name) {
      if (name === table) hidden.delete(table);
      else hidden.add(table);
      changed(table);
    },
    refuse(now) {
      refusing = now;
    },
    slow(now) {
      milliseconds = now;
    },
  };
}

const asked = new URLSearchParams(location.search);
const port = await openWorkbook((asked.get('content') ?? 'demo') as Content);
const sheet = playSheet(port);
lookBadly(port, (asked.get('look') ?? 'well') as Look);
wearPage();

function ThemedPane({ first }: { readonly first: ThemeName }) {
  const [theme, wear] = useState(first);
  window.sheet = { ...sheet, wear };
  return <Pane port={port} theme={theme} helpUrl="help.html" heading="Setwright" />;
}

const place = document.getElementById('root');
if (place) createRoot(place).render(<ThemedPane first={(asked.get('theme') ?? 'light') as ThemeName} />);
