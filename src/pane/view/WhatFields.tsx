/** What to fit: grip, size, hold, and under a fold the two that seldom change. Each starts as it is in the sheet. */
import { Checkbox, Input, Link, makeStyles, tokens } from '@fluentui/react-components';
import { useId } from 'react';
import { FIELD_RANGES, type Form, type FormRead } from '../state/form';
import type { ShopSeen } from '../state/work';
import { faultText, HOLDS_SHOWN, SIZES, WHAT } from '../words';
import { Choice, FieldLine, Pair } from './fields';
import { GripField } from './GripField';
import { Fold } from './Fold';
import { TINY } from './narrow';

const useStyles = makeStyles({
  fields: { display: 'flex', flexDirection: 'column', rowGap: '6px' },
  number: { minWidth: 0, width: '100%' },
  putters: { marginLeft: '82px', [TINY]: { marginLeft: 0 } },
  perClub: {
    margin: '0 0 0 90px',
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    borderLeft: `3px solid ${tokens.colorBrandStroke1}`,
    paddingLeft: '8px',
    [TINY]: { marginLeft: 0 },
  },
});

interface WhatProps {
  readonly shop: ShopSeen;
  readonly form: Form;
  readonly faults: FormRead['faults'];
  /** Putters among other clubs. */
  readonly putters: number;
  readonly onForm: (change: Partial<Form>) => void;
}

function SizeLine({ form, faults, onForm }: Omit<WhatProps, 'shop' | 'putters'>) {
  const styles = useStyles();
  const id = useId();
  const fault = form.sizeBy === 'layers' ? faults.layers : faults.diameter;
  const says = form.sizeBy !== 'sheet' && fault ? faultText(form.sizeBy, fault) : undefined;
  const choice = <Choice id={id} value={form.sizeBy} options={SIZES} onChoose={(sizeBy) => onForm({ sizeBy })} />;
  return (
    <FieldLine label={WHAT.size} id={id} says={says} saysId={`${id}says`}>
      {form.sizeBy === 'sheet' ? (
        choice
      ) : (
        <Pair>
          {choice}
          {form.sizeBy === 'layers' ? (
            <Input
              className={styles.number}
              type="number"
              aria-label={WHAT.layersLabel}
              aria-invalid={Boolean(fault && fault !== 'blank')}
              aria-describedby={says && `${id}says`}
              min={FIELD_RANGES.layers.low}
              max={FIELD_RANGES.layers.high}
              value={form.layers}
              onChange={(_, { value }) => onForm({ layers: value })}
            />
          ) : (
            <Input
              className={styles.number}
              inputMode="decimal"
              aria-label={WHAT.diameterLabel}
              aria-invalid={Boolean(fault && fault !== 'blank')}
              aria-describedby={says && `${id}says`}
              placeholder="0.000"
              contentAfter="in"
              value={form.diameter}
              onChange={(_, { value }) => onForm({ diameter: value })}
            />
          )}
        </Pair>
      )}
    </FieldLine>
  );
}

function HoldLine({ form, faults, onForm }: Omit<WhatProps, 'shop' | 'putters'>) {
  const styles = useStyles();
  const id = useId();
  const says = form.holdBy === 'target' && faults.target ? faultText('target', faults.target) : undefined;
  const choice = <Choice id={id} value={form.holdBy} options={HOLDS_SHOWN} onChoose={(holdBy) => onForm({ holdBy })} />;
  return (
    <FieldLine label={WHAT.hold} id={id} says={says} saysId={`${id}says`}>
      {form.holdBy !== 'target' ? (
        choice
      ) : (
        <Pair>
          {choice}
          <Input
            className={styles.number}
            aria-label={WHAT.targetLabel}
            aria-invalid={Boolean(says)}
            aria-describedby={says && `${id}says`}
            placeholder={WHAT.targetPlaceholder}
            value={form.target}
            onChange={(_, { value }) => onForm({ target: value })}
          />
        </Pair>
      )}
    </FieldLine>
  );
}

function SeldomLines({ shop, form, faults, onForm }: Omit<WhatProps, 'putters'>) {
  const styles = useStyles();
  const id = useId();
  const says = faults.tolerance ? faultText('tolerance', faults.tolerance) : undefined;
  const lowerSays = faults.lowerLayers ? faultText('lowerLayers', faults.lowerLayers) : undefined;
  const ways = Object.fromEntries([['', WHAT.asInSheet], ...shop.ways.map((way) => [way, way])]);
  return (
    <Fold title={WHAT.more}>
      <FieldLine label={WHAT.lower} id={`${id}lower`} says={lowerSays} saysId={`${id}lowerSays`}>
        <Input
          id={`${id}lower`}
          className={styles.number}
          inputMode="numeric"
          aria-invalid={Boolean(lowerSays)}
          aria-describedby={lowerSays && `${id}lowerSays`}
          placeholder={WHAT.asInSheet}
          contentAfter={WHAT.lowerUnit}
          value={form.lowerLayers}
          onChange={(_, { value }) => onForm({ lowerLayers: value })}
        />
      </FieldLine>
      <FieldLine label={WHAT.tolerance} id={`${id}tolerance`} says={says} saysId={`${id}says`}>
        <Input
          id={`${id}tolerance`}
          className={styles.number}
          inputMode="decimal"
          aria-invalid={Boolean(says)}
          aria-describedby={says && `${id}says`}
          placeholder={WHAT.asInSheet}
          contentAfter={WHAT.toleranceUnit}
          value={form.tolerance}
          onChange={(_, { value }) => onForm({ tolerance: value })}
        />
      </FieldLine>
      <FieldLine label={WHAT.weighting} id={`${id}weighting`}>
        <Choice
          id={`${id}weighting`}
          value={form.weighting}
          options={ways}
          onChoose={(weighting) => onForm({ weighting })}
        />
      </FieldLine>
    </Fold>
  );
}

export function WhatFields(props: WhatProps) {
  const styles = useStyles();
  const id = useId();
  const { shop, form, putters, onForm } = props;
  return (
    <div className={styles.fields}>
      <FieldLine
        label={WHAT.grip}
        id={id}
        says={shop.grips.length || shop.missing.includes('Stock') ? undefined : WHAT.noStock}
      >
        <GripField id={id} grips={shop.grips} item={form.item} onChoose={(item) => onForm({ item })} />
      </FieldLine>
      <SizeLine {...props} />
      <HoldLine {...props} />
      {form.perClub && (
        <p className={styles.perClub} role="status">
          {WHAT.perClub(form.perClub.entries.size, form.perClub.from)}{' '}
          <Link as="button" inline onClick={() => onForm({ perClub: null })}>
            {WHAT.dropPerClub}
          </Link>
        </p>
      )}
      {putters > 0 && (
        <Checkbox
          className={styles.putters}
          label={WHAT.puttersToo(putters)}
          checked={form.puttersToo}
          onChange={(_, { checked }) => onForm({ puttersToo: checked === true })}
        />
      )}
      <SeldomLines {...props} />
    </div>
  );
}
