/** A thread of the page: forecasts are made here, so that the hand on the page is never held up. */
import { withoutCompiling } from '@hoopwright/wire/tank';
import { expose } from 'comlink';
import { Board } from './work/answer.ts';

withoutCompiling();
expose(new Board(() => performance.now()));
