/** What was issued before, and declaring one of it void. */
import { Button } from '@fluentui/react-components';
import { useState } from 'react';
import type { Registered } from '../../../workbook/quoteRegister';
import { dayWords } from '../../../words/intake';
import { quoteIdText } from '../../../words/quoteHead';
import { TABLE } from '../../words';
import { DataTable } from './DataTable';
import { Buttons, Part, Says } from './parts';
import { QUOTE_WORDS } from './quoteWords';

interface IssuedProps {
  readonly quotes: readonly Registered[];
  readonly busy: boolean;
  readonly onVoid: (quote: Registered) => void;
}

function totalText({ total, currency }: Registered): string {
  return total === undefined ? TABLE.none : `${total} ${currency}`;
}

export function IssuedPart({ quotes, busy, onVoid }: IssuedProps) {
  const [asked, setAsked] = useState<Registered | null>(null);
  // What was asked about may have been changed in the sheet meanwhile.
  const sure = asked && quotes.find((each) => quoteIdText(each) === quoteIdText(asked) && !each.isVoid);
  return (
    <Part title={QUOTE_WORDS.issued} ruled>
      {quotes.length === 0 && <Says quiet>{QUOTE_WORDS.noneIssued}</Says>}
      {quotes.length > 0 && (
        <DataTable
          caption={QUOTE_WORDS.issuedCaption}
          headers={[QUOTE_WORDS.number, QUOTE_WORDS.date, QUOTE_WORDS.total, '']}
          numbers={[2]}
          rows={quotes.map((quote) => ({
            key: quote.row,
            cells: [
              quoteIdText(quote),
              quote.issued === undefined ? TABLE.none : dayWords(quote.issued),
              totalText(quote),
              quote.isVoid ? (
                QUOTE_WORDS.isVoid
              ) : (
                <Button
                  size="small"
                  appearance="subtle"
                  aria-label={QUOTE_WORDS.declareVoidIt(quoteIdText(quote))}
                  disabledFocusable={busy}
                  onClick={() => setAsked(quote)}
                >
                  {QUOTE_WORDS.declareVoid}
                </Button>
              ),
            ],
          }))}
        />
      )}
      <Says flagged live>
        {sure && QUOTE_WORDS.sure(quoteIdText(sure))}
      </Says>
      {sure && (
        <>
          <div
            onKeyDown={({ key }) => {
              if (key === 'Escape') setAsked(null);
            }}
          >
            <Buttons>
              <Button
                disabledFocusable={busy}
                onClick={() => {
                  setAsked(null);
                  onVoid(sure);
                }}
              >
                {QUOTE_WORDS.yes}
              </Button>
              <Button autoFocus onClick={() => setAsked(null)}>
                {QUOTE_WORDS.no}
              </Button>
            </Buttons>
          </div>
        </>
      )}
    </Part>
  );
}
