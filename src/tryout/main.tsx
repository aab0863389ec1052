/** The page that needs no Excel: the embedded spreadsheet, the same pane, our functions and a demo workbook. */
import './tryout.css';
import { drawFrame, type Frame } from './frame';
import { dayOf } from '../workbook/days';
import { followTheme, type PageTheme } from './pageTheme';
import type { OpenedBook } from '../workbook/embedded/open/book';
import type { Spreadsheet } from '../workbook/embedded/spreadsheet';
import type { WorkbookPort } from '../workbook/port';
import { sayAbout } from './open/words';
import { TRYOUT } from './words';

/* Everything heavy comes in after the frame is drawn. */
const spreadsheetParts = () =>
  Promise.all([
    import(/* webpackChunkName: "spreadsheet" */ '../workbook/embedded/inPage'),
    import(/* webpackChunkName: "spreadsheet" */ '../workbook/embedded/port'),
    import(/* webpackChunkName: "spreadsheet" */ '../workbook/embedded/errorSentence'),
    import(/* webpackChunkName: "spreadsheet" */ '../workbook/embedded/saving'),
    import(/* webpackChunkName: "spreadsheet" */ '../workbook/embedded/opening'),
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
    import(/* webpackChunkName: "workshop" */ './open/offer'),
  ]);

/** What stands on the page at one time. */
interface Standing {
  readonly spreadsheet: Spreadsheet;
  readonly port: WorkbookPort;
  readonly unmountPane: () => void;
  /** The file it was opened from; null for the demo. */
  readonly fileName: string | null;
}

async function open(frame: Frame, theme: PageTheme): Promise<void> {
  const [ofSheet, ours] = await Promise.all([spreadsheetParts(), ourParts()]);
  performance.mark('scripts');
  const [sheets, ports, errors, saving, opening] = ofSheet;
  const [
    { FUNCTIONS },
    { functions: metadata },
    demo,
    { mountPane },
    shops,
    { offerSaving },
    fileNames,
    { offerOpening },
  ] = ours;
  const functions = { metadata, implementations: FUNCTIONS };
  const isDark = (): boolean => theme.now() === 'dark';
  const stand = (spreadsheet: Spreadsheet, port: WorkbookPort, fileName: string | null): Standing => {
    errors.onErrorSentence(spreadsheet, (error) => frame.say(error && sentence(error)));
    return { spreadsheet, port, unmountPane: mountPane(frame.pane, port, theme), fileName };
  };
  const first = await sheets.createInPage(frame.sheet, {
    sheets: demo.demoSheets.map((name) => ({ name, cells: [] })),
    functions,
    dark: isDark(),
  });
  performance.mark('spreadsheet');
  const firstPort = ports.createEmbeddedPort(first);
  await demo.fillDemo(firstPort, dayOf(new Date()));
  first.forgetUndo();
  performance.mark('demo');
  let standing = stand(first, firstPort, null);
  theme.onChange((name) => standing.spreadsheet.setDark(name === 'dark'));
  frame.takeTurns(() => sheets.focusSheet(standing.spreadsheet));
  await first.ready;
  frame.sheetIsThere();
  offerSaving({
    button: frame.saveButton,
    tell: (sentence) => frame.tell(sentence),
    prepare: async () => {
      const { spreadsheet, port, fileName } = standing;
      await sheets.leaveCell(spreadsheet);
      const { tables, plans } = await shops.readShop(port);
      const shop = tables.Settings ? shops.shopName(shops.matrixOf(tables.Settings)) : '';
      const jobs = plans.map(({ job }) => job);
      const copy = await saving.prepareCopy(spreadsheet);
      return { ...copy, fileName: fileName === null ? fileNames.copyName(shop, jobs) : fileNames.copyOfName(fileName) };
    },
  });
  offerOpening({
    button: frame.openButton,
    tell: (sentence) => frame.tell(sentence),
    read: opening.startReading,
    place: async (book: OpenedBook, fileName) => {
      const next = frame.nextSheet();
      try {
        const opened = await opening.contentFor(book);
        const spreadsheet = await sheets.createInPage(next.place, { sheets: [], opened, functions, dark: isDark() });
        await spreadsheet.ready;
        const found = await opening.reviewed(spreadsheet);
        const before = standing;
        before.unmountPane();
        next.show();
        before.spreadsheet.dispose();
        frame.say(null);
        frame.about(sayAbout(fileName));
        standing = stand(spreadsheet, ports.createEmbeddedPort(spreadsheet), fileName);
        return found;
      } catch (error) {
        next.drop();
        throw error;
      }
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
