/** Strips on a canvas. Hot: one pass over the columns of each channel, no allocation within it. */
import type { Manner } from '@hoopwright/report/figure';
import type { DayState } from '@hoopwright/wire/day';
import { say } from '../../words/day/say.ts';
import { channelText, clockText } from '../said/figures.ts';
import type { LongTrace, Track } from '../state/trace.ts';

export interface StripsDrawn {
  readonly state: DayState;
  readonly trace: LongTrace;
  readonly manner: Manner;
  readonly width: number;
  readonly height: number;
  readonly look: string;
}

const LEFT = 150;
const RIGHT = 92;
const FOOT = 24;

export function drawStrips(canvas: HTMLCanvasElement, drawn: StripsDrawn): void {
  const paper = canvas.getContext('2d');
  if (paper === null) return;
  const { state, trace, manner, width, height } = drawn;
  const styles = getComputedStyle(canvas);
  const ink = styles.getPropertyValue('--ink');
  const ratio = window.devicePixelRatio;
  paper.setTransform(ratio, 0, 0, ratio, 0, 0);
  paper.clearRect(0, 0, width, height);
  paper.font = `13px ${styles.fontFamily}`;
  paper.fillStyle = paper.strokeStyle = ink;
  const strip = (height - FOOT) / Math.max(1, state.channels.length);
  const from = trace.length === 0 ? 0 : trace.seconds[0];
  const to = Math.max(from + 1, trace.length === 0 ? 1 : trace.seconds[trace.length - 1]);
  const room: Room = { left: LEFT, right: width - RIGHT, from, to, top: 0, bottom: 0 };
  hatchGaps(paper, state, room, height - FOOT);
  state.channels.forEach(({ channel, last, aside }, i) => {
    const track = trace.track(channel.name);
    const here: Room = { ...room, top: i * strip + 7, bottom: (i + 1) * strip - 7 };
    paper.lineWidth = 1;
    paper.beginPath();
    paper.moveTo(here.left, here.bottom + 4);
    paper.lineTo(here.right, here.bottom + 4);
    paper.stroke();
    paper.fillText(channel.name, 4, (here.top + here.bottom) / 2 + 4, LEFT - 12);
    if (track === undefined) return;
    drawTrack(paper, trace, track, here);
    if (last !== undefined)
      paper.fillText(
        channelText(manner, channel.reads, last.value),
        here.right + 6,
        (here.top + here.bottom) / 2 + 4,
        RIGHT - 8,
      );
    if (aside !== undefined) strikeOut(paper, here);
  });
  const { began_ms } = state.about;
  paper.fillText(clockText(began_ms + 1000 * from), LEFT, height - 6);
  paper.textAlign = 'right';
  paper.fillText(clockText(began_ms + 1000 * to), width - RIGHT, height - 6);
  paper.textAlign = 'left';
}

interface Room {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly from: number;
  readonly to: number;
}

function drawTrack(
  paper: CanvasRenderingContext2D,
  { seconds, length }: LongTrace,
  { low, high }: Track,
  room: Room,
): void {
  let [least, most] = [Infinity, -Infinity];
  for (let i = 0; i < length; i++) {
    if (low[i] < least) least = low[i];
    if (high[i] > most) most = high[i];
  }
  if (least > most) return;
  const span = most - least || 1;
  const across = (room.right - room.left) / (room.to - room.from);
  const up = (room.bottom - room.top) / span;
  paper.lineWidth = 1.3;
  paper.beginPath();
  // A column of ink for each pixel where there are many readings, lines where there are few: stroking is slow.
  const dense = length > 2 * (room.right - room.left);
  let begun = false;
  let pixel = -1;
  let [above, below] = [NaN, NaN];
  let [lo, hi] = [Infinity, -Infinity];
  for (let i = 0; i <= length; i++) {
    const x = i < length ? Math.round(room.left + (seconds[i] - room.from) * across) : -2;
    if (x !== pixel && hi >= lo) {
      const [a, b] = [room.bottom - (hi - least) * up, room.bottom - (lo - least) * up];
      if (dense) {
        const top = begun ? Math.min(a, below) : a;
        paper.rect(pixel, top - 0.6, 1, Math.max(1.2, (begun ? Math.max(b, above) : b) - top + 1.2));
      } else {
        if (begun) paper.lineTo(pixel, a);
        else paper.moveTo(pixel, a);
        if (b - a > 0.5) paper.lineTo(pixel, b);
      }
      [above, below] = [a, b];
      begun = true;
      [lo, hi] = [Infinity, -Infinity];
    }
    pixel = x;
    if (i === length || Number.isNaN(low[i])) continue;
    if (low[i] < lo) lo = low[i];
    if (high[i] > hi) hi = high[i];
  }
  if (dense) paper.fill();
  else paper.stroke();
}

/** A channel that is set aside is kept and not believed. */
function strikeOut(paper: CanvasRenderingContext2D, { left, right, top, bottom }: Room): void {
  paper.lineWidth = 2;
  paper.beginPath();
  paper.moveTo(left, (top + bottom) / 2);
  paper.lineTo(right, (top + bottom) / 2);
  paper.stroke();
}

/** Time in which nothing is known: hatched, and named. */
function hatchGaps(paper: CanvasRenderingContext2D, state: DayState, room: Room, bottom: number): void {
  const across = (room.right - room.left) / (room.to - room.from);
  for (const { wall_ms, parted_ms } of state.gaps) {
    const end = room.left + ((wall_ms - state.about.began_ms) / 1000 - room.from) * across;
    const start = Math.min(end - 6, end - (Math.max(0, parted_ms) / 1000) * across);
    if (end < room.left || start > room.right) continue;
    paper.save();
    paper.beginPath();
    paper.rect(start, 0, end - start, bottom);
    paper.clip();
    paper.lineWidth = 0.7;
    paper.beginPath();
    for (let y = -bottom; y < bottom + (end - start); y += 8) {
      paper.moveTo(start, y + (end - start));
      paper.lineTo(end, y);
    }
    paper.stroke();
    paper.restore();
    paper.fillText(say('gapDrawn'), end + 3, 11);
  }
}
