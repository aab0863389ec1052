/** The pane's screens as tabs, all of them in one line of a narrow pane. */
import { makeStyles, Tab, TabList } from '@fluentui/react-components';
import { SCREENS, type Screen } from '../state/tools';
import { SCREEN_WORDS, SCREENS_LABEL } from '../words';

const useStyles = makeStyles({
  tabs: { margin: '0 -6px', justifyContent: 'space-between' },
  // Five words in 285 pixels, each with room for its bold form: what is left goes between them.
  tab: {
    paddingLeft: '3px',
    paddingRight: '3px',
    minWidth: 0,
    '& .fui-Tab__content': { paddingLeft: 0, paddingRight: 0 },
  },
});

/** What a tab shows; one panel stands for all of them. */
export const PANEL_ID = 'setwright-panel';
export const tabId = (screen: Screen) => `setwright-tab-${screen}`;

interface NavProps {
  readonly screen: Screen;
  readonly onScreen: (screen: Screen) => void;
}

export function Nav({ screen, onScreen }: NavProps) {
  const styles = useStyles();
  return (
    <TabList
      className={styles.tabs}
      size="small"
      aria-label={SCREENS_LABEL}
      selectedValue={screen}
      onTabSelect={(_, { value }) => onScreen(value as Screen)}
    >
      {SCREENS.map((each) => (
        <Tab key={each} id={tabId(each)} value={each} className={styles.tab} aria-controls={PANEL_ID}>
          {SCREEN_WORDS[each]}
        </Tab>
      ))}
    </TabList>
  );
}
