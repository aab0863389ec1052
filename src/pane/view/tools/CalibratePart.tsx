/** The shop's own constants: what its check-ins say, offered one by one, and whether its scale still reads as it did. */
import { Button, ProgressBar } from '@fluentui/react-components';
import { useCallback, useMemo, useState } from 'react';
import { calibrateShopSteps, checkScale, type ScaleSeen, type ShopCalibration } from '../../../workbook/calibrateShop';
import {
  CAP_CAVEAT,
  LAYER_FROM_WORDS,
  OFFERS_HEAD,
  offerName,
  sayOffer,
  sayScale,
  SCALE_TEST,
  sayUntold,
  sayUnusable,
} from '../../../words/calibrate';
import { sayIssue } from '../../../words/issues';
import type { ShopTables } from '../../../workbook/shop';
import { shopOf } from '../../state/seen';
import { useLong } from '../../state/useLong';
import type { PaneNow } from '../../state/usePane';
import { FIRST_RUN } from '../../words';
import { takeConstantDeed } from './calibrateDeeds';
import { CALIBRATE_WORDS } from './calibrateWords';
import { Buttons, Part, Says, Sentences } from './parts';
import { Fold } from '../Fold';

function Found({ seen, pane }: { readonly seen: ShopCalibration; readonly pane: PaneNow }) {
  const { found, finished, without } = seen;
  const { state, does } = pane;
  const left = without > 0 && (
    <Says quiet small>
      {CALIBRATE_WORDS.without(without)}
    </Says>
  );
  if (!found) {
    return (
      <>
        <Says>{CALIBRATE_WORDS.nothing}</Says>
        {left}
      </>
    );
  }
  const untold = [...sayUntold(found), ...found.unusable.map(sayUnusable)];
  const from = found.layer.ok ? ` Layer ${LAYER_FROM_WORDS[found.layer.value.from]}.` : '';
  return (
    <>
      <Says quiet small>
        {OFFERS_HEAD} {CALIBRATE_WORDS.basis(finished.length)}
        {from}
      </Says>
      {found.offers.map((offer) => {
        const name = offerName(offer);
        return (
          <Part key={name}>
            <Says>{sayOffer(offer)}</Says>
            {!offer.agrees && (
              <Buttons>
                <Button
                  aria-label={CALIBRATE_WORDS.takeOf(name)}
                  disabledFocusable={state.task !== null}
                  onClick={() => does.deed(takeConstantDeed(offer))}
                >
                  {CALIBRATE_WORDS.take}
                </Button>
              </Buttons>
            )}
          </Part>
        );
      })}
      {found.offers.some(({ field }) => field !== 'layerGrams') && (
        <Says quiet small>
          {CAP_CAVEAT}
        </Says>
      )}
      {untold.length > 0 && (
        <Part title={CALIBRATE_WORDS.untold}>
          <Sentences texts={untold} />
        </Part>
      )}
      {left}
    </>
  );
}

function Scale({ seen, pane }: { readonly seen: ScaleSeen; readonly pane: PaneNow }) {
  const { state, does } = pane;
  const { readings, accepted, check } = seen;
  if (state.shop?.missing.includes('Scale')) {
    return (
      <>
        <Says quiet>{CALIBRATE_WORDS.noTable}</Says>
        <Buttons>
          <Button disabledFocusable={state.task !== null} onClick={does.setUp}>
            {FIRST_RUN.setUp}
          </Button>
        </Buttons>
      </>
    );
  }
  return (
    <>
      {readings === 0 && <Says>{CALIBRATE_WORDS.noReadings}</Says>}
      {readings > 0 && accepted === undefined && <Says>{CALIBRATE_WORDS.noAccepted}</Says>}
      {check && !check.ok && <Says>{sayIssue(check.issue)}</Says>}
      {check?.ok && (
        <>
          <Says flagged={check.value.verdict === 'recalibrate'}>{sayScale(check.value)}</Says>
          <Says quiet small>
            {SCALE_TEST}
          </Says>
        </>
      )}
    </>
  );
}

/** Worked out while it is unfolded, and anew after an edit only then. */
function Unfolded({ pane, tables }: { readonly pane: PaneNow; readonly tables: ShopTables }) {
  const begin = useCallback(() => calibrateShopSteps(tables), [tables]);
  const { answer, settled } = useLong(begin);
  const scale = useMemo(() => checkScale(tables), [tables]);
  return (
    <>
      {!settled && <ProgressBar aria-label={CALIBRATE_WORDS.working} />}
      {answer && <Found seen={answer} pane={pane} />}
      <Part title={CALIBRATE_WORDS.scale} ruled>
        <Scale seen={scale} pane={pane} />
      </Part>
    </>
  );
}

/** Stands folded below the check-in. */
export function CalibratePart({ pane }: { readonly pane: PaneNow }) {
  const { shop } = pane.state;
  const [open, setOpen] = useState(false);
  const tables = useMemo(() => shop && shopOf(shop).tables, [shop]);
  if (!tables) return null;
  return (
    <Fold title={CALIBRATE_WORDS.title} ruled onFold={setOpen}>
      {open && <Unfolded pane={pane} tables={tables} />}
    </Fold>
  );
}
