/**
 * Formulas that are half typed. While a person types, the library reads what stands there so far, `=SUM(Clubs[#A`; brackets that are
 * still open then count as open in every formula it reads after that, and a comma parts no arguments in any of them.
 */
import type { Injector } from '@univerjs/core';
import { LexerTreeBuilder } from '@univerjs/engine-formula';

/** What the reader keeps while it reads one formula, as its source has it. */
interface Reader {
  _resetTemp(): void;
  _squareBracketState: number;
  _tableBracketState: boolean;
  _openBracketNormalIndexStack: number[];
}

/** Has the reader begin each formula with no bracket open. */
export function readEachAnew(injector: Injector): void {
  const reader = injector.get(LexerTreeBuilder) as unknown as Reader;
  const reset = reader._resetTemp.bind(reader);
  reader._resetTemp = () => {
    reset();
    reader._squareBracketState = 0;
    reader._tableBracketState = false;
    reader._openBracketNormalIndexStack = [];
  };
}
