// A page for each table of a workbook, from the schema and the help that stands beside its cells, and a list of them all.
import { escaped, htmlTable, inline } from './markdown.mjs';

export const tablePath = (name) => `help/tables/${name}.html`;

const kinds = {
  text: 'Text',
  number: 'A number',
  count: 'A whole number',
  reading: 'A reading: D2.4, or points above A0',
  money: 'An amount',
  date: 'A date',
  choice: '',
  yesNo: 'Yes or No',
};

/** What may stand in a cell: words, or a number with its ends. */
export function accepted({ kind, unit, low, high, choices, from }) {
  if (choices) return choices.join(', ');
  if (from) return `A name from ${from.table}`;
  const ends =
    low !== undefined && high !== undefined ? `, ${low} to ${high}` : low !== undefined ? `, from ${low}` : '';
  return `${kinds[kind]}${ends}${unit && ends ? `\u00a0${unit}` : ''}`;
}

function tableBody(schema, help) {
  const rows = schema.columns.map((column) => [
    `${escaped(column.header)}${column.needed ? ' <span class="needed">needed</span>' : ''}`,
    escaped(accepted(column)),
    inline(help[column.key] ?? ''),
  ]);
  return `<p class="lead">${inline(schema.purpose)}</p>
<p>Headings may be your own: a column is known by many names, in any order. What a blank cell means stands with each.</p>
${htmlTable(['Column', 'What may stand in it', 'What it is'], rows)}`;
}

function settingsPart(settings) {
  const rows = settings.map((row) => [
    escaped(row.name),
    escaped(row.initial === '' ? 'blank' : `${row.initial}${row.unit ? ` ${row.unit}` : ''}`),
    escaped(accepted(row)),
    inline(row.meaning),
  ]);
  return `<h2 id="rows">Its rows</h2>${htmlTable(['Setting', 'To begin with', 'What may stand there', 'What it does'], rows)}`;
}

/** `[path, title, body]` of each table's page and of the list. */
export function tablePages({ tables, columnHelp, settings }) {
  const list = htmlTable(
    ['Table', 'What it holds'],
    tables.map(({ name, purpose }) => [`<a href="tables/${name}.html">${escaped(name)}</a>`, inline(purpose)]),
  );
  const intro =
    '<p>Set up this workbook makes these tables, each on a sheet of its own. A plan needs Jobs, Clubs and Stock; the others are used where they are there.</p>';
  const pages = tables.map((schema) => {
    const body = tableBody(schema, columnHelp[schema.name] ?? {});
    return [tablePath(schema.name), schema.name, schema.name === 'Settings' ? body + settingsPart(settings) : body];
  });
  return [['help/tables.html', 'Tables and columns', intro + list], ...pages];
}
