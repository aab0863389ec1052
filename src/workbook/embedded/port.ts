/** The workbook port on the embedded spreadsheet. */
import type {
  Answer,
  Answers,
  ApplyOptions,
  Block,
  BlockSeen,
  Change,
  Query,
  Receipt,
  Reverted,
  Selection,
  TableSeen,
  WorkbookPort,
} from '../port';
import { atEase } from '../pace';
import { PortError } from '../port';
import { contains, named, sameName } from '../shared/address';
import { filledFromElsewhere, nothingThere } from '../shared/looked';
import { buildReceipt } from '../shared/receipt';
import type { Standing } from '../shared/receipt';
import { refuseUnsafe } from '../shared/refuse';
import { refuseChanged } from '../shared/unchanged';
import type { Now, RevertPlan } from '../shared/revert';
import { planRevert, refuseProtectedRevert, revertedBy } from '../shared/revert';
import { worksheetNamed } from './cells';
import type { Work } from './changes';
import { clearOldHighlights, narrow, perform, placeName, putBefore, refuseHere, removeName, undress } from './changes';
import { RowHeights } from './fitRows';
import { TableGrowth } from './grow';
import { Journal } from './journal';
import { EMBEDDED } from './capabilities';
import { followRows, keepPage } from './pages';
import { blockSteps, seeBlock, seeContents, seeName, seeSheets, seeUsed, tableSteps, withWidths } from './seeing';
import type { Spreadsheet } from './spreadsheet';
import { allTables, blockOfRange, liftTable, tableNamed } from './tables';
import { onPersonsChange } from './watching';

type Looked = readonly (BlockSeen | TableSeen)[];

/** How often it is read anew where a person changes cells meanwhile. */
const MOST_READS = 3;

export function createEmbeddedPort(spreadsheet: Spreadsheet): WorkbookPort {
  return new EmbeddedPort(spreadsheet);
}

/** Rows above and columns left of a cell that are seen with it. */
const SEEN_WITH_IT = 3;

class EmbeddedPort implements WorkbookPort {
  readonly capabilities = EMBEDDED;
  private readonly growth: TableGrowth;
  private readonly rowHeights: RowHeights;
  private readonly watchers = new Set<(sheet: string) => void>();
  private readonly changedSheets = new Set<string>();
  /** Which sheet was shown before each that was gone to, by their ids. */
  private readonly cameFrom = new Map<string, string>();
  private writing = false;
  /** How often a person has changed something so far. */
  private edits = 0;
  private turn: Promise<unknown> = Promise.resolve();

  constructor(private readonly spreadsheet: Spreadsheet) {
    this.growth = new TableGrowth(spreadsheet);
    this.rowHeights = new RowHeights(spreadsheet);
    followRows(spreadsheet);
    onPersonsChange(
      spreadsheet,
      () => this.writing,
      (sheetId) => this.heard(sheetId),
    );
  }

  read<const Qs extends readonly Query[]>(queries: Qs): Promise<Answers<Qs>> {
    return this.inTurn(async () => {
      for (let left = MOST_READS; ; left -= 1) {
        this.growth.fit();
        const { edits } = this;
        const read = await this.readOnce(queries);
        // What a person changed while it was read would be half seen: it is read again, unless they go on and on.
        if ('failed' in read && (edits === this.edits || left === 1)) throw read.failed;
        if ('answers' in read && (edits === this.edits || left === 1)) return read.answers as unknown as Answers<Qs>;
      }
    });
  }

  private async readOnce(
    queries: readonly Query[],
  ): Promise<{ readonly answers: unknown[] } | { readonly failed: unknown }> {
    try {
      return { answers: await atEase(this.answerSteps(queries)) };
    } catch (failed) {
      return { failed };
    }
  }

  private *answerSteps(queries: readonly Query[]): Generator<unknown, unknown[]> {
    const answers: unknown[] = [];
    for (const query of queries) {
      answers.push(yield* this.answer(query));
      yield;
    }
    return answers;
  }

  apply(changes: readonly Change[], looked: Looked, options: ApplyOptions): Promise<Receipt> {
    return this.inTurn(async () => {
      refuseUnsafe(changes, looked);
      refuseHere(this.spreadsheet, changes);
      refuseChanged(changes, looked, (at) => seeBlock(this.spreadsheet, at));
      const receipt = buildReceipt(changes, looked, options.label, this.standing());
      const { receiptKey } = options;
      const earlier = receiptKey === undefined ? null : this.kept(receiptKey);
      if (receiptKey !== undefined) this.keep(receiptKey, JSON.stringify(receipt));
      const putBack = (): void => {
        if (receiptKey !== undefined) this.keep(receiptKey, earlier);
      };
      await this.work(receipt.written, putBack, (work) => {
        clearOldHighlights(work, changes);
        for (const change of changes) perform(work, change);
      });
      for (const change of changes) if (change.do === 'remember') this.keep(change.key, change.value);
      // Once values are calculated: a heading may be what a formula fills in. Looks only, so no entry of the undo list.
      harmless(() => this.rowHeights.fit(changes));
      for (const change of changes) harmless(() => this.afterwards(change));
      return receipt;
    });
  }

  revert(receipt: Receipt): Promise<Reverted> {
    return this.inTurn(async () => {
      for (;;) {
        const { edits } = this;
        const plan = await this.revertOnce(receipt);
        // While that was calculated a person may have typed on a sheet that is to go: then it is planned anew, and stays.
        if (plan.deleteSheets.length > 0 && edits !== this.edits) continue;
        // Below the commands a sheet would leave the rules of other parts behind, so this goes by the spreadsheet's own way.
        this.ours(() => this.deleteSheets(plan.deleteSheets));
        return revertedBy(receipt, plan);
      }
    });
  }

  /** Takes back all but sheets. */
  private async revertOnce(receipt: Receipt): Promise<RevertPlan> {
    const now = this.now(receipt);
    const plan = planRevert(receipt, now);
    const sheets = seeSheets(this.spreadsheet).filter((sheet) => sheet.protected);
    refuseProtectedRevert(plan, now, (name) => sheets.some((sheet) => sameName(sheet.name, name)));
    await this.work(
      plan.puts,
      () => undefined,
      (work) => carryOut(work, plan),
    );
    for (const { at } of plan.undress) this.rowHeights.unfit(at);
    return plan;
  }

  selection(): Promise<Selection> {
    return this.inTurn(() => {
      const { workbook } = this.spreadsheet;
      const sheet = workbook.getActiveSheet();
      const range = workbook.getActiveRange()?.getRange() ?? { startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 };
      const at = blockOfRange(sheet.getSheetName(), range);
      const table = allTables(this.spreadsheet).find((other) => contains(other.at, at));
      return { at, table: table?.name ?? null };
    });
  }

  recall(key: string): Promise<string | null> {
    return this.inTurn(() => this.kept(key));
  }

  remember(key: string, value: string | null): Promise<void> {
    return this.inTurn(() => this.keep(key, value));
  }

  watch(changed: (sheet: string) => void): () => void {
    this.watchers.add(changed);
    return () => void this.watchers.delete(changed);
  }

  /** One after another, so that a read never sees half of a change. */
  private inTurn<T>(task: () => T | Promise<T>): Promise<T> {
    const next = this.turn.then(task, task);
    this.turn = next.catch(() => undefined);
    return next;
  }

  private *answer(query: Query): Generator<unknown, Answer<Query>> {
    switch (query.read) {
      case 'sheets':
        return seeSheets(this.spreadsheet);
      case 'contents':
        return seeContents(this.spreadsheet);
      case 'table':
        return yield* tableSteps(this.spreadsheet, query.table);
      case 'block':
        return withWidths(query, yield* blockSteps(this.spreadsheet, query.at), this.spreadsheet);
      case 'name':
        return seeName(this.spreadsheet, query.name);
    }
  }

  private standing(): Standing {
    return {
      placeOf: (name) => seeName(this.spreadsheet, name).at,
      sheets: this.spreadsheet.workbook.getSheets().map((sheet) => sheet.getSheetName()),
      tables: allTables(this.spreadsheet).map(({ name }) => name),
      names: this.spreadsheet.workbook.getDefinedNames().map((name) => name.getName()),
    };
  }

  /** Runs steps as one: all of them, or (PortError) none. */
  private async work(
    written: readonly { readonly at: Block }[],
    putBack: () => void,
    steps: (work: Work) => void,
  ): Promise<void> {
    const journal = new Journal(this.spreadsheet);
    const shown = this.spreadsheet.workbook.getActiveSheet();
    const before = written.map(({ at }) => seeBlock(this.spreadsheet, at));
    try {
      this.ours(() => {
        try {
          steps({ spreadsheet: this.spreadsheet, journal });
        } catch (error) {
          this.takeBack(journal, written, before, error);
          putBack();
          throw error instanceof PortError ? error : new PortError('putBack', [], hostWords(error));
        }
        journal.close();
        // Making a sheet shows it; only a change that says so should.
        this.spreadsheet.workbook.setActiveSheet(shown);
      });
    } catch (error) {
      // What was put back is to be there again, calculated, when a person tries once more.
      await this.spreadsheet.settled();
      throw error;
    }
    if (journal.calculates) await this.spreadsheet.settled();
  }

  private takeBack(
    journal: Journal,
    written: readonly { readonly at: Block }[],
    before: readonly BlockSeen[],
    error: unknown,
  ): void {
    let words = hostWords(error);
    let failed = false;
    try {
      journal.takeBack();
    } catch (second) {
      failed = true;
      words = `${words}; then ${hostWords(second)}`;
    }
    const changed = written.filter(({ at }, i) => !sameEntries(seeBlock(this.spreadsheet, at), before[i]));
    if (changed.length > 0 || failed) {
      throw new PortError(
        'halfWritten',
        (changed.length > 0 ? changed : written).map(({ at }) => named(at)),
        words,
      );
    }
  }

  private ours(task: () => void): void {
    this.writing = true;
    try {
      task();
    } finally {
      this.writing = false;
    }
  }

  private afterwards(change: Change): void {
    if (change.do === 'show') this.show(change.at);
    if (change.do === 'page') keepPage(this.spreadsheet, change.sheet, change.setup);
  }

  private show(at: Block): void {
    const sheet = this.spreadsheet.workbook.getSheetByName(at.sheet);
    if (!sheet) return;
    const from = this.spreadsheet.workbook.getActiveSheet().getSheetId();
    if (from !== sheet.getSheetId()) this.cameFrom.set(sheet.getSheetId(), from);
    this.spreadsheet.workbook.setActiveSheet(sheet);
    sheet.setActiveRange(sheet.getRange(at.row, at.column, at.rows, at.columns));
    // Only on a page is there anything to scroll.
    const onPage: { readonly scrollToCell?: (row: number, column: number) => unknown } = sheet;
    onPage.scrollToCell?.call(sheet, Math.max(0, at.row - SEEN_WITH_IT), Math.max(0, at.column - SEEN_WITH_IT));
  }

  /** Cells and names are back by now: where a sheet will not go, taking back once more is all it needs. */
  private deleteSheets(names: readonly string[]): void {
    const shown = this.spreadsheet.workbook.getActiveSheet().getSheetId();
    for (const name of names) {
      const sheet = worksheetNamed(this.spreadsheet, name);
      if (!sheet) continue;
      try {
        this.spreadsheet.workbook.deleteSheet(sheet.getSheetId());
      } catch (error) {
        throw new PortError('halfWritten', [name], hostWords(error));
      }
      this.rowHeights.forget(sheet.getSheetId());
    }
    this.backFrom(shown);
  }

  /** Where the shown sheet is gone the spreadsheet shows its neighbour; a person wants the one from which it was gone to. */
  private backFrom(shown: string): void {
    const sheets = this.spreadsheet.workbook.getSheets();
    if (sheets.some((sheet) => sheet.getSheetId() === shown)) return;
    const back = sheets.find((sheet) => sheet.getSheetId() === this.cameFrom.get(shown));
    if (back && !back.isSheetHidden()) this.spreadsheet.workbook.setActiveSheet(back);
  }

  private now(receipt: Receipt): Now {
    const { spreadsheet } = this;
    const allSheets = this.standing().sheets;
    return {
      blocks: receipt.written.map(({ at, rows }) => {
        if (!rows) return seeBlock(spreadsheet, at);
        const list =
          rows.headingRows === undefined ? tableNamed(spreadsheet, rows.table) : seeName(spreadsheet, rows.table);
        return list?.at ? seeBlock(spreadsheet, list.at) : nothingThere(at);
      }),
      widened: (receipt.widened ?? []).map(({ table: name, headers }) => {
        const at = tableNamed(spreadsheet, name)?.at;
        return at ? { at, seen: seeBlock(spreadsheet, { ...at, columns: at.columns + headers.length }) } : null;
      }),
      allSheets,
      tables: receipt.madeTables.flatMap((name) => {
        const table = tableNamed(spreadsheet, name);
        return table ? [{ name: table.name, seen: seeBlock(spreadsheet, table.at) }] : [];
      }),
      sheets: receipt.madeSheets.flatMap((name) => {
        const sheet = worksheetNamed(spreadsheet, name);
        if (!sheet) return [];
        const tables = allTables(spreadsheet).filter(({ at }) => sameName(at.sheet, name));
        const keep = allSheets.length <= receipt.madeSheets.length;
        return [{ name, used: seeUsed(spreadsheet, sheet), tables: tables.map((table) => table.name), keep }];
      }),
      names: receipt.madeNames.filter((name) => seeName(spreadsheet, name).at !== null),
      placeOf: (name) => seeName(spreadsheet, name).at,
    };
  }

  private kept(key: string): string | null {
    const value: unknown = this.spreadsheet.workbook.getCustomMetadata()?.[key];
    return typeof value === 'string' ? value : null;
  }

  private keep(key: string, value: string | null): void {
    const { [key]: _old, ...others } = this.spreadsheet.workbook.getCustomMetadata() ?? {};
    this.spreadsheet.workbook.setCustomMetadata(value === null ? others : { ...others, [key]: value });
  }

  /** Grows tables at once, and tells the watchers once the calculation that the change set off is done. */
  private heard(sheetId: string): void {
    this.edits += 1;
    const first = this.changedSheets.size === 0;
    this.changedSheets.add(sheetId);
    if (!first) return;
    void Promise.resolve()
      .then(() => {
        for (const id of this.changedSheets) this.growth.fit(id);
        return this.spreadsheet.settled();
      })
      .then(() => this.tell());
  }

  private tell(): void {
    const sheetIds = [...this.changedSheets];
    this.changedSheets.clear();
    for (const id of sheetIds) {
      const name = this.spreadsheet.workbook.getSheetBySheetId(id)?.getSheetName();
      // A sheet that was deleted has no name any more, but whoever read it must look again.
      for (const changed of [...this.watchers]) changed(name ?? '');
    }
  }
}

/** Does something for the looks alone: what is written stays written, whatever becomes of it. */
function harmless(act: () => void): void {
  try {
    act();
  } catch {
    // A row that is too low, a sheet that is not shown: seen at once, and no reason to call the writing failed.
  }
}

/** Whether the same is entered in a block: what a formula shows and fills may have changed, or not be back yet, while the formula is the same. */
function sameEntries(now: BlockSeen, before: BlockSeen | undefined): boolean {
  const entered = (seen: BlockSeen | undefined): string =>
    JSON.stringify(
      seen?.values.map((line, down) =>
        line.map((value, across) => {
          const formula = seen.formulas[down]?.[across];
          if (formula) return formula;
          return filledFromElsewhere(seen, seen.at.row + down, seen.at.column + across) ? null : value;
        }),
      ),
    );
  return entered(now) === entered(before);
}

function carryOut(work: Work, plan: RevertPlan): void {
  for (const name of plan.removeTables) {
    const table = tableNamed(work.spreadsheet, name);
    if (table) work.journal.run(liftTable(table));
  }
  for (const name of plan.removeNames) removeName(work, name);
  for (const { name, at } of plan.moveNames) placeName(work, name, at);
  for (const { name, at, blank } of plan.narrow) narrow(work, name, at, blank);
  for (const { at, cells } of plan.puts) putBefore(work, at, cells);
  for (const dressed of plan.undress) undress(work, dressed);
}

function hostWords(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
