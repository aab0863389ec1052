/** A sentence in as many lines as a page is too narrow for: cells of a page are not merged, and one that wraps does not flow over its neighbours. */

/** Breaks between words; a word longer than the room has a line of its own. @example brokenLines('one two three', 8) //=> ['one two', 'three'] */
export function brokenLines(text: string, roomCharacters: number): string[] {
  const lines: string[] = [];
  for (const word of text.trim().split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= roomCharacters)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
