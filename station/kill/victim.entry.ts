/** Entry of a victim: TASK DIR. */
import { suffer } from './victim.ts';

await suffer(process.argv[2] === 'record' ? 'record' : 'serve', process.argv[3]);
