/** The answer of a forecast in ten lines of plain text. Every growth says whether it is under pressure or left. */
import type { FlowLaw } from '@hoopwright/core/steel';
import type { Forecast, Limit, Moment, StretchRange } from '@hoopwright/core/stretch';
import type { Tank } from '@hoopwright/core/tank';
import { say, saySigned, sayStated } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import type { Key } from '../words/english.ts';
import { partWords } from '../words/parts.ts';
import { sentence } from '../words/sentence.ts';
import { knuckleSentence } from './knuckles.ts';
import { growthRange, steelBasis, survival } from './range.ts';

/** Ten lines, without line ends. A line that has nothing to say says so. */
export function tenLines(forecast: Forecast, manner: Manner = USUAL_MANNER, range?: StretchRange): string[] {
  const { tank } = forecast.datum.solver.shell;
  return [
    tankLine(forecast, tank, manner),
    [steelLine(forecast, tank, manner), steelBasis(range, manner)].join(' '),
    [growthLine(forecast, manner), ...growthRange(range, manner)].join(' '),
    girthLine(forecast, tank, manner),
    volumeLine(forecast, manner),
    releasedLine(forecast, tank, manner),
    [maximumLine(forecast, manner), ...survival(range, manner)].join(' '),
    massLine(forecast, manner),
    headLine(forecast, tank, manner),
    sentence(manner, 'answerCaution'),
  ];
}

/** The tank when it is released, under pressure: after the holds, or on arrival where there are none. */
const atRelease = ({ held, arrived }: Forecast): Moment | undefined => held ?? arrived;

function tankLine({ datum }: Forecast, tank: Tank, manner: Manner): string {
  const filling = {
    name: tank.name,
    diameter: sayStated(manner, 'length', tank.insideDiameter),
    length: sayStated(manner, 'length', tank.length),
    wall: barrelWall(tank, manner),
    content: say(manner, 'content', datum.volume),
  };
  return tank.serial === undefined
    ? sentence(manner, 'answerTank', filling)
    : sentence(manner, 'answerTankSerial', { ...filling, serial: tank.serial });
}

function barrelWall({ courses }: Tank, manner: Manner): string {
  const walls = courses.map((course) => course.wall);
  const [least, most] = [Math.min(...walls), Math.max(...walls)].map((wall) => say(manner, 'wall', wall));
  return least === most ? least : sentence(manner, 'wallRange', { least, most });
}

const LAWS = {
  swift: 'lawSwift',
  voce: 'lawVoce',
  ludwik: 'lawLudwik',
  ludwigson: 'lawLudwigson',
  hollomon: 'lawHollomon',
  'two-slope': 'lawTwoSlope',
  points: 'lawPoints',
} as const satisfies Record<FlowLaw['law'], Key>;

function steelLine({ firstYield, barrelYield }: Forecast, tank: Tank, manner: Manner): string {
  const { steel } = tank.courses.reduce((a, b) => (b.length > a.length ? b : a));
  const law = sentence(manner, LAWS[steel.flow.law]);
  const strain = sayStated(manner, 'strain', 0.002);
  return [
    steel.grade === undefined
      ? sentence(manner, 'answerSteelUnnamed', { law })
      : sentence(manner, 'answerSteel', { grade: steel.grade, law }),
    firstYieldSentence(firstYield, tank, manner),
    barrelYield === undefined
      ? sentence(manner, 'answerNoBarrelYield', { strain })
      : sentence(manner, 'answerBarrelYield', { strain, pressure: say(manner, 'pressure', barrelYield) }),
  ].join(' ');
}

/** Heights count from the tangent line of the part itself. */
function firstYieldSentence(firstYield: Forecast['firstYield'], tank: Tank, manner: Manner): string {
  if (firstYield === undefined) return sentence(manner, 'answerNoFirstYield');
  const { z } = firstYield.at;
  const [key, height] =
    z < 0
      ? (['answerFirstYieldBottom', -z] as const)
      : z > tank.length
        ? (['answerFirstYieldTop', z - tank.length] as const)
        : (['answerFirstYieldBarrel', z] as const);
  return sentence(manner, key, {
    pressure: say(manner, 'pressure', firstYield.pressure),
    place: partWords(manner, firstYield.at),
    height: say(manner, 'place', height),
  });
}

function growthLine(forecast: Forecast, manner: Manner): string {
  const { target, arrived, held } = forecast;
  const now = atRelease(forecast);
  if (target === undefined) return sentence(manner, 'answerNoTarget');
  if (now === undefined || arrived === undefined)
    return sentence(manner, 'answerNotReached', { pressure: say(manner, 'pressure', target) });
  const filling = {
    pressure: say(manner, 'pressure', now.pressure),
    height: say(manner, 'place', now.largest.at),
    growth: say(manner, 'growth', now.largest.growth),
  };
  return held === undefined
    ? sentence(manner, 'answerGrowth', filling)
    : sentence(manner, 'answerGrowthHeld', {
        ...filling,
        arrived: say(manner, 'growth', arrived.largest.growth),
      });
}

/** More girths than this would not be read in one line. */
const MOST_GIRTHS = 5;

function girthLine(forecast: Forecast, tank: Tank, manner: Manner): string {
  const now = atRelease(forecast);
  const left = forecast.released?.left;
  if (now === undefined || tank.girths.length === 0) return sentence(manner, 'answerNoGirths');
  const each = tank.girths.map(({ name }, i) => {
    const filling = {
      name,
      girth: say(manner, 'girth', now.girths[i].girth),
      growth: saySigned(manner, 'growth', now.girths[i].growth),
    };
    return left === undefined
      ? sentence(manner, 'girthUnder', filling)
      : sentence(manner, 'girthBoth', {
          ...filling,
          left: saySigned(manner, 'growth', left.girths[i].growth),
        });
  });
  const more = each.length - MOST_GIRTHS;
  const list = [
    ...each.slice(0, MOST_GIRTHS),
    ...(more > 0 ? [sentence(manner, 'girthsMore', { count: String(more) })] : []),
  ].join('; ');
  return sentence(manner, left === undefined ? 'answerGirths' : 'answerGirthsLeft', { list });
}

function volumeLine(forecast: Forecast, manner: Manner): string {
  const now = atRelease(forecast);
  if (now === undefined) return sentence(manner, 'answerNoVolume');
  const { all, water, air } = now.pumped;
  return sentence(manner, 'answerVolume', {
    grown: say(manner, 'volume', now.growth),
    pumped: say(manner, 'volume', all),
    water: say(manner, 'volume', water),
    air: say(manner, 'volume', air),
  });
}

function releasedLine({ released }: Forecast, tank: Tank, manner: Manner): string {
  if (released === undefined) return sentence(manner, 'answerNotReleased');
  const { left, wall, newYield } = released;
  return sentence(manner, 'answerReleased', {
    growth: say(manner, 'growth', left.largest.growth),
    volume: say(manner, 'volume', left.growth),
    yield: say(manner, 'pressure', newYield),
    wall: say(manner, 'wall', wall.thinnest),
    welded: say(manner, 'wall', Math.min(...tank.courses.map((course) => course.wall))),
  });
}

const MAXIMA = {
  'pressure maximum': 'answerMaximumPressure',
  'local necking': 'answerMaximumNecking',
  seam: 'answerMaximumSeam',
} as const satisfies Record<Limit['kind'], Key>;

function maximumLine({ maximum, target }: Forecast, manner: Manner): string {
  if (maximum === undefined) return sentence(manner, 'answerNoMaximum');
  return [
    sentence(manner, MAXIMA[maximum.kind], {
      pressure: say(manner, 'pressure', maximum.pressure),
      growth: say(manner, 'growth', maximum.growth),
    }),
    ...(target === undefined
      ? []
      : [sentence(manner, 'answerMargin', { ratio: say(manner, 'ratio', maximum.pressure / target) })]),
    ...(maximum.extrapolated ? [sentence(manner, 'answerExtrapolated')] : []),
  ].join(' ');
}

function massLine({ mass, unstretched }: Forecast, manner: Manner): string {
  if (unstretched === undefined)
    return sentence(manner, 'answerMassAlone', { mass: say(manner, 'mass', mass) });
  return sentence(manner, 'answerMass', {
    mass: say(manner, 'mass', mass),
    unstretched: say(manner, 'mass', unstretched.mass),
    wall: say(manner, 'wall', unstretched.wall),
  });
}

function headLine({ target }: Forecast, tank: Tank, manner: Manner): string {
  if (target === undefined) return sentence(manner, 'answerKnucklesUnknown');
  return [
    knuckleSentence(tank, 'top', target, manner),
    knuckleSentence(tank, 'bottom', target, manner),
    sentence(manner, 'answerWrinkles'),
  ].join(' ');
}
