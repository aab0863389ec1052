// What the doc comments of the worksheet functions say beyond the metadata that Excel is told.
import ts from 'typescript';
import { namespace } from '../paths.mjs';

const commentText = (comment) => ts.getTextOfJSDocComment(comment)?.trim() ?? '';

/** `Formula: … . Source: … . Anything else.` taken apart; sentences that belong to neither stay in `more`. */
export function readRemarks(text) {
  const joined = text.replace(/\s+/g, ' ');
  const [, formula = '', afterFormula = joined] =
    /^Formulas?: (.*?)(?=Source\b[^:.]{0,40}: |$)(.*)$/.exec(joined) ?? [];
  // A full stop after a single letter belongs to a name: D. Eagar.
  const [, label = '', source = '', more = ''] =
    /^Source\b([^:.]{0,40}): (.*?)(?:(?<!\b[A-Z])\.(?= [A-Z])|\.$) ?(.*)$/.exec(afterFormula) ?? [];
  return {
    formula: formula.trim().replace(/\.$/, ''),
    source: source.trim(),
    sourceOf: label.trim(),
    more: (source ? more : afterFormula).trim(),
  };
}

/** What a function's doc comment says beyond its metadata: paragraphs, formula and source, what it returns, errors, an example. */
function readComment(declaration) {
  const tags = ts.getJSDocTags(declaration);
  const named = (name) => tags.filter((tag) => tag.tagName.text === name).map((tag) => commentText(tag.comment));
  const comment = ts.getJSDocCommentsAndTags(declaration).find(ts.isJSDoc)?.comment;
  return {
    paragraphs: commentText(comment).split(/\n\s*\n/),
    remarks: readRemarks(named('remarks').join(' ')),
    returns: named('returns').join(' '),
    errors: named('throws').join(' '),
    example: named('example')[0] ?? '',
  };
}

/** A value of an example as it is typed in a cell. */
function asCellText(value) {
  if (!Array.isArray(value)) return JSON.stringify(value).replaceAll('\\"', '""');
  return `{${value.map((row) => row.map(asCellText).join(',')).join(';')}}`;
}

/** An example of a doc comment, `gripMass(50, 2) //=> 53.5`: its arguments, the same as a cell's formula, and what it gives. */
export function readExample(name, text) {
  const [, words, result] = /^\w+\((.*)\)(?:\s*\/\/=>\s*(.*))?$/s.exec(text) ?? [];
  if (words === undefined) return { args: [], formula: text, gives: undefined };
  const args = JSON.parse(`[${words.replaceAll("'", '"')}]`);
  const formula = `=${namespace}.${name}(${args.map(asCellText).join(', ')})`;
  return { args, formula, gives: result?.replace(/^'(.*)'$/, '$1') };
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
