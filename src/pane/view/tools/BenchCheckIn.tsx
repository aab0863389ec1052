/** A job's check-in on the bench's screen: predicted against measured, club by club, and what to do about each. */
import type { ReactNode } from 'react';
import { canClose, type CheckedClub, type CheckIn, type Off, type Predicted } from '../../../core/index';
import { clubNext, predictedGrams, predictedReading, sayClosing, sayWait, STATE_WORDS } from '../../../words/bench';
import { readingText } from '../../../words/readings';
import { namesText, signedText, TABLE } from '../../words';
import { BENCH_WORDS } from './benchWords';
import { DataTable } from './DataTable';
import { Part, Says, Sentences } from './parts';

/** Reading above mass; where neither is known, one mark. */
function Both({ reading, mass }: { readonly reading: string | null; readonly mass: string | null }): ReactNode {
  if (reading === null && mass === null) return TABLE.none;
  return (
    <>
      {reading ?? TABLE.none}
      <br />
      {mass ?? TABLE.none}
    </>
  );
}

const grams = (value: number): string => `${value.toFixed(1)} g`;
const said = <T,>(value: T | undefined, say: (value: T) => string): string | null =>
  value === undefined ? null : say(value);

function cellsOf({ name, state, off, expected, measured }: CheckedClub): ReactNode[] {
  const by = ({ by: points }: Off): string => signedText(points);
  return [
    <>
      {name}
      <br />
      {STATE_WORDS[state]}
    </>,
    <Both
      reading={said<Predicted>(expected.reading, predictedReading)}
      mass={said<Predicted>(expected.massGrams, predictedGrams)}
    />,
    <Both reading={said(measured?.reading, readingText)} mass={said(measured?.massGrams, grams)} />,
    <Both reading={said(off.reading, by)} mass={said(off.massGrams, by)} />,
  ];
}

interface CheckedProps {
  /** Above 1 there is no set that waits for its first club. */
  readonly round: number;
  readonly isDone: boolean;
  readonly checkIn: CheckIn;
  readonly clubs: readonly CheckedClub[];
}

export function Checked({ checkIn, clubs, isDone, round }: CheckedProps) {
  const wait = round === 1 ? sayWait(checkIn) : undefined;
  const open = clubs.filter(({ state }) => state === 'open');
  const whoIsTold = new Map<string, string[]>();
  for (const club of open) {
    const text = clubNext(club, club.issues);
    if (text) whoIsTold.set(text, [...(whoIsTold.get(text) ?? []), club.name]);
  }
  const next = [...whoIsTold].map(([text, names]) => BENCH_WORDS.nextOf(namesText(names), text));
  return (
    <>
      {wait && <Says flagged>{wait}</Says>}
      <DataTable
        caption={BENCH_WORDS.judged}
        headers={[BENCH_WORDS.club, BENCH_WORDS.predicted, BENCH_WORDS.measured, BENCH_WORDS.off]}
        numbers={[3]}
        rows={clubs.map((club) => ({ key: club.row, cells: cellsOf(club) }))}
      />
      {next.length > 0 && (
        <Part title={BENCH_WORDS.next}>
          <Sentences texts={next} flagged />
        </Part>
      )}
      {!isDone && <Says>{sayClosing(canClose(checkIn))}</Says>}
    </>
  );
}
