/** Every word said of a tool of the embedded spreadsheet that has none of its own. */
export const TOOLS = {
  toolbar: 'Tools of the workbook',
  cells: 'Cells. Tab and the arrows go from cell to cell, F6 leaves them.',
  formulaBar: 'What stands in the cell',
  address: 'Address of the cell, or a name',
  names: 'Names in the workbook',
  higher: 'Make the formula bar higher or lower',
  font: 'Font',
  fontSize: 'Size of the font',
  gridLines: 'Grid lines',
  addSheet: 'Add a sheet',
  allSheets: 'All sheets',
  sheetsLeft: 'Sheets further left',
  sheetsRight: 'Sheets further right',
  smaller: 'Show smaller',
  larger: 'Show larger',
  zoom: 'How large it is shown',
  sidePanel: 'Side panel',
  said: 'What the workbook says',
  warned: 'What the workbook warns of',
} as const;

/** What the spreadsheet says beside its formula bar while it calculates for longer than a moment, by the keys that its own words lack. */
export const CALCULATING: Readonly<Record<string, string>> = {
  analyzing: 'Looking what hangs on what',
  calculating: 'Calculating',
  'array-analysis': 'Looking what fills several cells',
  'array-calculation': 'Filling several cells',
  done: 'Calculated',
};

/** What is asked before a sheet is deleted. */
const DELETING =
  'Undo does not bring this sheet back, and no longer takes back what was done before it is deleted. A copy that is saved from then on is without the sheet; a file that you opened keeps it.';

/** The spreadsheet's own words with ours in their places: one pack takes the place of another as a whole. */
export function withWords<T extends { readonly sheetConfig: object }>(own: T): T {
  const deleting = { deleteSheetContent: DELETING, deleteLargeSheetContent: DELETING };
  return { ...own, sheetConfig: { ...own.sheetConfig, ...deleting } };
}

/** The arrow beside a tool that does at once what was last chosen. */
export const sayChoices = (tool: string): string => `${tool}: choose`;
