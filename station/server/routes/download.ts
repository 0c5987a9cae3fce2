/** Something to be saved by the browser and never opened as a page. */
import type { Asked } from '../env.ts';

/** The name as any browser may keep it: no path, no quote, nothing that ends a header. */
const plainName = (name: string): string => name.replace(/[^\w .()-]+/g, '_').replace(/^\.+/, '') || 'file';

export const attachment = (c: Asked, name: string, content: string | Uint8Array<ArrayBuffer>): Response =>
  c.body(content, 200, {
    'Content-Type': 'application/octet-stream',
    'Content-Disposition': dispositionOf(name),
  });

export const dispositionOf = (name: string): string =>
  `attachment; filename="${plainName(name)}"; filename*=UTF-8''${encodeName(name)}`;

/** RFC 8187: percent-encoded, and these four, which `encodeURIComponent` leaves, too. Half a surrogate pair is dropped. */
const encodeName = (name: string): string =>
  encodeURIComponent(name.replace(/\p{Surrogate}/gu, '')).replace(
    /['()*]/g,
    (mark) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`,
  );
