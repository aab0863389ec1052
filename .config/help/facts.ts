/** What the help is made from beside the doc comments: the tables, their help, the settings, and the functions to reckon examples. */
export { FUNCTIONS } from '../../src/functions/implementations';
export { SCREENS } from '../../src/pane/state/tools';
export { SCREEN_WORDS } from '../../src/pane/words';
export { COLUMN_HELP } from '../../src/workbook/columnHelp';
export { SETTING_ROWS, TABLES } from '../../src/workbook/schema';
