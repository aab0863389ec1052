// The little of Markdown that the written help pages use: headings, paragraphs, lists, tables, code, quotes, links, bold, italics.
const entities = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
export const escaped = (text) => String(text).replace(/[&<>"]/g, (sign) => entities[sign]);

/** The name by which a heading can be linked to. */
export const anchorOf = (text) =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');

/** A line of text with its code, links and emphasis. `up` leads from the page to the site's root. */
export function inline(text, up = '') {
  const code = [];
  const kept = text.replace(
    /`([^`]+)`/g,
    (_, inner) => `\u0000${code.push(`<code>${escaped(inner)}</code>`) - 1}\u0000`,
  );
  return escaped(kept)
    .replace(
      /\[([^\]]+)\]\(([^)\s]+)\)/g,
      (_, words, to) => `<a href="${/^(?:[a-z]+:|#)/.test(to) ? to : up + to}">${words}</a>`,
    )
    .replace(/\*\*([^*]+)\*\*/g, '<strong>$1</strong>')
    .replace(/(^|[^\w])_([^_]+)_(?!\w)/g, '$1<em>$2</em>')
    .replace(/\u0000(\d+)\u0000/g, (_, index) => code[Number(index)]);
}

const isItem = (line) => /^(?:-|\d+\.) /.test(line);

/** A heading, list, table, quote, code or paragraph, from the lines that stand together. */
function block(lines, up) {
  const [first = ''] = lines;
  const heading = /^(#{2,4}) (.*)$/.exec(first);
  if (heading) {
    const level = heading[1].length;
    return `<h${level} id="${anchorOf(heading[2])}">${inline(heading[2], up)}</h${level}>`;
  }
  if (first.startsWith('```')) return `<pre tabindex="0"><code>${escaped(lines.slice(1, -1).join('\n'))}</code></pre>`;
  if (first.startsWith('|')) return table(lines, up);
  if (first.startsWith('> '))
    return `<p class="note">${inline(joined(lines.map((line) => line.replace(/^> ?/, ''))), up)}</p>`;
  if (isItem(first)) return list(lines, up);
  return `<p>${inline(joined(lines), up)}</p>`;
}

const joined = (lines) => lines.map((line) => line.trim()).join(' ');

function list(lines, up) {
  const items = [];
  for (const line of lines) {
    if (isItem(line)) items.push([line.replace(/^(?:-|\d+\.) +/, '')]);
    else items.at(-1).push(line);
  }
  const tag = /^\d/.test(lines[0]) ? 'ol' : 'ul';
  return `<${tag}>${items.map((item) => `<li>${inline(joined(item), up)}</li>`).join('')}</${tag}>`;
}

const cellsOf = (line) =>
  line
    .replace(/^\||\|$/g, '')
    .split('|')
    .map((cell) => cell.trim());

function table([head = '', , ...rows], up) {
  return htmlTable(
    cellsOf(head).map((cell) => inline(cell, up)),
    rows.map((row) => cellsOf(row).map((cell) => inline(cell, up))),
  );
}

/** A table whose first column names its rows. On a narrow screen each row becomes a block, so every cell carries its heading. */
export function htmlTable(head, rows) {
  const plain = head.map((cell) => cell.replace(/<[^>]+>/g, ''));
  const line = ([first, ...others]) =>
    `<tr><th scope="row">${first}</th>${others.map((cell, i) => `<td data-of="${plain[i + 1]}">${cell}</td>`).join('')}</tr>`;
  return `<table><thead><tr>${head.map((cell) => `<th scope="col">${cell}</th>`).join('')}</tr></thead><tbody>${rows.map(line).join('')}</tbody></table>`;
}

/** Lines that belong together: separated by blank lines, code by its fences. */
function blocksOf(text) {
  const blocks = [[]];
  let inCode = false;
  for (const line of text.split('\n')) {
    if (line.startsWith('```')) inCode = !inCode;
    if (line.trim() === '' && !inCode) blocks.push([]);
    else blocks.at(-1).push(line);
  }
  return blocks.filter((lines) => lines.length > 0);
}

/** A written page: its title (the first line, `# …`) and its body as HTML. */
export function readPage(text, up = '') {
  const [title = '', ...rest] = text.replaceAll('\r\n', '\n').split('\n');
  const body = blocksOf(rest.join('\n')).map((lines) => block(lines, up));
  return { title: title.replace(/^# /, ''), body: body.join('\n') };
}
