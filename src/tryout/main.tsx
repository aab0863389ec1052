/** The page that needs no Excel: the embedded spreadsheet, the same pane, our functions and a demo workbook. */
import './tryout.css';
import { drawFrame, type Frame } from './frame';
import { followTheme, type PageTheme } from './pageTheme';
import { TRYOUT } from './words';

/* Everything heavy comes in after the frame is drawn. */
const spreadsheetParts = () =>
  Promise.all([
    import(/* webpackChunkName: "spreadsheet" */ '../workbook/embedded/inPage'),
    import(/* webpackChunkName: "spreadsheet" */ '../workbook/embedded/port'),
    import(/* webpackChunkName: "spreadsheet" */ '../workbook/embedded/errorSentence'),
  ]);
const ourParts = () =>
  Promise.all([
    import(/* webpackChunkName: "workshop" */ '../functions/implementations'),
    import(/* webpackChunkName: "workshop" */ '../functions/functions.json'),
    import(/* webpackChunkName: "workshop" */ './demoWorkbook'),
    import(/* webpackChunkName: "workshop" */ './mountPane'),
  ]);

async function open(frame: Frame, theme: PageTheme): Promise<void> {
  const [[sheets, ports, errors], [{ FUNCTIONS }, { functions: metadata }, demo, { mountPane }]] = await Promise.all([
    spreadsheetParts(),
    ourParts(),
  ]);
  const spreadsheet = await sheets.createInPage(frame.sheet, {
    sheets: demo.demoSheets.map((name) => ({ name, cells: [] })),
    functions: { metadata, implementations: FUNCTIONS },
    dark: theme.now() === 'dark',
  });
  theme.onChange((name) => spreadsheet.setDark(name === 'dark'));
  const port = ports.createEmbeddedPort(spreadsheet);
  await demo.fillDemo(port);
  spreadsheet.forgetUndo();
  mountPane(frame.pane, port, theme);
  errors.onErrorSentence(spreadsheet, (error) => frame.say(error && sentence(error)));
  frame.takeTurns(() => sheets.focusSheet(spreadsheet));
  await spreadsheet.ready;
  frame.sheetIsThere();
}

function sentence({ cell, error, says }: { cell: string; error: string; says: string | null }): string | null {
  const why = error === '#SPILL!' ? TRYOUT.noRoom : says;
  return why === null ? null : `${cell} shows ${error}: ${why}`;
}

const root = document.getElementById('root');
if (root) {
  const frame = drawFrame(root);
  open(frame, followTheme(frame.themeButton)).catch((error: unknown) => {
    frame.failed();
    throw error;
  });
}
