/** A workbook file opened as the try-out page does it, without a screen. */
import { FUNCTIONS } from '../../../src/functions/implementations';
import { functions as metadata } from '../../../src/functions/functions.json';
import type { OpenedBook } from '../../../src/workbook/embedded/open/book';
import { openedContent } from '../../../src/workbook/embedded/open/complete';
import { readBook } from '../../../src/workbook/embedded/open/read';
import { reviewFormulas } from '../../../src/workbook/embedded/open/review';
import { openedFile, type OpenedFile } from '../../../src/workbook/embedded/opened';
import { createEmbeddedPort } from '../../../src/workbook/embedded/port';
import { describeCopy, type Losses } from '../../../src/workbook/embedded/save/copy';
import { bytesOf } from '../../../src/workbook/embedded/save/file';
import { createHeadless, type Spreadsheet } from '../../../src/workbook/embedded/spreadsheet';
import type { WorkbookPort } from '../../../src/workbook/port';

export interface Opened {
  readonly book: OpenedBook;
  readonly file: OpenedFile;
  readonly spreadsheet: Spreadsheet;
  readonly port: WorkbookPort;
}

export async function openFile(bytes: Uint8Array): Promise<Opened> {
  const book = await readBook(bytes);
  const opened = await openedContent(book);
  const spreadsheet = await createHeadless({
    sheets: [],
    opened,
    functions: { metadata, implementations: FUNCTIONS },
  });
  await reviewFormulas(spreadsheet);
  const file = openedFile(spreadsheet);
  if (!file) throw new Error('not remembered as a file');
  return { book, file, spreadsheet, port: createEmbeddedPort(spreadsheet) };
}

export interface Copied {
  readonly bytes: Uint8Array;
  readonly losses: Losses;
}

export async function copyOf(spreadsheet: Spreadsheet): Promise<Copied> {
  const { workbook, losses } = await describeCopy(spreadsheet);
  return { bytes: await bytesOf(workbook), losses };
}
