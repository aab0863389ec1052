/** Puts the pane into the page and keeps its colours those of the page. */
import { useEffect, useState } from 'react';
import { createRoot } from 'react-dom/client';
import { Pane } from '../pane/view/Pane';
import type { WorkbookPort } from '../workbook/port';
import type { PageTheme } from './pageTheme';
import { TRYOUT } from './words';

/** Returns how to take it out again. */
export function mountPane(place: HTMLElement, port: WorkbookPort, theme: PageTheme): () => void {
  const root = createRoot(place);
  root.render(<ThemedPane port={port} theme={theme} />);
  return () => root.unmount();
}

function ThemedPane({ port, theme }: { readonly port: WorkbookPort; readonly theme: PageTheme }) {
  const [name, setName] = useState(theme.now);
  useEffect(() => {
    // One that was taken out hears nothing any more.
    let there = true;
    theme.onChange((changed) => {
      if (there) setName(changed);
    });
    return () => {
      there = false;
    };
  }, [theme]);
  return <Pane port={port} theme={name} helpUrl={TRYOUT.helpUrl} />;
}
