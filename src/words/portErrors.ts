/** Sentences for what a workbook refused; apart from all others, since they may be needed before anything else is loaded. */
import type { PortError, PortErrorCode } from '../workbook/port';
import { listed } from './listed';

const PORT_SENTENCES: Readonly<Record<PortErrorCode, (cells: string, hostSaid: string) => string>> = {
  notLookedAt: (cells) =>
    `${cells || 'Some cells'} changed while this was being prepared. Nothing was written; try again.`,
  protected: (cells) =>
    `${cells ? `The sheet ${cells}` : 'The workbook or one of its sheets'} is protected. ` +
    'Nothing was written; take the protection off and try again.',
  merged: (cells) => `${cells} are merged cells. Nothing was written; unmerge them or choose another place.`,
  filtered: (cells) => `A filter hides rows of ${cells}. Nothing was written; clear the filter and try again.`,
  tableInTheWay: (cells) => `The table ${cells} is in the way. Nothing was written; choose a place clear of it.`,
  belowTable: (cells) =>
    `A table needs more room, but ${cells} right at its edge hold something. Nothing was written; move that further away.`,
  editing: () => 'A cell is being edited. Press Enter to finish it, then try again.',
  connection: (_, hostSaid) => hostSaid,
  putBack: (_, hostSaid) =>
    `The workbook refused a step and everything was put back as it was.${said(hostSaid)} Save, then try again.`,
  halfWritten: (cells, hostSaid) =>
    `The workbook failed half way and could not be put back.${said(hostSaid)} Look at ${cells || 'the cells just written'}, ` +
    'then use Undo.',
  tooLong: (cells) =>
    cells
      ? `What stands in ${cells} is longer than the workbook takes at once. Nothing was written; shorten texts there and try again.`
      : 'This, or what Undo would have to keep of it, is longer than the workbook takes at once. Nothing was written; do it in smaller parts.',
  unsupported: (_, hostSaid) => `This version of the spreadsheet cannot do that.${said(hostSaid)} Nothing was written.`,
  host: (_, hostSaid) => `The workbook did not answer.${said(hostSaid)} Nothing was written; try again.`,
};

function said(hostSaid: string): string {
  return hostSaid ? ` It said: “${hostSaid.replace(/[.\s]+$/, '')}”.` : '';
}

/** Why a read or a change did not happen. */
export function sayPortError(error: PortError): string {
  return PORT_SENTENCES[error.code](listed(error.cells), error.hostSaid);
}
