import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { GREY, PETROL } from '../../src/workbook/palette';

const src = resolve(import.meta.dirname, '../../src');

test('the page wears the colours of pane and sheets', () => {
  const css = readFileSync(join(src, 'tryout/tryout.css'), 'utf8');
  const [light = '', dark = ''] = css.split("[data-theme='dark']");
  const of = (part: string, name: string) => new RegExp(`--${name}: (#\\w+)`).exec(part)?.[1]?.toUpperCase();
  const wanted = { ink: GREY.ink, soft: GREY.soft, line: GREY.line, ghost: GREY.band, accent: PETROL[80] };
  for (const [name, colour] of Object.entries(wanted)) expect(of(light, name), name).toBe(colour.toUpperCase());
  expect(of(dark, 'accent')).toBe(PETROL[120].toUpperCase());
});

test('no sheet has a colour of its own', () => {
  const folder = join(src, 'workbook');
  const files = readdirSync(folder).filter((name) => name.endsWith('.ts') && name !== 'palette.ts');
  const own = files.flatMap((name) =>
    [...readFileSync(join(folder, name), 'utf8').matchAll(/'#[0-9a-f]{6}'/gi)].map(([colour]) => `${name} ${colour}`),
  );
  expect(own.filter((each) => !each.endsWith("'#FFFFFF'"))).toEqual([]);
});
