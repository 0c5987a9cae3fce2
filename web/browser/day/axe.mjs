/** Faults that axe calls serious or critical, each with the first place it was found. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/**
 * @param {import('playwright-core').Page} page
 * @returns {Promise<string[]>}
 */
export async function faultsOf(page) {
  // Handed to the page by the debugger, which the content policy does not bind.
  await page.evaluate(readFileSync(AXE, 'utf8'));
  const { violations } = await page.evaluate('axe.run(document)');
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.length} places, first ${nodes[0].html.slice(0, 140)}`);
}
