/** Words of a quote's sheet: what the client reads. */
export const QUOTE_SHEET = {
  title: 'Quote',
  number: 'Number',
  revision: 'Revision',
  job: 'Job',
  customer: 'Customer',
  option: 'Option',
  issued: 'Issued',
  validUntil: 'Valid until',
  description: 'Description',
  quantity: 'Quantity',
  unitPrice: 'Unit price',
  tax: 'Tax',
  amount: 'Amount',
  untaxed: 'none',
  lineDiscount: 'Discount on this line',
  lineDiscountFor: (reason: string) => `Discount: ${reason}`,
  sum: 'Sum of lines',
  gripDiscount: 'Discount on the grips',
  jobDiscount: 'Discount on the job',
  beforeTax: 'Before tax',
  total: (currency: string) => `Total, ${currency}`,
  deposit: 'Deposit on ordering',
  balance: 'Balance on collection',
  terms: 'Terms',
  taxAdded: (name: string, percent: string, net: string) => `${name}, ${percent} % on ${net}`,
  taxIncluded: (name: string, percent: string, net: string) => `In it: ${name}, ${percent} % on ${net}`,
} as const;

/** Words of the sheet that sets options beside each other. */
export const OPTIONS_SHEET = {
  title: 'Options',
  job: 'Job',
  customer: 'Customer',
  date: 'Prices of',
  what: 'What it costs',
  grips: 'Which grips',
  noGrips: 'the client’s own',
  tax: 'Tax',
  taxIn: 'Tax in it',
  beforeTax: 'Before tax',
  total: (currency: string) => `Total, ${currency}`,
  difference: (first: string) => `Difference from “${first}”`,
  foot: 'Not issued: a quote gets its number, and its last day, when one of these is chosen.',
} as const;

/** `1042`, and from the second on `1042 revision 2`. */
export function quoteIdText({ number, revision }: { readonly number: number; readonly revision: number }): string {
  return revision > 1 ? `${number} revision ${revision}` : String(number);
}
