/** A way from what is said of a cell to the cell. */
import { Link } from '@fluentui/react-components';
import { useState } from 'react';
import { PortError, type Block } from '../../../workbook/port';
import { named } from '../../../workbook/shared/address';
import { sayPortError } from '../../../words/portErrors';
import type { PaneNow } from '../../state/usePane';
import { QUOTE_WORDS } from './quoteWords';

/** Shows the cell; nothing is written. It may be gone since it was looked at, which is said. */
export function GoToCell({ pane, at }: { readonly pane: Pick<PaneNow, 'inspect'>; readonly at: Block }) {
  const [says, setSays] = useState('');
  const go = async () => {
    setSays('');
    await pane.inspect((port) => port.apply([{ do: 'show', at }], [], { label: QUOTE_WORDS.goTo(named(at)) }));
  };
  const onClick = () =>
    void go().catch((error: unknown) =>
      setSays(error instanceof PortError ? ` ${sayPortError(error)}` : ` ${String(error)}`),
    );
  return (
    <>
      {' '}
      <Link as="button" inline onClick={onClick}>
        {QUOTE_WORDS.goTo(named(at))}
      </Link>
      <span role="status">{says}</span>
    </>
  );
}
