/**
 * Text that is to stay text when someone opens its cell and leaves it again. A file says so of a look (`quotePrefix`, ECMA-376 Part 1,
 * 18.8.45); unlike the format of texts it lets a number that is typed there later be one. The library that writes files has no word for
 * it, so such looks get a number format that nobody has, and the finished file is told in its stead.
 */
import { partsOf, textOf } from '../open/zip';
import { withPart } from './zipPart';

/** Stands for the mark while the file is made. */
export const QUOTED_FORMAT = '@"\u2009\u2009quoted"';

const LOOKS = 'xl/styles.xml';

/** The file with its looks marked. */
export async function withQuotes(file: Uint8Array): Promise<Uint8Array> {
  const part = partsOf(file)?.find(({ name }) => name === LOOKS);
  const xml = part ? await textOf(file, part) : '';
  const marked = markedLooks(xml);
  return marked === xml ? file : withPart(file, LOOKS, new TextEncoder().encode(marked));
}

function markedLooks(xml: string): string {
  const list = /<numFmts [^>]*>([\s\S]*?)<\/numFmts>/.exec(xml);
  const formats = list?.[1]?.match(/<numFmt [^>]*>/g) ?? [];
  const ours = formats.find((format) => format.includes(`formatCode="${QUOTED_FORMAT.replaceAll('"', '&quot;')}"`));
  const number = / (numFmtId="\d+")/.exec(ours ?? '')?.[1];
  if (!list || number === undefined) return xml;
  const others = formats.filter((format) => format !== ours);
  return xml
    .replace(list[0], () => (others.length > 0 ? `<numFmts count="${others.length}">${others.join('')}</numFmts>` : ''))
    .replace(/<xf [^>]*>/g, (look) =>
      look.includes(` ${number}`)
        ? look.replace(number, 'numFmtId="0" quotePrefix="1"').replace(/ applyNumberFormat="[^"]*"/, '')
        : look,
    );
}
