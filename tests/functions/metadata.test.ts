import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { FUNCTIONS } from '../../src/functions/implementations';
import metadata from '../../src/functions/functions.json';

const source = readFileSync(resolve(import.meta.dirname, '../../src/functions/functions.ts'), 'utf8');

/**
 * Arguments in the order that workbooks know, optional ones in brackets. Formulas are saved with them: a line may grow at its end
 * by an optional argument, and nothing else here may change.
 */
const KNOWN: Readonly<Record<string, string>> = {
  TAPEGRAMS: '[tapedInches] [stripInches] [gsm]',
  GRIPMASS: 'gripGrams layers [layerGrams]',
  MASSPOINTS: 'grams positionInches',
  BALANCECHANGE:
    'oldGripGrams newGripGrams [oldLayers] [newLayers] [oldBalanceInches] [newBalanceInches] [layerGrams] [tapedInches]',
  LENGTHCHANGE: 'bodyGrams addedInches [plugGrams] [plugInches]',
  COMPENSATION: 'changePoints clubInches [weightInches]',
  COUNTERWEIGHT: 'changePoints [weightInches]',
  SWINGWEIGHT: 'totalGrams balanceInches',
  TOPOINTS: 'reading',
  TOREADING: 'points [decimals]',
  SHIFTREADING: 'reading changePoints [decimals]',
  FITTEDREADING: 'bareReading gripGrams layers [gripBalanceInches] [layerGrams] [twoWayGrams] [capInches] [bareGrams]',
  OUTSIDEDIAMETER: 'gripInches coreInches buttInches [layers] [stretch] [growth]',
  TAPELAYERS: 'gripInches coreInches buttInches targetInches [growth]',
  TARGETDIAMETER: 'handInches [fingerInches] [guide]',
  INERTIACHANGE: 'grams positionInches',
  RULECHECK: 'gripInches gripLengthInches clubInches [kind]',
  SETPLAN: 'clubs [stock] [settings] [weights] [tape] [job]',
  CLUBPLAN: 'club header [stock] [settings] [weights] [tape]',
  PLACEGRIPS: 'weighedGrams clubs [stock] [settings] [weights] [tape] [job]',
  LINETAX: 'quantity price taxPercent [included] [currency] [rounding]',
  LINETOTAL: 'quantity price taxPercent [included] [currency] [rounding]',
  SETMINUTES: 'clubs rates [stock] [settings] [weights] [tape] [job]',
};

/** Cell addresses in either style, which no name may look like. */
const ADDRESS = /^([A-Z]{1,3}\d+|R\d*C\d*|[RC]\d*)$/;

const signature = (each: (typeof metadata.functions)[number]): string =>
  each.parameters.map((one) => ('optional' in one && one.optional ? `[${one.name}]` : one.name)).join(' ');

describe('the functions that Excel is told about', () => {
  test('are the ones there are, and each has its implementation with as many arguments', () => {
    const told = metadata.functions.map(({ id }) => id);
    expect(told).toEqual(Object.keys(FUNCTIONS));
    for (const { id, parameters } of metadata.functions)
      expect([id, FUNCTIONS[id]?.length]).toEqual([id, parameters.length]);
  });

  test('keep their arguments: a later one is only appended, and optional', () => {
    for (const [id, known] of Object.entries(KNOWN)) {
      const now = metadata.functions.find((each) => each.id === id);
      expect(now, `${id} is gone`).toBeDefined();
      const all = now ? signature(now) : '';
      expect(all.slice(0, known.length), id).toBe(known);
      expect(all.slice(known.length), `${id}: what was appended is optional`).toMatch(/^( \[\w+\])*$/);
    }
  });

  test('are all guarded by the list above', () => {
    expect(metadata.functions.map(({ id }) => id).sort()).toEqual(Object.keys(KNOWN).sort());
  });

  test.each(metadata.functions.map((each) => [each.id, each] as const))(
    '%s can be typed and is explained',
    (id, each) => {
      expect(each.name).toBe(id);
      expect(id).toMatch(/^[A-Z]{3,}$/);
      expect(id).not.toMatch(ADDRESS);
      expect(each.helpUrl).toBe(`help/functions/${id}.html`);
      // Excel shows the description on one line, and on the web nothing else.
      expect(each.description).toMatch(/^[^\n]{20,160}\.$/);
      for (const { name, description } of each.parameters) {
        expect(description, `${id} ${name}`).toMatch(/\.$/);
        // What ends in a unit says it again where the tip is read.
        if (name.endsWith('Inches')) expect(description, `${id} ${name}`).toMatch(/\bin\b/);
        if (/grams$/i.test(name)) expect(description, `${id} ${name}`).toMatch(/, g\b/);
        if (name.endsWith('Points')) expect(description, `${id} ${name}`).toMatch(/points/);
      }
    },
  );
});

interface Example {
  readonly id: string;
  readonly text: string;
  readonly args: unknown[];
  readonly gives: string;
}

/** The example of each doc comment: `gripMass(50, 2) //=> 53.5226`. */
const examples: Example[] = [...source.matchAll(/@customfunction (\w+)[^]*?@example (\w+\((.*)\) \/\/=> (.*))\n/g)].map(
  ([, id = '', text = '', args = '', gives = '']) => ({
    id,
    text,
    args: JSON.parse(`[${args.replaceAll("'", '"')}]`) as unknown[],
    gives,
  }),
);

describe('the example of the doc comment', () => {
  test('is there for each', () => expect(examples.map(({ id }) => id)).toEqual(Object.keys(FUNCTIONS)));

  test.each(examples)('$text', ({ id, args, gives }) => {
    const value = (FUNCTIONS[id] as (...cells: unknown[]) => unknown)(...args);
    if (typeof value === 'number') {
      const decimals = gives.split('.')[1]?.length ?? 0;
      expect(value.toFixed(decimals)).toBe(Number(gives).toFixed(decimals));
    } else if (Array.isArray(value)) {
      expect(`${['no', 'one', 'two'][value.length]} row${value.length === 1 ? '' : 's'}`).toBe(gives);
    } else expect(`'${String(value)}'`).toBe(gives);
  });
});
