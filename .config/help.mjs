// The functions' help page, made from the same doc comments as their metadata, so that it cannot fall behind them.
import ts from 'typescript';
import { namespace } from './paths.mjs';

const entities = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text) => text.replace(/[&<>"]/g, (sign) => entities[sign]);
const prose = (text) => escaped(text).replace(/`([^`]+)`/g, '<code>$1</code>');
const commentText = (comment) => ts.getTextOfJSDocComment(comment)?.trim() ?? '';

/** What a function's doc comment says beyond its metadata: paragraphs, what it returns, examples. */
function readComment(declaration) {
  const tags = ts.getJSDocTags(declaration);
  const named = (name) => tags.filter((tag) => tag.tagName.text === name).map((tag) => commentText(tag.comment));
  const comment = ts.getJSDocCommentsAndTags(declaration).find(ts.isJSDoc)?.comment;
  return {
    paragraphs: commentText(comment).split(/\n\s*\n/),
    remarks: named('remarks'),
    returns: named('returns').join(' '),
    errors: named('throws'),
    examples: named('example'),
  };
}

/** A value of an example as it is typed in a cell. */
function asCellText(value) {
  if (!Array.isArray(value)) return JSON.stringify(value).replaceAll('\\"', '""');
  return `{${value.map((row) => row.map(asCellText).join(',')).join(';')}}`;
}

/** An example of the doc comment, `gripMass(50, 2) //=> 53.5`, as a cell's formula and what it shows. */
export function exampleInCell(name, text) {
  const [, words, result] = /^\w+\((.*)\)(?:\s*\/\/=>\s*(.*))?$/s.exec(text) ?? [];
  if (words === undefined) return text;
  const values = JSON.parse(`[${words.replaceAll("'", '"')}]`);
  const formula = `=${namespace}.${name}(${values.map(asCellText).join(', ')})`;
  return result === undefined ? formula : `${formula}   gives ${result.replace(/^'(.*)'$/, '$1')}`;
}

/** By function ID, the doc comments of a source's exported functions. */
export function readComments(sourceText) {
  const source = ts.createSourceFile('functions.ts', sourceText, ts.ScriptTarget.Latest, true);
  const declarations = source.statements.filter(ts.isFunctionDeclaration);
  const tagged = declarations.filter((each) =>
    ts.getJSDocTags(each).some((tag) => /^customfunction$/i.test(tag.tagName.text)),
  );
  return tagged.map((each) => {
    const tag = ts.getJSDocTags(each).find(({ tagName }) => /^customfunction$/i.test(tagName.text));
    return [commentText(tag.comment).split(/\s+/)[0] || each.name.text.toUpperCase(), readComment(each)];
  });
}

function parameterRow({ name, description = '', optional }) {
  return `<tr><th scope="row">${escaped(name)}</th><td>${optional ? 'no' : 'yes'}</td><td>${prose(description)}</td></tr>`;
}

function section({ id, name, parameters }, comment) {
  const usage = `=${namespace}.${name}(${parameters.map((each) => (each.optional ? `[${each.name}]` : each.name)).join(', ')})`;
  const head = '<tr><th scope="col">Argument</th><th scope="col">Needed</th><th scope="col">What it is</th></tr>';
  return [
    `<section id="${escaped(id)}">`,
    `<h2>${escaped(name)}</h2>`,
    ...comment.paragraphs.map((text) => `<p>${prose(text)}</p>`),
    `<pre><code>${escaped(usage)}</code></pre>`,
    parameters.length > 0
      ? `<table><thead>${head}</thead><tbody>${parameters.map(parameterRow).join('')}</tbody></table>`
      : '',
    comment.returns ? `<p>Returns: ${prose(comment.returns)}</p>` : '',
    ...comment.remarks.map((text) => `<p>${prose(text)}</p>`),
    ...comment.errors.map((text) => `<p>Errors: ${prose(text)}</p>`),
    ...comment.examples.map((text) => `<p>Example:</p><pre><code>${escaped(exampleInCell(name, text))}</code></pre>`),
    '</section>',
  ].join('\n');
}

/** The whole page, for a browser without scripts. */
export function helpHtml(metadata, sourceText) {
  const comments = new Map(readComments(sourceText));
  const links = metadata.functions.map(({ id, name }) => `<li><a href="#${escaped(id)}">${escaped(name)}</a></li>`);
  const sections = metadata.functions.map((each) => section(each, comments.get(each.id)));
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; img-src 'self'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Setwright's worksheet functions</title>
<link rel="icon" href="icons/icon-32.png">
<link rel="stylesheet" href="help.css">
</head>
<body>
<main>
<h1>Setwright's worksheet functions</h1>
<p>Type =${namespace}. in a cell to see them. Lengths are in inches and masses in grams; a metric sheet puts CONVERT round an argument.</p>
<nav aria-label="Functions"><ul>${links.join('')}</ul></nav>
${sections.join('\n')}
</main>
</body>
</html>
`;
}
