/** Entry of a victim: TASK DIR. */
import { suffer, taskOf } from './victim.ts';

await suffer(taskOf(process.argv[2]), process.argv[3]);
