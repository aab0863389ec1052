// A page for each worksheet function, from its doc comment and what Excel is told of it, and a list of them all.
import { namespace } from '../paths.mjs';
import { readExample } from './comments.mjs';
import { functionPath } from './functionPath.mjs';
import { groups, limitsOf } from './limits.mjs';
import { escaped, htmlTable, inline } from './markdown.mjs';

/** What an argument is counted in, by its name; its description says the rest. */
export function unitOf({ name, dimensionality }) {
  if (dimensionality === 'matrix')
    return name === 'weighedGrams' ? 'g' : name === 'header' || name === 'club' ? 'cells' : 'table';
  if (/Inches$/.test(name)) return 'in';
  if (/grams$/i.test(name)) return 'g';
  if (/points$/i.test(name)) return 'points';
  if (/reading$/i.test(name)) return 'reading';
  const others = {
    gsm: 'g/m²',
    layers: 'layers',
    oldLayers: 'layers',
    newLayers: 'layers',
    decimals: 'digits',
    stretch: 'times its length',
  };
  const more = {
    taxPercent: '%',
    price: 'currency',
    quantity: 'pieces',
    growth: '1 or blank',
    job: 'text',
    kind: 'text',
    included: 'Yes or No',
    currency: 'code',
    rounding: 'text',
  };
  return others[name] ?? more[name];
}

const usage = ({ name, parameters }) =>
  `=${namespace}.${name}(${parameters.map((each) => (each.optional ? `[${each.name}]` : each.name)).join(', ')})`;

function argumentsTable({ parameters }) {
  if (parameters.length === 0) return '<p>None.</p>';
  return htmlTable(
    ['Argument', 'Unit', 'Needed', 'What it is'],
    parameters.map((each) => [
      `<code>${escaped(each.name)}</code>`,
      escaped(unitOf(each) ?? ''),
      each.optional ? 'no' : 'yes',
      inline(each.description ?? ''),
    ]),
  );
}

const shown = (value) => (typeof value === 'number' ? String(Number(value.toPrecision(10))) : String(value));

/** A spilled result of a header row and one club, turned so that it can be read on a narrow page; blank columns left out. */
function spilled([head, ...rows]) {
  const columns = head
    .map((name, at) => [name, ...rows.map((row) => row[at])])
    .filter((cells) => cells.slice(1).some((cell) => cell !== '' && cell !== null));
  return htmlTable(
    ['Column', ...rows.map((_, at) => (rows.length === 1 ? 'It shows' : `Row ${at + 1} shows`))],
    columns.map((cells) => cells.map((cell) => escaped(shown(cell ?? '')))),
  );
}

/** The example as a formula, and what the function itself answers to it as the page is made. */
function example({ id, name }, comment, functions) {
  const { args, formula } = readExample(name, comment.example);
  const value = functions[id](...args);
  const code = `<pre tabindex="0"><code>${escaped(formula)}</code></pre>`;
  if (!Array.isArray(value)) return `${code}<p>gives <strong>${escaped(shown(value))}</strong>.</p>`;
  // One row says little without its headings, which SETPLAN fills for the same club.
  const isRow = id === 'CLUBPLAN';
  const whole = isRow ? functions.SETPLAN([args[1][0], args[0][0]], args[2]) : value;
  const note = isRow
    ? 'fills one row; here it stands beside the headings that SETPLAN gives it, and without what is blank:'
    : `fills ${value.length} rows, here turned on their side and without what is blank:`;
  return `${code}<p>${note}</p>${spilled(whole)}`;
}

const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);
const sourceText = (of, source) => inline(of ? `${capital(of)}: ${source}` : capital(source));

/** What the letters of a formula about moments stand for. */
function letters(formula) {
  if (!/ P(?:oints?)?\b/.test(formula)) return '';
  return inline(
    'P is one point, 49.61 g·in; x is a place and b a balance point, inches from the outer end of the cap; the fulcrum is at 14 in.',
  );
}

function functionBody(each, comment, functions) {
  const { formula, source, sourceOf, more } = comment.remarks;
  const [first, ...rest] = comment.paragraphs;
  return [
    `<p class="lead">${inline(first)}</p>`,
    ...rest.map((text) => `<p>${inline(text)}</p>`),
    `<pre tabindex="0"><code>${escaped(usage(each))}</code></pre>`,
    `<h2>Arguments</h2>`,
    argumentsTable(each),
    `<h2>What it gives</h2><p>${inline(comment.returns)}</p>`,
    `<h2>Formula</h2><p>${inline(formula)}${formula.endsWith('.') ? '' : '.'}</p>`,
    letters(formula) && `<p>${letters(formula)}</p>`,
    more && `<p>${inline(more)}</p>`,
    `<h2>Source</h2><p>${sourceText(sourceOf, source)}.</p>`,
    `<h2>Example</h2>`,
    example(each, comment, functions),
    `<h2>Errors</h2><p>${inline(comment.errors)}</p>`,
    `<h2>Limits</h2>`,
    ...limitsOf(each.id).map((text) => `<p>${inline(text, '../../')}</p>`),
  ]
    .filter(Boolean)
    .join('\n');
}

/** `[path, title, body]` of each function's page and of the list. */
export function functionPages(metadata, comments, functions) {
  const pages = metadata.functions.map((each) => [
    functionPath(each.id),
    each.name,
    functionBody(each, comments.get(each.id), functions),
  ]);
  return [['help/functions.html', 'Worksheet functions', functionList(metadata)], ...pages];
}

function functionList({ functions }) {
  const byId = new Map(functions.map((each) => [each.id, each]));
  const part = ([title, ids]) => {
    const rows = ids.map((id) => [
      `<a id="${id}" href="functions/${id}.html">${id}</a>`,
      inline(byId.get(id).description),
    ]);
    return `<h2>${escaped(title)}</h2>${htmlTable(['Function', 'What it gives'], rows)}`;
  };
  return [
    `<p>Type <code>=${namespace}.</code> in a cell to see them. Lengths are in inches and masses in grams; a metric sheet puts <code>CONVERT</code> round an argument: <code>CONVERT(A2, "mm", "in")</code>. A bad argument gives <code>#VALUE!</code>, a sound question without an answer <code>#N/A</code>, both with a sentence that says why where Excel shows one.</p>`,
    ...groups.map(part),
  ].join('\n');
}
