/** The page that Excel shows: the pane on Excel's workbook, or, outside Excel, a sentence and the way to the try-out page. */
import { StrictMode, useEffect, useState } from 'react';
import { createRoot } from 'react-dom/client';
import { canHold, excelHere } from '../workbook/excel/host';
import { createExcelPort } from '../workbook/excel/port';
import { themeFor, type HostTheme, type ThemeName } from './state/hostTheme';
import { wearPage } from './theme';
import { Outside } from './view/Outside';
import { Pane } from './view/Pane';
import { COMMON } from './words';
import type { WorkbookPort } from '../workbook/port';

const HELP = 'help.html';
const TRYOUT = 'index.html';

const forced = matchMedia('(forced-colors: active)');

/** Excel on the web may not know its own theme; the client library's types say it always does. */
function hostTheme(): HostTheme | undefined {
  return typeof Office === 'undefined' ? undefined : (Office.context?.officeTheme as HostTheme | undefined);
}

const themeNow = () => themeFor(hostTheme(), forced.matches);

/** Follows the contrast themes of Windows and, where the host tells, its own. */
function useTheme(): ThemeName {
  const [theme, setTheme] = useState(themeNow);
  useEffect(() => {
    const follow = () => setTheme(themeNow());
    forced.addEventListener('change', follow);
    // Coming back to the pane is when a changed theme shows; the host's own event reaches mail programs only.
    window.addEventListener('focus', follow);
    return () => {
      forced.removeEventListener('change', follow);
      window.removeEventListener('focus', follow);
    };
  }, []);
  return theme;
}

function ExcelPane({ port }: { readonly port: WorkbookPort }) {
  return <Pane port={port} theme={useTheme()} helpUrl={HELP} heading={COMMON.name} />;
}

function OutsideExcel({ tooOld }: { readonly tooOld: boolean }) {
  return <Outside theme={useTheme()} tryoutUrl={TRYOUT} tooOld={tooOld} />;
}

/** Whether Excel is there; false also where the client library could not be loaded at all. */
async function isInExcel(): Promise<boolean> {
  if (typeof Office === 'undefined') return false;
  const { host } = await Office.onReady();
  return host === Office.HostType.Excel;
}

async function start(place: HTMLElement): Promise<void> {
  wearPage();
  const root = createRoot(place);
  const inExcel = await isInExcel();
  if (!inExcel || !canHold(excelHere())) {
    root.render(<OutsideExcel tooOld={inExcel} />);
    return;
  }
  const port = createExcelPort(excelHere());
  root.render(
    <StrictMode>
      <ExcelPane port={port} />
    </StrictMode>,
  );
}

const place = document.getElementById('root');
if (place) void start(place);
