/** Where a workbook was set up by another version: what bringing it up to date would add, or that a newer one keeps it from being written. */
import { Button } from '@fluentui/react-components';
import { LAYOUT } from '../../../workbook/planPlaces';
import { bringUpToDate, laterThings } from '../../../workbook/upToDate';
import { sayAdditions, sayUpToDate, UP_TO_DATE } from '../../../words/upToDate';
import type { Deed } from '../../state/deed';
import { shopOf } from '../../state/seen';
import type { PaneNow } from '../../state/usePane';
import { Fold } from '../Fold';
import { Buttons, Part, Says, Sentences } from './parts';

const upToDateDeed: Deed = {
  doing: UP_TO_DATE.doing,
  done: UP_TO_DATE.done,
  failed: UP_TO_DATE.failed,
  run: async (port) => {
    const end = await bringUpToDate(port);
    const partly = end.done && end.left.length + end.blocked.length > 0;
    return { end, text: sayUpToDate(end), partly, ...(partly ? { headline: UP_TO_DATE.partly } : {}) };
  },
};

export function UpToDate({ pane }: { readonly pane: PaneNow }) {
  const { state, does } = pane;
  if (!state.shop) return null;
  const { tables, layout } = shopOf(state.shop);
  if (state.shop.age === 'newer') {
    return (
      <Part title={UP_TO_DATE.newer}>
        <Says flagged>{UP_TO_DATE.newerText(layout ?? 0, LAYOUT)}</Says>
      </Part>
    );
  }
  const lines = sayAdditions(laterThings(tables, layout));
  if (lines.length === 0) return null;
  return (
    <Fold title={UP_TO_DATE.title}>
      <Says quiet>{UP_TO_DATE.about}</Says>
      <Sentences texts={lines} />
      <Buttons>
        <Button disabledFocusable={state.task !== null} onClick={() => does.deed(upToDateDeed)}>
          {UP_TO_DATE.button}
        </Button>
      </Buttons>
    </Fold>
  );
}
