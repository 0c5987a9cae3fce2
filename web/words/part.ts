/** Names of the parts of a tank. */
import { words } from './say.ts';

export function partName(part: string): string {
  if (part === 'top head') return words('partTop');
  if (part === 'bottom head') return words('partBottom');
  return part === 'barrel' ? words('partBarrel') : part;
}
