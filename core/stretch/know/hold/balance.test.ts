import { describe, expect, test } from 'vitest';
import type { Answers } from './answers.ts';
import { balanceOf, type BalanceReading, type Doubts } from './balance.ts';

// Closed form: a window in which everything goes straight on, so that the loss is what is put in.
const ANSWERS: Answers = {
  elastic: { growth: 6e-4, room: 4e5 },
  perGrowth: 4e8,
  roomDoubt: 0.02,
  compliance: 1.3e5,
  surplus: 3e4,
  air: 0,
};
const DOUBTS: Doubts = {
  pressure: 0.005,
  growth: 5e-5,
  stairs: false,
  drawn: 1400,
  water: 0.03,
  growthDrift: 0,
  waterDrift: 4e-4,
};
const LENGTH = 300;

/** Rates: growth 1/s, pressure MPa/s, drawn mm³/s, water K/s. */
function windowOf(rates: {
  growth?: number;
  pressure?: number;
  drawn?: number;
  water?: number;
}): BalanceReading[] {
  const { growth = 0, pressure = 0, drawn, water } = rates;
  return Array.from({ length: LENGTH + 1 }, (_, s) => ({
    seconds: s,
    pressure: 2.5 + pressure * s,
    growths: [0.04 + growth * s, 0.039 + growth * s],
    ...(drawn === undefined ? {} : { drawn: 1e6 + drawn * s }),
    ...(water === undefined ? {} : { water: 16 + water * s }),
  }));
}

describe('the balance of water in a hold', () => {
  test('loses nothing where what is drawn is the room that the wall has made', () => {
    const found = balanceOf(windowOf({ growth: 1e-6, drawn: 400, water: 0 }), ANSWERS, DOUBTS);
    expect(found?.creep).toBeCloseTo(400, 6);
    expect(found?.loss).toBeCloseTo(0, 6);
    expect(found?.verdict).toBe('not seen');
  });

  test('finds what is drawn beyond it, and with a shut valve what the pressure has given back', () => {
    const open = balanceOf(windowOf({ growth: 1e-6, drawn: 400 + 333, water: 0 }), ANSWERS, DOUBTS);
    expect(open?.loss).toBeCloseTo(333, 6);
    expect(open?.verdict).toBe('seen');
    // Nothing yields: girth and room follow the pressure.
    const pressure = -333 / (ANSWERS.elastic.room + ANSWERS.compliance);
    const shut = balanceOf(
      windowOf({ pressure, growth: ANSWERS.elastic.growth * pressure, water: 0 }),
      ANSWERS,
      DOUBTS,
    );
    expect(shut?.creep).toBeCloseTo(0, 6);
    expect(shut?.loss).toBeCloseTo(333, 6);
  });

  test('does not take a girth that is silent for a while for growth that was lost', () => {
    const whole = windowOf({ water: 0 });
    const silent = whole.map((one) =>
      one.seconds < 150 ? one : { ...one, growths: [undefined, one.growths[1]] },
    );
    expect(balanceOf(whole, ANSWERS, DOUBTS)?.loss).toBeCloseTo(0, 6);
    expect(balanceOf(silent, ANSWERS, DOUBTS)?.loss).toBeCloseTo(0, 6);
  });

  test('states a loss that is as many times its own spread, with what it adds to the doubt about compression', () => {
    const { elastic, compliance } = ANSWERS;
    const room = elastic.room + compliance;
    // The wall creeps and the pressure falls by itself: what is lost then comes on top of it.
    const falls = -1000 / room;
    const creeps = 1000 / ANSWERS.perGrowth;
    const shut = (pressure: number) =>
      balanceOf(
        windowOf({ pressure, growth: elastic.growth * pressure + creeps, water: 0 }),
        ANSWERS,
        DOUBTS,
      );
    expect(shut(falls)?.loss).toBeCloseTo(0, 6);
    const smallest = shut(falls)?.smallest ?? NaN;
    const there = shut(falls - smallest / room);
    const spread = ((there?.high ?? NaN) - (there?.loss ?? NaN)) / 1.645;
    // Five of them clear of nothing in nineteen of twenty holds.
    expect(smallest / spread).toBeCloseTo(5 + 1.645, 2);
    expect(there?.verdict).toBe('seen');
  });

  test('is wider by stairs than by noise, and without a thermometer it says so', () => {
    const [even, stairs] = [false, true].map((rounded) =>
      balanceOf(windowOf({ water: 0 }), ANSWERS, { ...DOUBTS, stairs: rounded }),
    );
    expect(stairs?.smallest).toBeGreaterThan(3 * (even?.smallest ?? Infinity));
    expect(balanceOf(windowOf({}), ANSWERS, DOUBTS)?.because).toBe('no thermometer');
  });

  test('is none for one reading, for none of a girth, and for readings of one time', () => {
    const [first] = windowOf({});
    expect(balanceOf([first], ANSWERS, DOUBTS)).toBeUndefined();
    expect(balanceOf([first, first], ANSWERS, DOUBTS)).toBeUndefined();
    const bare = windowOf({}).map((one) => ({ ...one, growths: [undefined, undefined] }));
    expect(balanceOf(bare, ANSWERS, DOUBTS)).toBeUndefined();
  });
});
