/** The page that needs no Excel: the embedded spreadsheet, the same pane, our functions and a demo workbook. */
import './tryout.css';
import { drawFrame, type Frame } from './frame';
import { askBeforeLeaving } from './leaving';
import { rest } from './rest';
import { nextTurn } from '../workbook/pace';
import { dayOf } from '../workbook/days';
import { followTheme, type PageTheme } from './pageTheme';
import type { OpenedBook } from '../workbook/embedded/open/book';
import type { OpenedContent, Spreadsheet, WorksheetFunctions } from '../workbook/embedded/spreadsheet';
import type { WorkbookPort } from '../workbook/port';
import { sayAbout } from './open/words';
import { TRYOUT } from './words';

/* Everything heavy comes in after the frame is drawn, all at once; the spreadsheet's scripts only run when they are called in. */
const sheetScripts = () => import(/* webpackChunkName: "spreadsheet" */ '../workbook/embedded/entrance');
const ourParts = async () => {
  const [functions, metadata, demo, draft, pane, shops, saving, fileNames, opening, coming] = await Promise.all([
    import(/* webpackChunkName: "workshop" */ '../functions/implementations'),
    import(/* webpackChunkName: "workshop" */ '../functions/functions.json'),
    import(/* webpackChunkName: "workshop" */ './demoWorkbook'),
    import(/* webpackChunkName: "workshop" */ '../workbook/embedded/draft/draft'),
    import(/* webpackChunkName: "workshop" */ './mountPane'),
    import(/* webpackChunkName: "workshop" */ '../workbook/shop'),
    import(/* webpackChunkName: "workshop" */ './save/offer'),
    import(/* webpackChunkName: "workshop" */ './save/fileName'),
    import(/* webpackChunkName: "workshop" */ './open/offer'),
    import(/* webpackChunkName: "workshop" */ './comingPort'),
    // What the pane shows first: it would ask for it a moment later.
    import(/* webpackChunkName: "workshop" */ '../pane/view/PlanScreen'),
  ]);
  return { functions, metadata, demo, draft, pane, shops, saving, fileNames, opening, coming };
};

type OurParts = Awaited<ReturnType<typeof ourParts>>;

/** What stands on the page at one time. */
interface Standing {
  readonly spreadsheet: Spreadsheet;
  readonly port: WorkbookPort;
  readonly unmountPane: () => void;
  /** The file it was opened from; null for the demo. */
  readonly fileName: string | null;
}

/** Makes the demo as data, shows the pane on it, and puts the spreadsheet in its place when it comes. */
async function beginWithDemo(frame: Frame, theme: PageTheme, ours: OurParts, scripts: ReturnType<typeof sheetScripts>) {
  const draft = new ours.draft.Draft(ours.demo.demoSheets);
  await ours.demo.fillDemo(draft, dayOf(new Date()));
  performance.mark('demo');
  const sheet = scripts.then(async ({ callIn }) => {
    await rest();
    const parts = await callIn(nextTurn);
    performance.mark('spreadsheet scripts');
    const opened = parts.draftContent.draftContent(draft.book);
    const options = { sheets: [], opened, functions: functionsOf(ours), dark: theme.isDark() };
    const spreadsheet = await parts.inPage.createInPage(frame.sheet, options);
    performance.mark('spreadsheet');
    return { parts, spreadsheet, port: parts.port.createEmbeddedPort(spreadsheet) };
  });
  const port = ours.coming.comingPort(
    draft,
    sheet.then((made) => made.port),
  );
  const unmountPane = ours.pane.mountPane(frame.pane, port, theme);
  frame.paneIsThere();
  const { parts, spreadsheet } = await sheet;
  return { parts, standing: { spreadsheet, port, unmountPane, fileName: null } };
}

function functionsOf({ functions, metadata }: OurParts): WorksheetFunctions {
  return { metadata: metadata.functions, implementations: functions.FUNCTIONS };
}

async function open(frame: Frame, theme: PageTheme): Promise<void> {
  const scripts = sheetScripts();
  // Its failure counts once the spreadsheet is needed.
  scripts.catch(() => undefined);
  const ours = await ourParts();
  performance.mark('scripts');
  const { shops, fileNames } = ours;
  const begun = await beginWithDemo(frame, theme, ours, scripts);
  const { inPage: sheets, port: ports, errorSentence: errors, saving, opening } = begun.parts;
  const hearErrors = (spreadsheet: Spreadsheet): void => {
    errors.onErrorSentence(spreadsheet, (error) => frame.say(error && sentence(error)));
  };
  let standing: Standing = begun.standing;
  hearErrors(standing.spreadsheet);
  theme.onChange(() => standing.spreadsheet.setDark(theme.isDark()));
  frame.takeTurns(() => sheets.focusSheet(standing.spreadsheet));
  // What is half typed in a cell is kept, whatever is done in the pane next.
  frame.pane.addEventListener('focusin', () => void sheets.leaveCell(standing.spreadsheet));
  await standing.spreadsheet.ready;
  frame.sheetIsThere();
  const unsaved = askBeforeLeaving();
  ours.saving.offerSaving({
    button: frame.saveButton,
    saved: unsaved.none,
    tell: (sentence) => frame.tell(sentence),
    prepare: async (looking) => {
      const { spreadsheet, port, fileName } = standing;
      await sheets.leaveCell(spreadsheet);
      const { tables, plans } = await shops.readShop(port);
      const shop = tables.Settings ? shops.shopName(shops.matrixOf(tables.Settings)) : '';
      const jobs = plans.map(({ job }) => job);
      const copy = await saving.prepareCopy(spreadsheet, looking);
      if (!copy) return undefined;
      return { ...copy, fileName: fileName === null ? fileNames.copyName(shop, jobs) : fileNames.copyOfName(fileName) };
    },
  });
  ours.opening.offerOpening({
    button: frame.openButton,
    tell: (sentence) => frame.tell(sentence),
    read: opening.startReading,
    place: async (book: OpenedBook, fileName, placing) => {
      const next = frame.nextSheet();
      const make = (opened: OpenedContent): Promise<Spreadsheet> =>
        sheets.createInPage(next.place, { sheets: [], opened, functions: functionsOf(ours), dark: theme.isDark() });
      try {
        const made = await opening.placed(book, make, placing);
        if (!made) {
          next.drop();
          return undefined;
        }
        const { spreadsheet, found } = made;
        const before = standing;
        before.unmountPane();
        next.show();
        before.spreadsheet.dispose();
        frame.say(null);
        frame.about(sayAbout(fileName));
        const port = ports.createEmbeddedPort(spreadsheet);
        hearErrors(spreadsheet);
        unsaved.none();
        spreadsheet.onChange(unsaved.changed);
        standing = { spreadsheet, port, unmountPane: ours.pane.mountPane(frame.pane, port, theme), fileName };
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
