/** Where there is nothing to preview: what is missing and what to do about it. */
import { Button, makeStyles, tokens } from '@fluentui/react-components';
import type { ReactNode } from 'react';
import { Unbroken } from './Unbroken';

const useStyles = makeStyles({
  box: {
    display: 'flex',
    flexDirection: 'column',
    alignItems: 'flex-start',
    rowGap: '8px',
    padding: '16px 0',
  },
  title: {
    margin: 0,
    fontSize: tokens.fontSizeBase400,
    lineHeight: tokens.lineHeightBase400,
    fontWeight: tokens.fontWeightSemibold,
  },
  text: { margin: 0 },
});

interface MissingProps {
  readonly title: string;
  readonly text: string;
  readonly button?: { readonly says: string; readonly onPress: () => void };
  readonly children?: ReactNode;
}

export function Missing({ title, text, button, children }: MissingProps) {
  const styles = useStyles();
  return (
    <div className={styles.box}>
      <h2 className={styles.title}>{title}</h2>
      <p className={styles.text}>
        <Unbroken text={text} />
      </p>
      {button && (
        <Button appearance="primary" onClick={button.onPress}>
          {button.says}
        </Button>
      )}
      {children}
    </div>
  );
}
