/** A time of day as people write it. */

/** "10:42" or "10:42:13" on the day of `now_ms`, in this machine's time; undefined where it is none. */
export function timeOfDay(typed: string, now_ms: number): number | undefined {
  const found = /^\s*(\d{1,2})[:.h](\d{2})(?:[:.](\d{2}))?\s*$/.exec(typed);
  if (found === null) return undefined;
  const [hours, minutes, seconds] = [Number(found[1]), Number(found[2]), Number(found[3] ?? 0)];
  if (hours > 23 || minutes > 59 || seconds > 59) return undefined;
  const day = new Date(now_ms);
  day.setHours(hours, minutes, seconds, 0);
  return day.getTime();
}
