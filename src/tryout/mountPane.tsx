/** Puts the pane into the page and keeps its colours those of the page. */
import { useEffect, useState } from 'react';
import { createRoot } from 'react-dom/client';
import { Pane } from '../pane/view/Pane';
import type { WorkbookPort } from '../workbook/port';
import type { PageTheme } from './pageTheme';
import { TRYOUT } from './words';

export function mountPane(place: HTMLElement, port: WorkbookPort, theme: PageTheme): void {
  createRoot(place).render(<ThemedPane port={port} theme={theme} />);
}

function ThemedPane({ port, theme }: { readonly port: WorkbookPort; readonly theme: PageTheme }) {
  const [name, setName] = useState(theme.now);
  useEffect(() => theme.onChange(setName), [theme]);
  return <Pane port={port} theme={name} helpUrl={TRYOUT.helpUrl} />;
}
