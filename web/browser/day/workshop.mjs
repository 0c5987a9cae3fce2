/**
 * A workshop with instruments on wires: the simulated tank, each of its instruments at the far end of a real one. It does
 * what the director orders, as a crew would, and lets its own time pass so fast as the instruments may move.
 */
import { appendFileSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { channelsOf } from '@hoopwright/wire/reading';
import { parseTankFile } from '@hoopwright/wire/tank';
import { Aedes } from 'aedes';
import { ServerTCP } from 'modbus-serial';
import { RigDay } from '../../../station/day/simulated/rigDay.ts';
import { hasTerminals, plugIn } from '../../../station/instrument/contract/terminal.ts';
import { realTank } from '../../../station/rig/realTank.ts';

export { hasTerminals };

/** ms between two looks of every instrument. */
const EVERY = 25;
/**
 * s of the tank that pass between two looks: as many as no instrument moves by more than its judge lets it jump. A tank that
 * yields takes its water as growth; before that, after a hold and on the way down it is pressure that moves.
 */
const SLOW = 0.3;
const YIELDS = { from_bar: 23, seconds: 1.4, afterLooks: 8 };
const DOWN = [
  { from_bar: 8, seconds: 0.35 },
  { from_bar: 0, seconds: 0.8 },
];
/**
 * What the day's last readings may lag behind the instruments before time waits for the wires, by channel. The water, with
 * one look more, is under what its judge lets it jump from one poll to the next, however busy the machine is.
 */
const LAG = { 'gauge A': 1.2, low: 1.5, weighing: 0.045 };
/** The director's thinking is not hurried: water that creeps in at one pressure is no rise. */
const THINKS = 0.05;
/** What a look of these is off, at most: they are never quite still. */
const HUM = { 'gauge A': 0.12, low: 0.06 };
const UNIT = 3;

/**
 * Instruments on five wires, ready to be plugged in: a logger's file, a serial line, a broker, a node that sends by HTTP, a
 * Modbus box.
 * @param {string} dir folder of the logger's file and of the serial line
 */
export async function openWorkshop(dir) {
  const file = join(dir, 'logger.csv');
  const path = join(dir, 'wire-box');
  writeFileSync(file, 'time;P2 [bar]\n');
  let serial = await plugIn(path);
  const broker = await startBroker();
  const box = await startBox();
  let looks = 0;
  return {
    /** What the set-up has to say of them. */
    file,
    path,
    url: `mqtt://127.0.0.1:${broker.port}`,
    port: box.port,
    unit: UNIT,
    pull: () => serial.pull(),
    plugIn: async () => {
      serial = await plugIn(path);
    },
    /**
     * @param {Record<string, number>} values
     * @param {(line: string) => Promise<unknown>} post
     */
    speak: (values, post) => {
      appendFileSync(file, `${++looks};${values['gauge B'].toFixed(2).replace('.', ',')}\n`);
      serial.say(`P=${values['gauge A'].toFixed(2)}\n`);
      broker.publish('tank/low', values['low'].toFixed(3));
      post(`{"g": ${values['high'].toFixed(2)}}\n`).catch(() => {});
      box.hold(values['weighing']);
    },
    close: async () => {
      await Promise.all([serial.pull(), broker.close(), box.close()]);
    },
  };
}

async function startBroker() {
  const aedes = await Aedes.createBroker();
  const server = createServer(aedes.handle);
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    port: server.address().port,
    publish: (topic, text) =>
      aedes.publish({ cmd: 'publish', qos: 0, dup: false, retain: false, topic, payload: text }, () => {}),
    close: async () => {
      await new Promise((resolve) => aedes.close(resolve));
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

/** Millilitres in two input registers, the high word first. */
async function startBox() {
  const probe = createServer();
  await new Promise((resolve) => probe.listen(0, '127.0.0.1', resolve));
  const { port } = probe.address();
  await new Promise((resolve) => probe.close(resolve));
  let millilitres = 0;
  const word = (address) => (address === 0 ? millilitres >>> 16 : millilitres & 0xffff);
  const server = new ServerTCP({ getInputRegister: word }, { host: '127.0.0.1', port, unitID: UNIT });
  await new Promise((resolve) => server.on('initialized', resolve));
  return {
    port,
    hold: (litres) => {
      millilitres = Math.max(0, Math.round(1000 * litres));
    },
    close: async () => {
      for (const socket of server.socks.keys()) socket.destroy();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

/**
 * The tank behind the instruments. It hears what the day stands at, and does what the director has ordered.
 * @param {{ tank: string, plan: import('@hoopwright/wire/plan').Plan, seed: number,
 *   state: () => Promise<import('@hoopwright/wire/day').DayState>, speak: (values: Record<string, number>) => void }} given
 * @returns {() => void} ends it
 */
export function startTank({ tank, plan, seed, state, speak }) {
  const parsed = parseTankFile(tank);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  const real = realTank({ given: parsed, files: new Map(), seed });
  const channels = channelsOf(plan);
  const mesh = { elements: 24, layers: 3 };
  const rig = new RigDay({
    tank: real,
    plan,
    channels,
    seed,
    speed: 1,
    faults: [],
    readings: 'by wires',
    mesh,
  });
  let over = false;
  let now;
  const hear = async () => {
    now = await state().catch(() => now);
    if (!over) setTimeout(hear, 2 * EVERY);
  };
  let [step, looks] = ['', 0];
  let spoken = {};
  const look = () => {
    if (over) return;
    setTimeout(look, EVERY);
    if (now === undefined) return;
    looks = now.step?.number === step ? looks + 1 : 0;
    step = now.step?.number;
    if (!lags(now, spoken)) rig.pass(secondsNow(now, looks, rig.read('gauge A')), now);
    const values = Object.fromEntries(channels.map(({ name }) => [name, rig.read(name)]));
    for (const name in HUM) values[name] += HUM[name] * Math.sin(2.4 * looks + values[name]);
    speak(values);
    spoken = values;
  };
  void hear();
  look();
  return () => {
    over = true;
  };
}

/** A gauge whose wire is pulled is not waited for. */
function lags({ channels }, spoken) {
  return channels.some(({ channel: { name }, last, unproved, aside }) => {
    if (LAG[name] === undefined || last === undefined || unproved !== undefined || aside !== undefined)
      return false;
    return Math.abs(last.value - (spoken[name] ?? last.value)) > LAG[name];
  });
}

function secondsNow({ step, phase, figures }, looks, shown) {
  const pressure = figures.pressure?.value ?? 0;
  if (step?.kind === 'release' || phase === 'after' || phase === 'stopping')
    return DOWN.find(({ from_bar }) => pressure >= from_bar)?.seconds ?? SLOW;
  if (step?.kind === 'rise' && shown >= step.pressure_bar) return THINKS;
  return looks > YIELDS.afterLooks && step?.pressure_bar > YIELDS.from_bar ? YIELDS.seconds : SLOW;
}
