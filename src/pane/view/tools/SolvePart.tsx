/** Choosing grip and layers club by club: what may be chosen, what counts first, and what came of it. */
import { Button, makeStyles, ProgressBar } from '@fluentui/react-components';
import { useCallback, useEffect, useId, useState } from 'react';
import {
  AIMS,
  solveSteps,
  type Aim,
  type PlanInput,
  type Solution,
  type Solved,
  type SolveRequest,
  type Tried,
} from '../../../core/index';
import { assign } from '../../../workbook/assignment';
import { AIM_WORDS, ONE_MODEL, sayCannot, SIZES_DIFFER_WORDS, solutionText } from '../../../words/choose';
import { readingText, thousandths } from '../../../words/readings';
import { itemsTicked, takenOfSolved } from '../../state/compareModel';
import { onLetters } from '../../state/plot';
import type { CompareForm } from '../../state/tools';
import { useLong } from '../../state/useLong';
import { SOLVE_WORDS } from '../../toolWords';
import { signedText, TABLE } from '../../words';
import { Choice, FieldLine } from '../fields';
import { DataTable } from './DataTable';
import { Buttons, Part, Says, Sentences } from './parts';

const useStyles = makeStyles({
  fold: { '& > summary': { cursor: 'pointer', minHeight: '24px' } },
});

interface SolveProps {
  readonly input: PlanInput;
  /** Whether `input` is about to change: what is asked for meanwhile is looked for among what comes. */
  readonly settling: boolean;
  readonly tried: readonly Tried[];
  readonly form: CompareForm;
  readonly onForm: (change: Partial<CompareForm>) => void;
  readonly onTake: (solved: Solved) => void;
}

/** The aims with one of them moved to a place; the one that stood there takes the other's. */
function withAim(aims: CompareForm['aims'], place: number, aim: Aim): CompareForm['aims'] {
  const [first, second, third] = aims.map((each, at) => (at === place ? aim : each === aim ? aims[place] : each));
  return [first ?? aims[0], second ?? aims[1], third ?? aims[2]];
}

function Fields({ form, ticked, onForm }: Pick<SolveProps, 'form' | 'onForm'> & { readonly ticked: number }) {
  const id = useId();
  const aims = Object.fromEntries(AIMS.map((aim) => [aim, AIM_WORDS[aim]])) as Record<Aim, string>;
  return (
    <>
      <FieldLine label={SOLVE_WORDS.from} id={`${id}from`}>
        <Choice
          id={`${id}from`}
          value={form.solveFrom}
          options={SOLVE_WORDS.fromOptions(ticked)}
          onChoose={(solveFrom) => onForm({ solveFrom })}
        />
      </FieldLine>
      <FieldLine label={SOLVE_WORDS.sizes} id={`${id}sizes`}>
        <Choice
          id={`${id}sizes`}
          value={form.sizesDiffer}
          options={SIZES_DIFFER_WORDS}
          onChoose={(sizesDiffer) => onForm({ sizesDiffer })}
        />
      </FieldLine>
      {SOLVE_WORDS.aims.map((label, place) => (
        <FieldLine key={label} label={label} id={`${id}${place}`}>
          <Choice
            id={`${id}${place}`}
            value={form.aims[place] ?? 'weight'}
            options={aims}
            onChoose={(aim) => onForm({ aims: withAim(form.aims, place, aim) })}
          />
        </FieldLine>
      ))}
    </>
  );
}

interface FoundProps {
  readonly solution: Solution;
  readonly input: PlanInput;
  readonly onTake: (solved: Solved) => void;
}

function Found({ solution, input, onTake }: FoundProps) {
  const styles = useStyles();
  const cannot = solution.cannot.map((each) => sayCannot(each, input.settings.sizeToleranceInches));
  const losing = solution.solved ? losingTarget(solution, input) : [];
  return (
    <>
      {solution.solved && (
        <>
          <DataTable
            caption={SOLVE_WORDS.caption}
            headers={[
              SOLVE_WORDS.club,
              SOLVE_WORDS.grip,
              SOLVE_WORDS.layers,
              SOLVE_WORDS.measures,
              SOLVE_WORDS.reading,
            ]}
            numbers={[2, 3, 4]}
            rows={solution.choices.map(({ row, club, item, layers, plan }) => ({
              key: row,
              cells: [
                club.name,
                item,
                layers,
                plan.upper ? thousandths(plan.upper.inches) : TABLE.none,
                readsText(plan.readingAfter ?? plan.readingGripped, plan.shift?.total),
              ],
            }))}
          />
          {losing.length > 0 && <Says flagged>{SOLVE_WORDS.losingTarget(losing)}</Says>}
          <Buttons>
            <Button appearance="primary" onClick={() => onTake(solution)}>
              {SOLVE_WORDS.take}
            </Button>
          </Buttons>
        </>
      )}
      {cannot.length > 0 &&
        (solution.solved ? (
          <details className={styles.fold}>
            <summary>{SOLVE_WORDS.cannotTitle}</summary>
            <Sentences texts={cannot} />
          </details>
        ) : (
          <Sentences texts={cannot} />
        ))}
    </>
  );
}

function readsText(reading: number | undefined, change: number | undefined): string {
  if (reading !== undefined && onLetters(reading)) return readingText(reading);
  return change === undefined ? TABLE.none : `${signedText(change)} pt`;
}

/** Whether what was asked is what would be asked now. */
function isSame(asked: SolveRequest, now: SolveRequest): boolean {
  const { input, ...wanted } = asked;
  const { input: inputNow, ...wantedNow } = now;
  return input === inputNow && JSON.stringify(wanted) === JSON.stringify(wantedNow);
}

/** Clubs whose target diameter goes from Clubs with a solution: none of its layers are wanted there, and the plan would find some. */
function losingTarget(solution: Solved, input: PlanInput): readonly string[] {
  const taken = takenOfSolved(solution, input);
  return solution.choices.filter(({ row }) => taken.get(row)?.targetDiameter === null).map(({ club }) => club.name);
}

export function SolvePart({ input, settling, tried, form, onForm, onTake }: SolveProps) {
  const ticked = itemsTicked(form.shortlist, tried);
  const [wanted, setWanted] = useState(false);
  const [asked, setAsked] = useState<SolveRequest | null>(null);
  const begin = useCallback(() => solveSteps(asked as SolveRequest, assign), [asked]);
  const { answer, settled, progress } = useLong(asked ? begin : null);
  const fromShortlist = form.solveFrom === 'shortlist';
  const nothing = fromShortlist && ticked.length === 0;
  const request = (): SolveRequest => ({
    input,
    shortlist: fromShortlist ? ticked : undefined,
    aims: form.aims,
    sizesDiffer: form.sizesDiffer,
  });
  const now = request();
  useEffect(() => {
    if (!wanted || settling) return;
    setWanted(false);
    setAsked(request());
  }, [wanted, settling]);
  const running = wanted || (asked !== null && !settled);
  const found = asked && settled && !wanted ? answer : undefined;
  const stop = (): void => {
    setWanted(false);
    setAsked(null);
  };
  const stale = asked !== null && found !== undefined && !isSame(asked, now);
  return (
    <Part title={SOLVE_WORDS.title} ruled>
      <Says quiet small>
        {ONE_MODEL}
      </Says>
      <Fields form={form} ticked={ticked.length} onForm={onForm} />
      {nothing && <Says quiet>{SOLVE_WORDS.noTicks}</Says>}
      <Buttons>
        <Button appearance="primary" disabledFocusable={running || nothing} onClick={() => setWanted(true)}>
          {SOLVE_WORDS.go}
        </Button>
        {running && <Button onClick={stop}>{SOLVE_WORDS.stop}</Button>}
      </Buttons>
      {running && progress && (
        <>
          <ProgressBar
            aria-label={SOLVE_WORDS.working(progress.done, progress.of)}
            max={progress.of}
            value={progress.done}
          />
          <Says quiet small>
            {SOLVE_WORDS.working(progress.done, progress.of)}
          </Says>
        </>
      )}
      <Says live flagged={stale || found?.solved === false}>
        {stale ? SOLVE_WORDS.stale : found && solutionText(found)}
      </Says>
      {found && !stale && <Found solution={found} input={input} onTake={onTake} />}
    </Part>
  );
}
