// Reads the worksheet functions' doc comments and writes src/functions/functions.json, what Excel is told about them.
// `--check` writes nothing and fails where the file no longer matches the comments.
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { functionPath } from './help/functionPath.mjs';
import { functionsJson, functionsSource } from './paths.mjs';

const { parseTree } = createRequire(import.meta.url)('custom-functions-metadata');

const firstParagraph = (text) =>
  text
    .split(/\n\s*\n/)[0]
    .replace(/\s+/g, ' ')
    .trim();

/**
 * What Excel is told about the functions in a source text, and which function answers to which ID.
 * The help address is relative here; a build puts the site's own address before it.
 */
export function readMetadata(sourceText, sourceName = functionsSource) {
  const { functions, associate, extras } = parseTree(sourceText, sourceName);
  const errors = extras.flatMap((extra) => extra.errors);
  if (errors.length > 0) throw new Error(`The functions' doc comments cannot be read:\n${errors.join('\n')}`);
  const metadata = {
    allowCustomDataForDataTypeAny: true,
    // An error in one cell of a range is ours to word; without this Excel answers it in place of the whole plan.
    allowErrorForDataTypeAny: true,
    functions: functions.map((each) => ({
      ...each,
      // Excel shows this beside the cell: the rest of the comment belongs on the help page.
      description: firstParagraph(each.description ?? ''),
      helpUrl: functionPath(each.id),
    })),
  };
  return { metadata, associations: associate.map(({ id, functionName }) => ({ id, functionName })) };
}

/** The metadata as the text of functions.json, with every help address under `base`. */
export function metadataText(metadata, base) {
  const prefix = base === undefined ? '' : `${base}/`;
  const functions = metadata.functions.map((each) => ({ ...each, helpUrl: prefix + each.helpUrl }));
  return `${JSON.stringify({ ...metadata, functions }, null, 2)}\n`;
}

export function readSource() {
  return readMetadata(readFileSync(functionsSource, 'utf8'));
}

function main(checkOnly) {
  const text = metadataText(readSource().metadata);
  if (!checkOnly) {
    writeFileSync(functionsJson, text);
    return 0;
  }
  if (readFileSync(functionsJson, 'utf8') === text) return 0;
  console.error('src/functions/functions.json no longer matches the doc comments: run npm run metadata.');
  return 1;
}

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  process.exitCode = main(process.argv.includes('--check'));
}
