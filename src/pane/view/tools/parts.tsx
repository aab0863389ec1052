/** What the screens that help choosing are made of. */
import { Input, makeStyles, mergeClasses, tokens } from '@fluentui/react-components';
import { useId, useLayoutEffect, useRef, type ReactNode } from 'react';
import { Unbroken } from '../Unbroken';

const useStyles = makeStyles({
  part: { display: 'flex', flexDirection: 'column', rowGap: '6px', minWidth: 0 },
  ruled: { borderTop: `1px solid ${tokens.colorNeutralStroke2}`, marginTop: '6px', paddingTop: '10px' },
  heading: {
    margin: 0,
    fontSize: tokens.fontSizeBase300,
    lineHeight: tokens.lineHeightBase300,
    fontWeight: tokens.fontWeightSemibold,
  },
  says: { margin: 0 },
  quiet: { color: tokens.colorNeutralForeground2 },
  small: { fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
  flagged: { borderLeft: `3px solid ${tokens.colorPaletteMarigoldBorder2}`, paddingLeft: '8px' },
  // Takes no room between its neighbours while it has nothing to say.
  live: { ':empty': { position: 'absolute', border: 'none', padding: 0 } },
  list: { margin: 0, padding: 0, listStyleType: 'none', display: 'flex', flexDirection: 'column', rowGap: '6px' },
  buttons: { display: 'flex', flexWrap: 'wrap', columnGap: '8px', rowGap: '6px' },
  measures: { display: 'grid', gridTemplateColumns: 'minmax(0, 1fr) minmax(0, 1fr)', columnGap: '8px' },
  measure: { display: 'flex', flexDirection: 'column', minWidth: 0 },
  label: { color: tokens.colorNeutralForeground2 },
  input: { minWidth: 0, width: '100%' },
});

interface PartProps {
  readonly title?: string;
  /** A line above it sets it off from what stands before. */
  readonly ruled?: boolean;
  /** Takes the place of what was pressed: its heading comes to the top and takes the focus. */
  readonly arriving?: boolean;
  readonly children: ReactNode;
}

export function Part({ title, ruled = false, arriving = false, children }: PartProps) {
  const styles = useStyles();
  const heading = useRef<HTMLHeadingElement>(null);
  // Before the focus that went with the button is handed on.
  useLayoutEffect(() => {
    if (!arriving) return;
    heading.current?.focus({ preventScroll: true });
    heading.current?.scrollIntoView({ block: 'start' });
  }, [arriving]);
  return (
    <section className={mergeClasses(styles.part, ruled && styles.ruled)} aria-label={title}>
      {title && (
        <h2 ref={heading} className={styles.heading} tabIndex={arriving ? -1 : undefined}>
          {title}
        </h2>
      )}
      {children}
    </section>
  );
}

interface SaysProps {
  readonly quiet?: boolean;
  readonly small?: boolean;
  /** Waits for a person. */
  readonly flagged?: boolean;
  /** Read out when it changes: it has to be there beforehand, empty as long as there is nothing to say. */
  readonly live?: boolean;
  readonly id?: string;
  readonly children: ReactNode;
}

export function Says({ quiet = false, small = false, flagged = false, live = false, id, children }: SaysProps) {
  const styles = useStyles();
  const look = mergeClasses(
    styles.says,
    quiet && styles.quiet,
    small && styles.small,
    flagged && styles.flagged,
    live && styles.live,
  );
  return (
    <p id={id} className={look} role={live ? 'status' : undefined}>
      {typeof children === 'string' ? <Unbroken text={children} /> : children}
    </p>
  );
}

/** Sentences, each once. */
export function Sentences({
  texts,
  flagged = false,
  after,
}: {
  readonly texts: readonly string[];
  readonly flagged?: boolean;
  /** What stands behind a sentence. */
  readonly after?: (text: string) => ReactNode;
}) {
  const styles = useStyles();
  return (
    <ul className={styles.list}>
      {[...new Set(texts)].map((text) => (
        <li key={text} className={mergeClasses(styles.says, flagged && styles.flagged)}>
          <Unbroken text={text} />
          {after?.(text)}
        </li>
      ))}
    </ul>
  );
}

export function Buttons({ children }: { readonly children: ReactNode }) {
  return <div className={useStyles().buttons}>{children}</div>;
}

/** Two measures side by side. */
export function Measures({ children }: { readonly children: ReactNode }) {
  return <div className={useStyles().measures}>{children}</div>;
}

/** The label of a field that has a line of its own. */
export function Label({ of, children }: { readonly of: string; readonly children: ReactNode }) {
  return (
    <label htmlFor={of} className={useStyles().label}>
      {children}
    </label>
  );
}

interface MeasureProps {
  readonly label: string;
  readonly unit: string;
  readonly value: string;
  readonly faulty: boolean;
  /** The element that says what is wrong. */
  readonly saysId?: string | undefined;
  readonly onType: (text: string) => void;
}

/** A number with its unit, its label above it. */
export function Measure({ label, unit, value, faulty, saysId, onType }: MeasureProps) {
  const styles = useStyles();
  const id = useId();
  return (
    <div className={styles.measure}>
      <Label of={id}>{label}</Label>
      <Input
        id={id}
        className={styles.input}
        inputMode="decimal"
        aria-invalid={faulty}
        aria-describedby={faulty ? saysId : undefined}
        contentAfter={unit}
        value={value}
        onChange={(_, data) => onType(data.value)}
      />
    </div>
  );
}
