// npm run --silent calc -- GRIPMASS 50 2: any worksheet function without a spreadsheet. Prints its value as JSON; an error as a cell
// shows it, with the reason, and exits 1.
import { bundle } from './bundle.mjs';
import { readSource } from './metadata.mjs';
import { namespace } from './paths.mjs';

/** A number, list or the like where the word is JSON; else the word itself, as a cell holding text. */
export function argumentOf(word) {
  try {
    return JSON.parse(word);
  } catch {
    return word;
  }
}

function usage(metadata) {
  const names = metadata.functions.map(({ name }) => name).join(' ');
  return `Name a function and its arguments: npm run --silent calc -- GRIPMASS 50 2\nThere are: ${names}`;
}

/** The function a person names, whichever case and with or without the namespace. */
function wantedId(word = '') {
  const upper = word.toUpperCase();
  return upper.startsWith(`${namespace}.`) ? upper.slice(namespace.length + 1) : upper;
}

const [word, ...words] = process.argv.slice(2);
const { metadata, associations } = readSource();
const association = associations.find(({ id }) => id === wantedId(word));
if (!association) {
  console.error(word === undefined ? usage(metadata) : `There is no function ${word}.\n${usage(metadata)}`);
  process.exitCode = 2;
} else {
  const functions = await import(await bundle('src/functions/functions.ts', 'calc'));
  try {
    const value = await functions[association.functionName](...words.map(argumentOf));
    console.log(JSON.stringify(value));
  } catch (error) {
    if (typeof error?.code !== 'string') throw error;
    console.log(`${error.code} ${error.message}`);
    process.exitCode = 1;
  }
}
