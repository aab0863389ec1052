/** Weighed grips: masses typed or pasted, which grip goes on which club, and what that saves. */
import { Button, makeStyles, Textarea } from '@fluentui/react-components';
import { useDeferredValue, useId, useMemo } from 'react';
import { placeGrips, type Evenness, type Placement } from '../../../core/index';
import { assign } from '../../../workbook/assignment';
import type { ClubChoices } from '../../../workbook/choices';
import { parseWeighed } from '../../../workbook/weighedText';
import { sayIssue } from '../../../words/issues';
import { sayHeadSaved, sayLeft, sayOddMass, sayUnserved } from '../../../words/place';
import { readingText } from '../../../words/readings';
import { onLetters } from '../../state/plot';
import { PLACE_WORDS } from '../../toolWords';
import { numberText, signedText, TABLE } from '../../words';
import { DataTable } from './DataTable';
import { Buttons, Label, Part, Says, Sentences } from './parts';
import type { ToolProps } from './toolProps';

const useStyles = makeStyles({ masses: { width: '100%', '& > textarea': { minHeight: '96px' } } });

const points = (value: number | undefined) => (value === undefined ? TABLE.none : numberText(value));
const grams = (value: number) => numberText(value);

function Gains({ placement }: { readonly placement: Placement }) {
  const { delivered, asPlaced } = placement;
  const row = (name: string, of: (evenness: Evenness) => string) => ({
    key: name,
    cells: [name, of(delivered), of(asPlaced)],
  });
  return (
    <DataTable
      caption={PLACE_WORDS.caption}
      headers={['', PLACE_WORDS.inOrder, PLACE_WORDS.placed]}
      numbers={[1, 2]}
      rows={[
        row(PLACE_WORDS.largest, ({ largestGap }) => points(largestGap)),
        row(PLACE_WORDS.usual, ({ rmsGap }) => points(rmsGap)),
        row(PLACE_WORDS.head, ({ headGrams }) => grams(headGrams)),
        row(PLACE_WORDS.butt, ({ buttGrams }) => grams(buttGrams)),
      ]}
    />
  );
}

function Placed({ placement }: { readonly placement: Placement }) {
  return (
    <DataTable
      caption={PLACE_WORDS.tableCaption}
      headers={[PLACE_WORDS.club, PLACE_WORDS.grip, PLACE_WORDS.mass, PLACE_WORDS.reading, PLACE_WORDS.miss]}
      numbers={[1, 2, 3, 4]}
      rows={placement.placed.map(({ row, name, grip, plan }) => {
        const { readingGripped: reading, gapPoints: gap } = plan;
        const reads =
          reading === undefined ? TABLE.none : onLetters(reading) ? readingText(reading) : signedText(reading);
        return {
          key: row,
          cells: [
            name,
            grip ? `${PLACE_WORDS.number}${grip.number}` : PLACE_WORDS.noGrip,
            grip ? numberText(grip.grams) : TABLE.none,
            reads,
            gap === undefined ? TABLE.none : signedText(0 - gap),
          ],
        };
      })}
    />
  );
}

/** What a person has to know before the grips go on. */
function toKnow(placement: Placement): readonly string[] {
  const texts = [sayUnserved(placement), sayLeft(placement), ...placement.odd.map(sayOddMass)];
  return texts.filter((text) => text !== undefined);
}

/** The masses as they are to stand in Clubs; a club for which none was left is planned with Stock's, so an old one goes. */
function takenOf({ placed, unserved }: Placement): ReadonlyMap<number, ClubChoices> {
  const without = new Set(unserved);
  return new Map(
    placed.flatMap(({ row, item = '', grip }): [number, ClubChoices][] => {
      if (grip) return [[row, { newMass: grip.grams, massOf: item }]];
      return without.has(row) ? [[row, { newMass: null }]] : [];
    }),
  );
}

export function PlaceScreen({ pane }: ToolProps) {
  const styles = useStyles();
  const id = useId();
  const { state, send, preview } = pane;
  const { typed } = state.tools.place;
  const input = preview?.ok ? preview.value.input : null;
  const read = useMemo(() => (typed.trim() === '' ? null : parseWeighed(typed)), [typed]);
  // A long list is placed once typing rests.
  const rested = useDeferredValue(read);
  const placed = useMemo(() => (rested?.ok && input ? placeGrips(input, rested.value, assign) : null), [rested, input]);
  const fault = read && !read.ok ? read.issue : placed && !placed.ok ? placed.issue : undefined;
  return (
    <>
      <Part title={PLACE_WORDS.title}>
        <Says quiet small>
          {PLACE_WORDS.how}
        </Says>
        <Label of={id}>{PLACE_WORDS.label}</Label>
        <Textarea
          id={id}
          className={styles.masses}
          resize="vertical"
          placeholder={PLACE_WORDS.example}
          aria-invalid={Boolean(fault)}
          aria-describedby={`${id}says`}
          value={typed}
          onChange={(_, { value }) => send({ on: 'tool', tool: 'place', change: { typed: value } })}
        />
        <Says id={`${id}says`} live quiet={!fault} flagged={Boolean(fault)}>
          {fault
            ? sayIssue(fault)
            : read?.ok
              ? PLACE_WORDS.read(
                  read.value.length,
                  Math.min(...read.value.map((grip) => grip.grams)),
                  Math.max(...read.value.map((grip) => grip.grams)),
                )
              : PLACE_WORDS.none}
        </Says>
      </Part>
      <Says live>{placed?.ok && sayHeadSaved(placed.value)}</Says>
      {placed?.ok && (
        <Part title={PLACE_WORDS.result} ruled>
          <Gains placement={placed.value} />
          <Sentences texts={toKnow(placed.value)} flagged />
          <Placed placement={placed.value} />
          <Buttons>
            <Button
              appearance="primary"
              onClick={() => send({ on: 'take', from: 'place', perClub: takenOf(placed.value) })}
            >
              {PLACE_WORDS.take}
            </Button>
          </Buttons>
          <Says quiet small>
            {PLACE_WORDS.taken}
          </Says>
        </Part>
      )}
    </>
  );
}
