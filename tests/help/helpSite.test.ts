import { readFileSync } from 'node:fs';
import { posix, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readComments, readExample, readRemarks } from '../../.config/help/comments.mjs';
import { unitOf } from '../../.config/help/functionPages.mjs';
import { groups, limitsOf } from '../../.config/help/limits.mjs';
import { inline, readPage } from '../../.config/help/markdown.mjs';
import { helpSite } from '../../.config/help/site.mjs';
import { readSource } from '../../.config/metadata.mjs';
import { FUNCTIONS } from '../../src/functions/implementations';
import { SCREENS } from '../../src/pane/state/tools';
import { SCREEN_WORDS } from '../../src/pane/words';
import { COLUMN_HELP } from '../../src/workbook/columnHelp';
import { SETTING_ROWS, TABLES } from '../../src/workbook/schema';

const root = resolve(import.meta.dirname, '../..');
const read = (path: string): string => readFileSync(resolve(root, path), 'utf8');
const { version }: { version: string } = JSON.parse(read('package.json'));
const { metadata } = readSource();
const sourceText = read('src/functions/functions.ts');
const comments = new Map(readComments(sourceText));
const pages = helpSite({
  metadata,
  sourceText,
  facts: { FUNCTIONS, TABLES, COLUMN_HELP, SETTING_ROWS, SCREENS, SCREEN_WORDS },
  version,
  styles: 'assets/help/help.css',
});
const pageAt = (path: string): string => pages.get(path) ?? '';
const asHtml = (text: string): string => inline(text);

/** Files of the site that the build puts beside the help. */
const beside = ['assets/help/help.css', 'icons/icon-32.png', 'notices.txt'];

describe('the help site', () => {
  test('has a page at the address that Excel is given for each function', () => {
    const missing = metadata.functions.filter(({ helpUrl }) => !pages.has(helpUrl));
    expect(missing).toEqual([]);
    expect(metadata.functions.length).toBe(Object.keys(FUNCTIONS).length);
  });

  test('leads nowhere that is not there, and to no heading that is not there', () => {
    const broken: string[] = [];
    for (const [path, text] of pages) {
      for (const [, to = ''] of text.matchAll(/ (?:href|src)="([^"]+)"/g)) {
        if (/^https:/.test(to)) continue;
        const [file = '', anchor] = to.split('#');
        const target = file === '' ? path : posix.join(posix.dirname(path), file);
        const there = pages.has(target) || beside.includes(target);
        const marked = anchor === undefined || pageAt(target).includes(` id="${anchor}"`);
        if (!there || !marked) broken.push(`${path} → ${to}`);
      }
    }
    expect(broken).toEqual([]);
  });

  test('can be reached from its start, every page of it', () => {
    const reached = new Set(['help.html']);
    for (const path of reached) {
      for (const [, to = ''] of pageAt(path).matchAll(/ href="([^"#]+)/g)) {
        const target = posix.join(posix.dirname(path), to);
        if (pages.has(target)) reached.add(target);
      }
    }
    expect([...pages.keys()].filter((path) => !reached.has(path))).toEqual([]);
  });

  test('is strict and plain: no script, no style but the sheet, one heading of the first rank, a skip link, no id twice', () => {
    for (const [path, text] of pages) {
      expect(text, path).toContain("default-src 'none'; style-src 'self'; img-src 'self'");
      expect(text, path).not.toMatch(/<script|<style| style=| on[a-z]+="/);
      expect(text.match(/<h1>/g), path).toHaveLength(1);
      expect(text, path).toMatch(/<body>\n<a class="skip" href="#content">/);
      const ids = [...text.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
      expect(new Set(ids).size, path).toBe(ids.length);
      expect(text, `${path} holds an undefined`).not.toMatch(/undefined|\[object/);
    }
  });

  test('marks where one is', () => {
    expect(pageAt('help/balance.html')).toContain('<a href="../help/balance.html" aria-current="page">');
    expect(pageAt('help/functions/SETPLAN.html')).toContain('<a href="../../help/functions.html" class="within">');
  });
});

describe('a function’s page', () => {
  test.each(metadata.functions.map((each) => [each.id, each] as const))(
    '%s has formula, source, unit of each argument, errors, limits, and an example as it reckons now',
    (id, each) => {
      const text = pageAt(each.helpUrl);
      const comment = comments.get(id);
      expect(comment?.remarks.formula, 'formula').not.toBe('');
      expect(comment?.remarks.source, 'source').not.toBe('');
      expect(comment?.errors).not.toBe('');
      expect(each.parameters.filter((parameter) => !unitOf(parameter))).toEqual([]);
      for (const { description = '' } of each.parameters) expect(text).toContain(asHtml(description));
      for (const limit of limitsOf(id)) expect(text).toContain(inline(limit, '../../'));
      const { args, formula } = readExample(id, comment?.example ?? '');
      expect(text).toContain(asHtml(formula));
      const value = (FUNCTIONS[id] as (...cells: unknown[]) => unknown)(...args);
      if (typeof value === 'number') expect(text).toContain(`gives <strong>${Number(value.toPrecision(10))}</strong>`);
      else if (typeof value === 'string') expect(text).toContain(`gives <strong>${value}</strong>`);
      else expect(text).toContain('<th scope="row">Club</th><td data-of="It shows">7 iron</td>');
    },
  );

  test('is listed once, under what it is about', () => {
    const listed = groups.flatMap(([, ids]) => ids);
    expect([...listed].sort()).toEqual(Object.keys(FUNCTIONS).sort());
  });

  test('a doc comment’s remarks are taken apart', () => {
    expect(readRemarks('Formula: a (b − 14) / P. Source: D. Eagar, "Grip\n Sizing", 2009. It is rough.')).toEqual({
      formula: 'a (b − 14) / P',
      source: 'D. Eagar, "Grip Sizing", 2009',
      sourceOf: '',
      more: 'It is rough.',
    });
  });

  test.each([
    ['gripMass(50, 2) //=> 53.5', '=REGRIP.X(50, 2)', '53.5'],
    ["toPoints('D3') //=> 33", '=REGRIP.X("D3")', '33'],
    ["toReading(39.96) //=> 'E0.0'", '=REGRIP.X(39.96)', 'E0.0'],
    ["x([['a', 1], ['b', 2]]) //=> two rows", '=REGRIP.X({"a",1;"b",2})', 'two rows'],
  ])('%s is a formula as it is typed', (text, formula, gives) => {
    expect(readExample('X', text)).toMatchObject({ formula, gives });
  });
});

describe('a table’s page', () => {
  test.each(TABLES.map((schema) => [schema.name, schema] as const))('%s tells of every column', (name, { columns }) => {
    const text = pageAt(`help/tables/${name}.html`);
    for (const { key, header } of columns) {
      const help = COLUMN_HELP[name]?.[key] ?? '';
      expect(help, `${name} ${key} has no help in columnHelp.ts`).not.toBe('');
      expect(text).toContain(asHtml(header));
      expect(text).toContain(asHtml(help));
    }
  });

  test('Settings tells of every row', () => {
    const text = pageAt('help/tables/Settings.html');
    for (const { name, meaning } of SETTING_ROWS) {
      expect(text).toContain(`<th scope="row">${asHtml(name)}</th>`);
      expect(text).toContain(asHtml(meaning));
    }
  });
});

describe('the written pages', () => {
  test('there is one for every tab, called what the tab is called', () => {
    for (const screen of SCREENS)
      expect(pageAt(`help/tabs/${screen}.html`)).toContain(`<h1>${SCREEN_WORDS[screen]}</h1>`);
  });

  test('the release notes begin with this version, and say the manifest’s', () => {
    const notes = read('.config/help/pages/releases.md');
    expect(/^## (\S+)$/m.exec(notes)?.[1]).toBe(version);
    expect(notes).toContain(`Version ${version}.0.`);
    expect(notes).toContain(`${metadata.functions.length} worksheet functions`);
  });

  test('the work goes from intake to closing', () => {
    const steps = [...read('.config/help/pages/work.md').matchAll(/^## \d\. (\w[\w-]*)/gm)].map(([, word]) => word);
    expect(steps).toEqual(['Intake', 'Plan', 'Quote', 'Stock', 'Ticket', 'Check-in', 'Close']);
  });

  test('the cautions say what the ticket says, with the same sources', () => {
    const cautions = read('.config/help/pages/cautions.md');
    const ticket = read('src/words/bench.ts');
    const sources = [
      ...ticket.matchAll(/29 CFR [\d.]+(?:\(b\))?|NIOSH Pocket Guide|\d+ (?:ppm|°C|psi|µg\/m³|mg\/m³)/g),
    ].map(String);
    expect(new Set(sources).size).toBeGreaterThan(8);
    expect([...new Set(sources)].filter((source) => !cautions.includes(source))).toEqual([]);
    for (const words of ['Local codes', 'makers’ instructions', 'licensed', 'clinician'])
      expect(cautions).toContain(words);
  });
});

describe('written pages', () => {
  test('headings, lists, tables, notes, code, links, emphasis; signs of HTML are escaped', () => {
    const { title, body } = readPage(
      '# One\n\n## A <b>\n\nSee [x](help/x.html) and `a * b`,\n_so_ **it** is.\n\n- one\n  more\n- two\n\n> Mind.\n\n| A | B |\n| - | - |\n| c | d |\n',
      '../',
    );
    expect(title).toBe('One');
    expect(body.split('\n')).toEqual([
      '<h2 id="a-b">A &lt;b&gt;</h2>',
      '<p>See <a href="../help/x.html">x</a> and <code>a * b</code>,',
      '<em>so</em> <strong>it</strong> is.</p>',
      '<ul>',
      '<li>one',
      'more</li>',
      '<li>two</li>',
      '</ul>',
      '<p class="note">Mind.</p>',
      '<table><thead><tr><th scope="col">A</th><th scope="col">B</th></tr></thead><tbody><tr><th scope="row">c</th><td data-of="B">d</td></tr></tbody></table>',
    ]);
  });
});
