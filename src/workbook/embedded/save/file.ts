/** A described workbook as the bytes of a file. The library that knows the format comes in with this file: import it lazily. */
import { writeXlsx } from 'hucre/xlsx';
import type { WriteOptions } from 'hucre/xlsx';
import { withFittedRows } from './fitted';
import { withQuotes } from './quoted';

/** The bytes of the .xlsx file. Throws what the library says against the workbook. */
export async function bytesOf(workbook: WriteOptions): Promise<Uint8Array> {
  return withQuotes(await withFittedRows(await writeXlsx(workbook), workbook));
}
