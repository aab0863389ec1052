/** Sentences for how the jobs on quotes end. */
import type { IssueDone, OptionsDone, VoidDone } from '../workbook/quoteDone';
import { alikeLines, moneyText, sayQuoteIssue } from './money';
import { sayNotDone, sayOccupied } from './outcomes';
import { quoteIdText } from './quoteHead';
import { countOf } from './readings';

/** How issuing a quote ended. */
export function sayIssued(end: IssueDone): string {
  if (end.done) {
    return `Quote ${quoteIdText(end)} over ${moneyText(end.total)} stands in ${end.sheet}, and in Quotes. A later one for the same job becomes its next revision; this one stays as it is.`;
  }
  switch (end.reason) {
    case 'notQuoted':
      return `Nothing was written. ${end.issues.map(sayQuoteIssue).join(' ')}`;
    case 'totalChanged':
      return `The total was ${moneyText(end.shown)} when it was shown and is ${moneyText(end.now)} by now: something in the tables changed. Nothing was written; look at the lines, then issue again.`;
    case 'registerUnread':
      return `${sayRegisterIssue(end.issue)} Until then no number is given, and nothing was written.`;
    case 'registerBusy':
      return 'Somebody else is writing into Quotes. Nothing was written; try again in a moment.';
    case 'usedTwice':
      return `Quote ${quoteIdText(end)} was written into ${end.sheet}, but Quotes holds this number twice by now: it was given elsewhere at the same moment. Set one of the two rows to Void and issue that quote again.`;
    case 'notVerified':
      return `Quote ${quoteIdText(end)} was written, but ${end.sheet} or its row in Quotes does not read as it should. Look at both before you hand it out.`;
    default:
      return sayNotDone(end);
  }
}

/** Why the register cannot give a number, and what to do. */
export function sayRegisterIssue(issue: Extract<VoidDone, { reason: 'registerUnread' }>['issue']): string {
  if (issue.code !== 'duplicate') return sayQuoteIssue(issue);
  const first = issue.detail === undefined ? '' : `, as in row ${issue.detail}`;
  return `${issue.field} is ${String(issue.got)}${first}: a number is given once. Correct one of the two rows.`;
}

/** How declaring a quote void ended. */
export function sayVoided(end: VoidDone): string {
  if (end.done) {
    return `Quote ${quoteIdText(end)} is Void in Quotes. Its sheet stays as it is, and its number is not given again.`;
  }
  switch (end.reason) {
    case 'occupied':
      return sayOccupied(end);
    case 'registerUnread':
      return `${sayRegisterIssue(end.issue)} Nothing was written.`;
    case 'notFound':
      return `Quotes has no row for quote ${quoteIdText(end)} any more. Nothing was written.`;
    case 'voidAlready':
      return `Quote ${quoteIdText(end)} is Void already.`;
    default:
      return sayNotDone(end);
  }
}

/** How setting options beside each other ended. */
export function sayOptions(end: OptionsDone): string {
  if (end.done) {
    const alike = alikeLines(end)
      .map((text) => ` ${text}`)
      .join('');
    return `${countOf(end.options, 'option')} side by side in ${end.sheet}.${alike} No number is given until one of them is issued.`;
  }
  switch (end.reason) {
    case 'occupied':
      return sayOccupied(end);
    case 'noRoom':
      return 'The options would run over the edge of the sheet.';
    case 'notQuoted':
      return `Nothing was written. ${end.issues.map((issue) => `${issue.option}: ${sayQuoteIssue(issue)}`).join(' ')}`;
    case 'notCompared':
      return `Nothing was written. ${sayQuoteIssue(end.issue)}`;
    default:
      return sayNotDone(end);
  }
}
