/** What the person should know of a sound tank file: assumptions that matter, and what will not act. */
import { hasEvidence } from './check/steelContradictions.ts';
import type { TankFile } from './format/tankFile.ts';
import { TANK_DEFAULTS } from './toTank.ts';
import type { FlowFrom } from './toSteel.ts';

export function notesOf(file: TankFile, from: FlowFrom): string[] {
  return [
    ...flowNotes(file, from),
    ...standNotes(file),
    ...headNotes(file, 'top'),
    ...headNotes(file, 'bottom'),
    ...seamNotes(file),
    ...holdNotes(file),
    ...openingNotes(file),
  ];
}

const FLOW_NOTES: Readonly<Record<FlowFrom, readonly string[]>> = {
  stated: [],
  evaluated: [],
  certificate: [
    'steel.flow is not given: the two-slope curve of the certificate (ASME VIII-2 Annex 3-D) stands in until the evidence is evaluated.',
  ],
  'stand-in': [
    'steel.flow is not given: the published mean curve of annealed 304L (Karlson 2023) stands in until the evidence is evaluated.',
  ],
};

function flowNotes({ steel }: TankFile, from: FlowFrom): string[] {
  const both =
    steel.flow !== undefined && hasEvidence(steel)
      ? [
          'steel gives a flow curve and evidence: the flow curve is used as stated, the evidence is kept beside it.',
        ]
      : [];
  return [...FLOW_NOTES[from], ...both];
}

function standNotes({ stand }: TankFile): string[] {
  if (stand?.axis !== 'lying') return [];
  return ['stand.axis is lying: the liquid head does not act in the forecast, which is axisymmetric.'];
}

function headNotes({ heads, barrel }: TankFile, end: 'top' | 'bottom'): string[] {
  const head = heads[end];
  const notes: string[] = [];
  if (head.shape === 'semi-ellipsoidal' && head.ratio === undefined && head.depth_mm === undefined) {
    notes.push(`heads.${end} states neither ratio nor depth_mm: taken as ratio 2.`);
  }
  if (head.measuredWall_mm !== undefined) {
    const least = Math.min(...head.measuredWall_mm);
    notes.push(`heads.${end}.wall_mm is the mean of the measured walls; the least of them is ${least} mm.`);
  } else if (head.wall_mm === undefined) {
    notes.push(`heads.${end}.wall_mm is not given: taken as the wall of the barrel, ${barrel.wall_mm} mm.`);
  }
  if (head.formingStrain_percent !== undefined && head.measuredWall_mm === undefined) {
    notes.push(`heads.${end} is hardened by its forming strain, not thinned: give measuredWall_mm for that.`);
  }
  return notes;
}

function seamNotes({ seams }: TankFile): string[] {
  const weak =
    'states no strength: taken as strong as the plate, which a weld in annealed sheet need not be.';
  const girth = (seams?.girth ?? []).flatMap(({ strength, flow }, place) =>
    strength === undefined && flow === undefined ? [`seams.girth[${place}] ${weak}`] : [],
  );
  const long = seams?.long !== undefined && seams.long.strength === undefined ? [`seams.long ${weak}`] : [];
  return [...girth, ...long];
}

function holdNotes({ duty }: TankFile): string[] {
  if (duty === undefined) return [];
  const stretch = duty.workingPressure_bar * (duty.stretchFactor ?? TANK_DEFAULTS.stretchFactor);
  return (duty.holds ?? []).flatMap(({ pressure_bar: pressure }, place, holds) => {
    const path = `duty.holds[${place}].pressure_bar`;
    const above =
      pressure > stretch * (1 + 1e-9) ? [`${path} ${pressure} is over the stretch pressure.`] : [];
    const falling = place > 0 && pressure < holds[place - 1].pressure_bar;
    return falling ? [...above, `${path} ${pressure} is under that of the hold before it.`] : above;
  });
}

function openingNotes({ openings }: TankFile): string[] {
  if (openings === undefined || openings.length === 0) return [];
  return ['openings are not in this path: they are checked by area replacement only.'];
}
