/** What the pane's page says where there is no Excel. */
import { FluentProvider, Link, makeStyles, tokens } from '@fluentui/react-components';
import { useEffect } from 'react';
import { THEMES, wearTheme, type ThemeName } from '../theme';
import { COMMON, OUTSIDE } from '../words';

const useStyles = makeStyles({
  page: { padding: '16px', fontSize: tokens.fontSizeBase300, lineHeight: tokens.lineHeightBase300 },
  name: { margin: '0 0 8px', fontSize: tokens.fontSizeBase500, lineHeight: tokens.lineHeightBase500 },
  text: { margin: '0 0 12px' },
});

interface OutsideProps {
  readonly theme: ThemeName;
  readonly tryoutUrl: string;
  /** There is an Excel, but it cannot do what the pane needs. */
  readonly tooOld: boolean;
}

export function Outside({ theme, tryoutUrl, tooOld }: OutsideProps) {
  const styles = useStyles();
  useEffect(() => wearTheme(theme), [theme]);
  return (
    <FluentProvider theme={THEMES[theme]} style={{ minHeight: '100%' }}>
      <main className={styles.page}>
        <h1 className={styles.name}>{COMMON.name}</h1>
        <p className={styles.text}>{tooOld ? OUTSIDE.tooOld : OUTSIDE.text}</p>
        <Link href={tryoutUrl}>{OUTSIDE.link}</Link>
      </main>
    </FluentProvider>
  );
}
