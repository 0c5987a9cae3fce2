/** How soon a reading is on a screen. */
import { expect } from 'vitest';

/** Times are judged only on a machine that does nothing else. */
const TIMED = process.env['HOOPWRIGHT_TIMING'] === '1';

declare global {
  interface Window {
    litresShown?: Record<string, number>;
  }
}

/** In the page: when each figure of litres was first on the screen, in the frame after it was drawn, ms. */
export function noteLitres(): void {
  const shown: Record<string, number> = {};
  window.litresShown = shown;
  const look = (): void => {
    const text = document.querySelector('[data-figure="litres"]')?.textContent ?? '';
    const litres = /\d+\.\d\d/.exec(text)?.[0];
    if (litres !== undefined) shown[litres] ??= Date.now();
    requestAnimationFrame(look);
  };
  look();
}

/** From the instrument's word to the viewer's pixels. Figures that come round again only make it longer. */
export function soonShown(spoken: ReadonlyMap<string, number>, shown: readonly [string, number][]): void {
  const delays = shown.flatMap(([litres, at]) => {
    const said = spoken.get(litres);
    return said === undefined ? [] : [at - said];
  });
  delays.sort((a, b) => a - b);
  const p95 = delays[Math.floor(0.95 * delays.length)];
  console.log(
    `from reading to pixel: ${delays.length} figures, median ${delays[delays.length >> 1]} ms, p95 ${p95} ms`,
  );
  expect(delays.length).toBeGreaterThan(100);
  if (TIMED) expect(p95).toBeLessThan(250);
}
