/** Sentences that name tables of ours, told by the lists of the shop's own that stand for them. */
import { quoted, type OwnLists } from './ownNames';

/** Where a sentence of ours names a table: after a word that leads to it, or as what the sentence is about. */
const NAMED =
  /\b(in|into|of|to|from|or|by|as|which|complete) (Stock|Clubs|Jobs|Rates|Tape|Weights|Sizes|Taxes)\b|\b(Stock|Clubs|Jobs|Rates|Tape|Weights|Sizes|Taxes)(?= (?:has|gives|lists|lacks|stays|still|is empty|does not|row \d))/g;

/** A sentence with the names of the shop's own lists in place of those of our tables; what stands in quotation marks is the shop's already. */
export function sayOwn(text: string, lists: OwnLists): string {
  if (lists.size === 0) return text;
  return text
    .split(/(“[^”]*”)/)
    .map((part) =>
      part.startsWith('“')
        ? part
        : part.replace(
            NAMED,
            (whole, lead: string | undefined, led: string | undefined, subject: string | undefined) => {
              const called = lists.get(led ?? subject ?? '');
              return called ? `${lead === undefined ? '' : `${lead} `}${quoted(called.list)}` : whole;
            },
          ),
    )
    .join('');
}
