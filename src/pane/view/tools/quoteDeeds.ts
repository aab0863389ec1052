/** What is done with quotes. */
import { fillOptions } from '../../../workbook/fillOptions';
import { issueQuote, voidQuote, type IssueRequest } from '../../../workbook/issueQuote';
import type { QuoteId } from '../../../workbook/quoteDone';
import type { TermsChosen } from '../../../workbook/readMoney';
import { sayIssued, sayOptions, sayVoided } from '../../../words/quoteOutcomes';
import type { Deed } from '../../state/deed';
import { decides, type OptionAsked } from '../../../workbook/quoteScope';
import { QUOTE_WORDS } from './quoteWords';

export function issueDeed(request: IssueRequest): Deed {
  return {
    doing: 'Issuing the quote…',
    done: 'Quote issued',
    failed: 'No quote was issued',
    run: async (port) => {
      const end = await issueQuote(port, request);
      const unlike = end.done && 'job' in request.what && decides(request.what.choices ?? {});
      return { end, text: unlike ? `${sayIssued(end)} ${QUOTE_WORDS.notInClubs}` : sayIssued(end) };
    },
  };
}

export function voidDeed(id: QuoteId): Deed {
  return {
    doing: 'Declaring the quote void…',
    done: 'Quote void',
    failed: 'The quote was not declared void',
    run: async (port, _shop, over) => {
      const end = await voidQuote(port, id, over);
      return { end, text: sayVoided(end) };
    },
  };
}

export function optionsDeed(job: string, terms: TermsChosen, options: readonly OptionAsked[]): Deed {
  return {
    doing: 'Writing the options…',
    done: 'Options written',
    failed: 'The options were not written',
    run: async (port, shop, over) => {
      const end = await fillOptions(port, shop, { job, terms, options, agreed: over ?? undefined });
      return { end, text: sayOptions(end) };
    },
  };
}
