/** The crossing of a limit as a sentence. */
import type { Crossing } from './watch.ts';

const digits = (value: number, places: number): string => value.toFixed(places);

export function crossingSentence({ limit, value, allowed, channels }: Crossing): string {
  const who = channels.join(' and ');
  switch (limit) {
    case 'pressure_bar':
      return `${who} shows ${digits(value, 1)} bar; the plan allows ${digits(allowed, 1)} bar.`;
    case 'gaugesApart_bar':
      return `${who} are ${digits(value, 1)} bar apart; the plan allows ${digits(allowed, 1)} bar.`;
    case 'growthUnderPressure_percent':
      return `${who} has grown by ${digits(value, 2)} %; the plan allows ${digits(allowed, 2)} % under pressure.`;
    case 'growthLeft_percent':
      return `${who} has kept ${digits(value, 2)} % of growth; the plan allows ${digits(allowed, 2)} %.`;
    case 'girthsApart_percent':
      return `${who} are ${digits(value, 2)} % apart in growth; the plan allows ${digits(allowed, 2)} %.`;
    case 'slopeShare':
      return `Pressure over litres has fallen to ${digits(100 * value, 1)} % of its elastic slope; the plan allows ${digits(100 * allowed, 1)} %.`;
    case 'trappedAir_L':
      return `The first step finds ${digits(value, 2)} L of trapped air; the plan allows ${digits(allowed, 2)} L. Down, bleed, again.`;
    case 'leak_mL_per_min':
      return `Water is lost at ${digits(value, 1)} mL/min; the plan allows ${digits(allowed, 1)} mL/min.`;
  }
}
