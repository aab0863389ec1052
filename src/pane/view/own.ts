/** Lists of the shop's own that stand for tables, known to every sentence of the pane: none tells the owner to look where nothing is. */
import { createContext, useContext } from 'react';
import { ownLists, type OwnLists } from '../../workbook/ownNames';
import { sayOwn } from '../../workbook/ownSentences';
import { shopOf } from '../state/seen';
import type { ShopSeen } from '../state/work';

export const Own = createContext<OwnLists>(new Map());

/** The lists of the workbook that was seen. */
export function ownOf(seen: ShopSeen | null): OwnLists {
  const tables = seen ? Object.entries(shopOf(seen).matrices) : [];
  return ownLists(Object.fromEntries(tables.map(([name, matrix]) => [name, matrix?.[0]])));
}

/** A sentence with the names of those lists in it. */
export function useOwn(text: string): string {
  return sayOwn(text, useContext(Own));
}
