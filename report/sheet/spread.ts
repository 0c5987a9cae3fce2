/** Moves labels apart along one line, as little as it takes, keeping their order. */

interface Block {
  /** Sum of (wanted place - offset in the block), and how many. */
  sum: number;
  count: number;
  start: number;
}

/**
 * Places at least `gap` apart and, where there is room, within [low, high], nearest to `wanted` in the least-squares
 * sense (pool adjacent violators). `wanted` rises; the answer has its order.
 */
export function spread(wanted: readonly number[], gap: number, low = -Infinity, high = Infinity): number[] {
  const blocks: Block[] = [];
  wanted.forEach((place, i) => {
    let block: Block = { sum: place - i * gap, count: 1, start: i };
    let before = blocks[blocks.length - 1];
    while (before !== undefined && before.sum / before.count > block.sum / block.count) {
      blocks.pop();
      block = { sum: before.sum + block.sum, count: before.count + block.count, start: before.start };
      before = blocks[blocks.length - 1];
    }
    blocks.push(block);
  });
  const top = high - (wanted.length - 1) * gap;
  const placed: number[] = [];
  for (const { sum, count, start } of blocks) {
    const base = Math.max(low, Math.min(top, sum / count));
    for (let i = start; i < start + count; i++) placed.push(base + i * gap);
  }
  return placed;
}
