/** Every word about saving a copy of the workbook. */
import { listed } from '../../words/listed';
import { countOf } from '../../words/readings';
import { sayUnkept, type Unkept } from '../open/words';

export const SAVE = {
  title: 'Save a copy',
  about:
    'A file of the whole workbook as it is now, for Excel and other spreadsheet programs. It is made in this page and sent nowhere.',
  kept: 'Kept: sheets, numbers and texts, formats, tables, drop-downs, highlights, names and how each sheet is printed.',
  remembered:
    'Kept too: what Setwright knows of this workbook. Open the copy here and its plans and settings are known again.',
  forgotten: 'Not kept: what can be undone.',
  without: 'Of the file that was opened, the copy is without:',
  save: 'Save',
  cancel: 'Cancel',
  looking: 'Looking through the workbook.',
  making: 'Making the file.',
  notLoaded: 'What makes the file could not be loaded. Check the connection, then press the button again.',
} as const;

/** What of the workbook the copy cannot hold; the same shape as what the host of the workbook finds. */
export interface CopyLosses {
  readonly valuesInstead: readonly string[];
  readonly otherFormulas: number;
  readonly rulesLeftOut: number;
  readonly filtered: readonly string[];
  readonly oddNames: readonly string[];
  readonly unkept: readonly Unkept[];
  readonly keptFormulas: number;
  readonly moved: readonly string[];
}

/** A sentence for each thing that the copy does not hold as the workbook does. */
export function sayLosses({
  valuesInstead,
  otherFormulas,
  keptFormulas,
  rulesLeftOut,
  filtered,
  moved,
}: CopyLosses): string[] {
  return [
    ...(valuesInstead.length > 0
      ? [
          `Live plans and Setwright’s functions become values, in ${listed(valuesInstead)}: they no longer follow the tables.`,
        ]
      : []),
    ...(otherFormulas > 0
      ? [
          `${countOf(otherFormulas, 'formula')} that not every program calculates ${otherFormulas === 1 ? 'becomes a value' : 'become values'}.`,
        ]
      : []),
    ...(keptFormulas > 0
      ? [
          `${countOf(keptFormulas, 'formula')} of the file ${keptFormulas === 1 ? 'is' : 'are'} kept as the file had ${keptFormulas === 1 ? 'it' : 'them'}, though not calculated here.`,
        ]
      : []),
    ...(moved.length > 0
      ? [
          `What hung on the places of cells is left out in ${listed(moved)}: cells were moved since the file was opened. It was a filter, page breaks, what is printed or small charts in cells.`,
        ]
      : []),
    ...(rulesLeftOut > 0
      ? [
          `${countOf(rulesLeftOut, 'highlight or check of entries', 'highlights or checks of entries')} that you made will be missing.`,
        ]
      : []),
    ...(filtered.length > 0 ? [`All rows show in ${listed(filtered)}, where a filter hides some now.`] : []),
  ];
}

/** What the opened file held and the copy does not; nothing where no file was opened. */
export function sayMissing({ unkept }: Pick<CopyLosses, 'unkept'>): string | null {
  const missing = sayUnkept(unkept);
  return missing.length > 0 ? `${SAVE.without} ${missing.join('; ')}.` : null;
}

/** Why nothing can be saved yet; null when something can. */
export function sayOddNames({ oddNames }: Pick<CopyLosses, 'oddNames'>): string | null {
  if (oddNames.length === 0) return null;
  return `A file cannot hold ${oddNames.length === 1 ? 'a sheet' : 'sheets'} called ${listed(oddNames)}: at most 31 characters, none of \\ / ? * [ ] : and no apostrophe at either end. Give ${oddNames.length === 1 ? 'it another name' : 'them other names'}, then save.`;
}

/** How far looking is, of one whole. */
export function sayLooked(share: number): string {
  return `${SAVE.looking.slice(0, -1)}: ${Math.floor(share * 100)} %`;
}

/** @param at when, by which it is known what a copy has not: whatever was done since */
export function saySaved(fileName: string, at: Date): string {
  const [hours, minutes] = [at.getHours(), at.getMinutes()].map((part) => String(part).padStart(2, '0'));
  return `Saved as it was at ${hours}:${minutes}: ${fileName}`;
}

export function sayNotMade(why: string): string {
  return `The file could not be made (${why}). The workbook is as it was; try again, or leave out what you added last.`;
}

export function sayFile(fileName: string): string {
  return `File: ${fileName}`;
}
