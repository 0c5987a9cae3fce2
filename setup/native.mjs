/** `node --import ./setup/native.mjs file.ts` runs a source file as it stands. */
import { register } from 'node:module';

register('./typescript.mjs', import.meta.url);
