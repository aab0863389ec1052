/** How large a sheet is (Microsoft's published specifications and limits of Excel). */
export const MOST_ROWS = 1_048_576;
export const MOST_COLUMNS = 16_384;

/** How names begin that we give to plain lists of a shop's own. */
export const LIST_STEM = 'Setwright_List_';
