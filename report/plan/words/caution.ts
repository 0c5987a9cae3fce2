/**
 * Every sentence of caution of a plan: where it must stand and why it is said. One list for screen and paper, so that
 * none can be lost between them; a test looks for each in its place.
 */
import type { Plan } from '@hoopwright/wire/plan';
import type { Figures } from '../figures.ts';
import { catalogue } from './fill.ts';

/** Parts of the papers, and of the screen. */
export type SheetPart = 'card' | 'log' | 'target' | 'dangers' | 'places' | 'checklist' | 'emergency';

export interface Caution {
  readonly id: CautionId;
  readonly text: string;
  /** Parts in which it must stand; on the screen the same ones. */
  readonly stands: readonly SheetPart[];
  /** Why it is said: what it keeps from happening. */
  readonly duty: string;
}

const ENGLISH = {
  kill: 'Pressurised tanks kill. Nobody is near a tank under pressure.',
  rules: 'Local rules for pressure equipment and a licensed engineer come first; this plan replaces neither.',
  behind:
    'Everybody is behind the wall before the vent is shut, and stays there until the pressure is zero and the vent is open.',
  approach:
    'Above {approach} nobody is at the tank; at or below it only after coming down to it from above and holding for 5 min.',
  'nobody approaches': 'No approach pressure is set: nobody is at the tank while it is under any pressure.',
  never:
    'Never above {target}. Less growth than foreseen means a stronger wall, not more pressure. A higher pressure is a new plan, made after release.',
  thin: 'Walls of {wall} are thinner than the published methods cover: they are a model for this day, not a code route.',
  gas: 'The stand-off method is made for gas tests. It puts the trapped air into proportion; it says nothing of a jet of water, a plug or a torn seam.',
  line: 'Nobody stands in the line of a plug, cover or fitting, on either side of the wall.',
  hose: 'Tie the hose at both ends and along its way; a torn hose whips.',
  release: 'Release is worked from behind the wall, and there is a second way if the first fails.',
  relief:
    'A relief valve stands between pump and tank, set just over the stretch pressure, and passes more than the pump gives. Try it before the day.',
  weight: 'Full of water the tank weighs {mass}. Look at floor, stand and sling before filling.',
  vent: 'Open the top vent first, then drain. A tank that is drained with its vent shut can be crushed from outside.',
  knuckle: 'Watch the {head} knuckle, camera there: it may wrinkle, and the forecast cannot show wrinkles.',
  bleed:
    'Air is what flies. Bleed until no bubble comes; one litre of air less at filling takes away {perLitre}.',
  bulge:
    'The forecast grows the tank evenly around: bulging to one side and wrinkles are not in it. Somebody watches the picture all the time.',
  water: 'Drain and dry promptly. Test water for austenitic steel has {chloride} ppm of chloride at most.',
  'after stop':
    'After a stop: pump off, valve as it is, everybody where they are. Read everything, write it down, then release from behind the wall. Nobody goes on on the same day without a new revision of the plan.',
  'after leak':
    'After a leak: pump off, release from behind the wall. Nobody looks for it while the tank is under pressure.',
  'after burst':
    'After a burst: pump off, everybody stays behind the wall until the gauge stands at zero and the water has stopped. Nothing is moved before it is photographed.',
  'screen gone':
    'When the screen is gone: hold the pressure, go on with this card and the log sheet, or release. Never pump faster to catch up.',
  'gauge lost': 'When no gauge can be believed: pump off and release.',
  frost: 'No stretch in frost or with metal under {metal}: ice blocks vents, gauges and relief valves.',
  paper: 'What stands on this paper was computed before the day. What the tank does counts.',
} as const;

export type CautionId = keyof typeof ENGLISH;

interface Entry {
  readonly stands: readonly SheetPart[];
  readonly duty: string;
}

const REGISTER: Readonly<Record<CautionId, Entry>> = {
  kill: { stands: ['card', 'log', 'dangers'], duty: 'the first thing anybody reads' },
  rules: { stands: ['card', 'target', 'dangers'], duty: 'nobody takes a forecast for a permission' },
  behind: {
    stands: ['card', 'places'],
    duty: 'people are behind the wall before there is energy in the tank',
  },
  approach: { stands: ['card', 'log', 'places'], duty: 'nobody reads a tape under pressure' },
  'nobody approaches': {
    stands: ['card', 'log', 'places'],
    duty: 'a team that set no approach pressure does not approach',
  },
  never: { stands: ['card', 'target'], duty: 'a strong wall is not pumped until it bursts' },
  thin: { stands: ['target'], duty: 'nobody takes a standard for a cover it is not' },
  gas: { stands: ['dangers'], duty: 'a distance for gas is not taken for a distance for everything' },
  line: { stands: ['card', 'dangers'], duty: 'ejected fittings have killed (HSE GS4)' },
  hose: { stands: ['dangers', 'checklist'], duty: 'a torn hose does not whip' },
  release: { stands: ['dangers', 'checklist'], duty: 'pressure can always be let out without going near' },
  relief: { stands: ['dangers', 'checklist'], duty: 'the pump cannot overshoot' },
  weight: { stands: ['dangers', 'checklist'], duty: 'the tank does not fall through floor or stand' },
  vent: { stands: ['card', 'dangers'], duty: 'the tank is not crushed on draining' },
  knuckle: { stands: ['dangers', 'checklist'], duty: 'a wrinkle is seen when it begins' },
  bleed: { stands: ['card', 'dangers'], duty: 'little gas is in the tank' },
  bulge: { stands: ['dangers'], duty: 'what an even forecast cannot show is watched for' },
  water: { stands: ['dangers', 'checklist'], duty: 'the wall does not pit or crack later' },
  'after stop': { stands: ['card', 'emergency'], duty: 'nobody hurries after a stop' },
  'after leak': { stands: ['emergency'], duty: 'nobody searches a leak under pressure' },
  'after burst': { stands: ['emergency'], duty: 'nobody runs to a torn tank that still holds pressure' },
  'screen gone': { stands: ['card', 'emergency'], duty: 'the day ends safely without a laptop' },
  'gauge lost': { stands: ['card', 'emergency'], duty: 'nobody pumps blind' },
  frost: { stands: ['emergency', 'checklist'], duty: 'no relief valve is frozen shut' },
  paper: { stands: ['log'], duty: 'nobody bends a reading to fit the paper' },
};

const filled = catalogue(ENGLISH);

/** Those that this plan needs, in the order in which they are said. */
export function cautionsOf(plan: Plan, f: Figures): Caution[] {
  const ids = Object.keys(ENGLISH)
    .filter(isCaution)
    .filter((id) => applies(id, plan));
  return ids.flatMap((id) => textsOf(id, plan, f).map((text): Caution => ({ id, text, ...REGISTER[id] })));
}

const isCaution = (id: string): id is CautionId => Object.hasOwn(ENGLISH, id);

export const cautionsIn = (part: SheetPart, cautions: readonly Caution[]): Caution[] =>
  cautions.filter((caution) => caution.stands.includes(part));

function applies(id: CautionId, plan: Plan): boolean {
  const sets = approachOf(plan) > 0;
  switch (id) {
    case 'approach':
      return sets;
    case 'nobody approaches':
      return !sets;
    case 'thin':
      return plan.target.thinnestWall_mm < THIN;
    default:
      return true;
  }
}

/** mm. ASME from about 5 mm, EN up to 30 mm (from memory, medium confidence): under 5 mm no method covers the wall. */
const THIN = 5;

export const approachOf = (plan: Plan): number => plan.approach_bar;

function textsOf(id: CautionId, plan: Plan, f: Figures): string[] {
  switch (id) {
    case 'approach':
      return [filled('approach', { approach: f.pressure(approachOf(plan)) })];
    case 'never':
      return [filled('never', { target: f.pressure(plan.target.pressure_bar) })];
    case 'thin':
      return [filled('thin', { wall: f.wall(plan.target.thinnestWall_mm) })];
    case 'weight':
      return plan.dangers.flatMap((d) =>
        d.kind === 'mass' ? [filled('weight', { mass: f.mass(d.all_kg) })] : [],
      );
    case 'knuckle':
      return plan.dangers.flatMap((d) =>
        d.kind === 'knuckle' && d.verdict !== 'no sign' ? [filled('knuckle', { head: d.head })] : [],
      );
    case 'bleed':
      return plan.dangers.flatMap((d) =>
        d.kind === 'energy' && d.of === 'air' ? [filled('bleed', { perLitre: f.energy(d.perLitre_J) })] : [],
      );
    case 'water':
      return plan.dangers.flatMap((d) =>
        d.kind === 'water' ? [filled('water', { chloride: f.count(d.limit_ppm) })] : [],
      );
    case 'frost':
      return plan.dangers.flatMap((d) =>
        d.kind === 'cold' ? [filled('frost', { metal: f.temperature(d.metalFrom_C) })] : [],
      );
    default:
      return [filled(id)];
  }
}
