// Puts words beside each other on one line without touching.

/**
 * @typedef {{at: number, width: number}} Word centre wanted, and width, px
 */

/**
 * Centres of words as near to where they are wanted as their widths and the
 * ends of the line allow; undefined where they do not fit at all. Words come
 * in their order.
 * @param {Word[]} words
 * @param {number} low
 * @param {number} high
 * @param {number} gap
 * @returns {number[] | undefined}
 */
export function spread(words, low, high, gap) {
  const needed = words.reduce((sum, word) => sum + word.width + gap, -gap);
  if (words.length && needed > high - low) return undefined;
  // Words that would touch are moved together as one block, centred on where they are wanted.
  /** @type {{from: number, to: number, offsets: number[], wanted: number, width: number}[]} */
  const blocks = [];
  words.forEach((word, i) => {
    let block = { from: i, to: i, offsets: [word.width / 2], wanted: word.at - word.width / 2, width: word.width };
    settle(block, low, high);
    for (let last = blocks.at(-1); last && last.wanted + last.width + gap > block.wanted; last = blocks.at(-1)) {
      blocks.pop();
      const shift = last.width + gap;
      const count = last.to - last.from + 1;
      const added = block.to - block.from + 1;
      block = {
        from: last.from,
        to: block.to,
        offsets: [...last.offsets, ...block.offsets.map((offset) => offset + shift)],
        wanted: (last.wanted * count + (block.wanted - shift) * added) / (count + added),
        width: shift + block.width,
      };
      settle(block, low, high);
    }
    blocks.push(block);
  });
  return blocks.flatMap((block) => block.offsets.map((offset) => block.wanted + offset));
}

/**
 * @param {{wanted: number, width: number}} block
 * @param {number} low
 * @param {number} high
 */
function settle(block, low, high) {
  block.wanted = Math.max(low, Math.min(high - block.width, block.wanted));
}
