// npm run --silent calc -- GRIPMASS 50 2: any worksheet function without a spreadsheet. Prints its value as JSON; an error as a cell
// shows it, with the reason, and exits 1.
import { bundle } from './bundle.mjs';
import { namespace } from './paths.mjs';

/** A number, list or the like where the word is JSON; else the word itself, as a cell holding text. */
function argumentOf(word) {
  try {
    return JSON.parse(word);
  } catch {
    return word;
  }
}

/** The function a person names, whichever case and with or without the namespace. */
function wantedId(word = '') {
  const upper = word.toUpperCase();
  return upper.startsWith(`${namespace}.`) ? upper.slice(namespace.length + 1) : upper;
}

function complain(word, ids) {
  const complaint = word === undefined ? '' : `There is no function ${word}.\n`;
  console.error(`${complaint}Name a function and its arguments: npm run --silent calc -- GRIPMASS 50 2`);
  console.error(`There are: ${ids.join(' ')}`);
  return 2;
}

function calculate(worksheetFunction, cells) {
  try {
    console.log(JSON.stringify(worksheetFunction(...cells)));
    return 0;
  } catch (error) {
    if (typeof error?.code !== 'string') throw error;
    console.log(`${error.code} ${error.message}`);
    return 1;
  }
}

const [word, ...words] = process.argv.slice(2);
const { FUNCTIONS } = await import(await bundle('src/functions/implementations.ts', 'calc'));
const id = wantedId(word);
process.exitCode = Object.hasOwn(FUNCTIONS, id)
  ? calculate(FUNCTIONS[id], words.map(argumentOf))
  : complain(word, Object.keys(FUNCTIONS));
