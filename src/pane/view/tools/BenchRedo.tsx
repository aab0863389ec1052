/** Choosing the clubs of a closed job that came back. */
import { Button, Checkbox } from '@fluentui/react-components';
import { useState } from 'react';
import { BENCH_WORDS } from './benchWords';
import { Buttons, Part, Says } from './parts';

interface RedoProps {
  /** Names of the clubs that got a grip. */
  readonly clubs: readonly string[];
  readonly busy: boolean;
  readonly onBegin: (clubs: readonly string[]) => void;
}

export function BenchRedo({ clubs, busy, onBegin }: RedoProps) {
  const [chosen, choose] = useState<readonly string[]>([]);
  const names = [...new Set(clubs)];
  const howMany = (name: string): number => clubs.filter((each) => each === name).length;
  const still = chosen.filter((name) => names.includes(name));
  return (
    <Part title={BENCH_WORDS.redoTitle} ruled>
      <Says quiet small>
        {BENCH_WORDS.redoHow}
      </Says>
      <div role="group" aria-label={BENCH_WORDS.redoTitle}>
        {names.map((name) => (
          <Checkbox
            key={name}
            label={BENCH_WORDS.redoClub(name, howMany(name))}
            checked={still.includes(name)}
            onChange={(_, { checked }) =>
              choose(checked === true ? [...still, name] : still.filter((each) => each !== name))
            }
          />
        ))}
      </div>
      {names.length < clubs.length && (
        <Says quiet small>
          {BENCH_WORDS.redoAlike}
        </Says>
      )}
      <Buttons>
        <Button disabledFocusable={busy || still.length === 0} onClick={() => onBegin(still)}>
          {BENCH_WORDS.redo}
        </Button>
      </Buttons>
    </Part>
  );
}
