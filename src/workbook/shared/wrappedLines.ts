/** How many lines a text takes in a cell that wraps. */

/** Lines a paragraph takes when it breaks between words, a word longer than the room breaking within itself. */
export function wrappedLines(paragraph: string, roomCharacters: number): number {
  let lines = 1;
  let used = 0;
  for (const word of paragraph.split(' ')) {
    const length = [...word].length;
    if (used > 0 && used + 1 + length > roomCharacters) {
      lines += 1;
      used = 0;
    } else if (used > 0) {
      used += 1;
    }
    lines += Math.max(0, Math.ceil((used + length) / roomCharacters) - 1);
    used = used + length > roomCharacters ? (used + length) % roomCharacters : used + length;
  }
  return lines;
}
