/** The page that needs no Excel: the embedded spreadsheet, the same pane, our functions and a demo workbook. */
import './tryout.css';
import { drawFrame, type Frame } from './frame';
import { dayOf } from '../workbook/days';
import { followTheme, type PageTheme } from './pageTheme';
import { TRYOUT } from './words';

/* Everything heavy comes in after the frame is drawn. */
const spreadsheetParts = () =>
  Promise.all([
    import(/* webpackChunkName: "spreadsheet" */ '../workbook/embedded/inPage'),
    import(/* webpackChunkName: "spreadsheet" */ '../workbook/embedded/port'),
    import(/* webpackChunkName: "spreadsheet" */ '../workbook/embedded/errorSentence'),
    import(/* webpackChunkName: "spreadsheet" */ '../workbook/embedded/saving'),
  ]);
const ourParts = () =>
  Promise.all([
    import(/* webpackChunkName: "workshop" */ '../functions/implementations'),
    import(/* webpackChunkName: "workshop" */ '../functions/functions.json'),
    import(/* webpackChunkName: "workshop" */ './demoWorkbook'),
    import(/* webpackChunkName: "workshop" */ './mountPane'),
    import(/* webpackChunkName: "workshop" */ '../workbook/shop'),
    import(/* webpackChunkName: "workshop" */ './save/offer'),
    import(/* webpackChunkName: "workshop" */ './save/fileName'),
  ]);

async function open(frame: Frame, theme: PageTheme): Promise<void> {
  const [ofSheet, ours] = await Promise.all([spreadsheetParts(), ourParts()]);
  const [sheets, ports, errors, saving] = ofSheet;
  const [{ FUNCTIONS }, { functions: metadata }, demo, { mountPane }, shops, { offerSaving }, { copyName }] = ours;
  const spreadsheet = await sheets.createInPage(frame.sheet, {
    sheets: demo.demoSheets.map((name) => ({ name, cells: [] })),
    functions: { metadata, implementations: FUNCTIONS },
    dark: theme.now() === 'dark',
  });
  theme.onChange((name) => spreadsheet.setDark(name === 'dark'));
  const port = ports.createEmbeddedPort(spreadsheet);
  await demo.fillDemo(port, dayOf(new Date()));
  spreadsheet.forgetUndo();
  mountPane(frame.pane, port, theme);
  errors.onErrorSentence(spreadsheet, (error) => frame.say(error && sentence(error)));
  frame.takeTurns(() => sheets.focusSheet(spreadsheet));
  await spreadsheet.ready;
  frame.sheetIsThere();
  offerSaving({
    button: frame.saveButton,
    tell: (sentence) => frame.tell(sentence),
    prepare: async () => {
      await sheets.leaveCell(spreadsheet);
      const { tables, plans } = await shops.readShop(port);
      const shop = tables.Settings ? shops.shopName(shops.matrixOf(tables.Settings)) : '';
      const copy = await saving.prepareCopy(spreadsheet);
      return {
        ...copy,
        fileName: copyName(
          shop,
          plans.map(({ job }) => job),
        ),
      };
    },
  });
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
