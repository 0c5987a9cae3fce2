/** What the first step will tell with these instruments: air and its range, elastic slopes, the smallest loss. */
import { DETECTION, readingSpread } from '@hoopwright/core/gauge';
import {
  airCompliance,
  airSwallows,
  firstFindings,
  type FirstSpread,
  slopeFinding,
  warmingSurplus,
  waterCompliance,
  waterCompression,
} from '@hoopwright/core/stretch';
import { toBar, toLitre } from '@hoopwright/core/units';
import type { Foreseen } from '../foresight/foresee.ts';
import type { FirstStepSees } from '../plan.ts';
import { arrivalKey, type ElasticSlopes, type MarkFigures, elasticOf, marksOf } from '../foresight/range.ts';
import type { SetUp } from '../setup/setUp.ts';

/** Stiffness of the tank (wall, E) and truth of the stroke together, standard deviation: our choice, no source. */
const STIFFNESS = 0.05;
/** Of the girth slope: wall and E alone. Our choice, no source. */
const SLOPE_MODEL = 0.04;
/** Time for the first loss, s, and the warming nobody sees without a thermometer, K: as in the holds. */
const LOSS_TIME = 300;
const UNSEEN_WARMING = 0.2;

function firstMarks(foreseen: Foreseen): readonly MarkFigures[] {
  const marks = marksOf(foreseen);
  return foreseen.ladder.first.map((pressure) => {
    const mark = marks.get(arrivalKey(pressure));
    if (mark === undefined) throw new Error(`nothing is foreseen at ${pressure} MPa`);
    return mark;
  });
}

export function firstStepSees(foreseen: Foreseen, setUp: SetUp): FirstStepSees {
  const marks = firstMarks(foreseen);
  const elastic = elasticOf(foreseen);
  const spread = spreadOf(setUp);
  const { datum } = foreseen.forecast;
  const { temperature, trappedAir } = datum.solver.shell.tank.water;
  const { air, zero } = firstFindings({
    readings: marks.map((mark) => ({ pressure: mark.pressure, drawn: mark.pumped.all })),
    drawnWithoutAir: (p) =>
      elastic.growth * p + waterCompression(datum.volume + elastic.growth * p, p, temperature),
    spread,
  });
  const high = marks[2];
  const compliance =
    elastic.growth +
    waterCompliance(datum.volume, high.pressure, temperature) +
    airCompliance(trappedAir, high.pressure);
  const warming =
    setUp.thermometer === undefined ? UNSEEN_WARMING : (setUp.thermometer * Math.SQRT2) / Math.sqrt(12);
  const blur = Math.hypot(
    compliance * spread.pressure * Math.SQRT2,
    warmingSurplus(datum.volume, temperature) * warming,
  );
  return {
    air_L: { value: toLitre(air.value), low: toLitre(air.low), high: toLitre(air.high) },
    zero_bar: { value: toBar(zero.value), low: toBar(zero.low), high: toBar(zero.high) },
    slopes: setUp.readings
      .filter((r) => r.from === 'behind the wall')
      .map((reading) => slopeSeen(foreseen, elastic, reading, spread.pressure)),
    byHand: {
      tank_L: toLitre(high.pumped.wall + high.pumped.water - marks[0].pumped.wall - marks[0].pumped.water),
      share: airSwallows(1, high.pressure) - airSwallows(1, marks[0].pressure),
    },
    loss_mL_per_min: (DETECTION * blur * 60) / LOSS_TIME / 1e3,
    minutes: LOSS_TIME / 60,
  };
}

function spreadOf({ gauges, supply }: SetUp): FirstSpread {
  const behind = gauges.filter((g) => g.from === 'behind the wall');
  const pressure = Math.min(...behind.map((g) => readingSpread(g)));
  const drawn = supply.resolution / Math.sqrt(12);
  return { pressure, zero: pressure, drawn, slack: supply.resolution, stiffness: STIFFNESS };
}

/** Read for a minute at each point: noise averages out, the step of the scale does not. */
const averaged = ({ resolution, noise, every }: SetUp['readings'][number]): number =>
  readingSpread({ resolution, noise: noise / Math.sqrt(Math.max(1, Math.floor(AT_A_POINT / every))) });

/** s at each point of the first step. */
const AT_A_POINT = 60;

function slopeSeen(
  foreseen: Foreseen,
  elastic: ElasticSlopes,
  reading: SetUp['readings'][number],
  pressure: number,
): FirstStepSees['slopes'][number] {
  const { girths } = foreseen.forecast.datum.solver.shell.tank;
  const place = Math.max(
    0,
    girths.findIndex((g) => g.name === reading.girth),
  );
  const marks = firstMarks(foreseen);
  const found = slopeFinding({
    pressures: marks.map((m) => m.pressure),
    girths: marks.map((m) => m.girths[place]),
    model: elastic.girths[place],
    girth: averaged(reading),
    pressure,
    modelShare: SLOPE_MODEL,
  });
  const half = 0.5 * (found.ratio.high - found.ratio.low);
  return {
    name: reading.girth,
    // mm/MPa to mm/bar.
    mm_per_bar: elastic.girths[place] / 10,
    within_percent: 100 * half,
    tells: found.verdict !== 'cannot tell',
  };
}
