/** Text in which no line ends within a day, a job's number or a figure with its unit, and lists of the shop's own have their names. */
import { makeStyles } from '@fluentui/react-components';
import { Fragment } from 'react';
import { useOwn } from './own';

const useStyles = makeStyles({ whole: { whiteSpace: 'nowrap' } });

/** A day, a job's number, a code such as a grip's, a figure with its unit or its currency: read as one. */
const WHOLE = /(\d{4}-\d\d-\d\d|\b[A-Z]{1,6}-[A-Z]?\d+[A-Z]?\b|[−+]?[\d.,]*\d (?:%|(?:g|in|pt|yd|ml|min|[A-Z]{3})\b))/;

/** A sentence whose figures stay beside their units. */
export function Unbroken({ text }: { readonly text: string }) {
  const styles = useStyles();
  // What was split at stands at every second place.
  return useOwn(text)
    .split(WHOLE)
    .map((part, at) =>
      at % 2 === 0 ? (
        <Fragment key={at}>{part}</Fragment>
      ) : (
        <span key={at} className={styles.whole}>
          {part}
        </span>
      ),
    );
}
