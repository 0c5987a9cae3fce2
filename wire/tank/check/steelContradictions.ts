/** Steels that contradict themselves, and tanks of which the steel is not known at all. */
import type { Issue } from '../../issue/issue.ts';
import type { FlowFile, PartSteelFile, SteelFile } from '../format/steelFile.ts';
import type { TankFile } from '../format/tankFile.ts';

export function steelFindings(file: TankFile): Issue[] {
  return [
    ...unknownSteel(file.steel),
    ...partSteels(file).flatMap(({ steel, path }) => [
      ...flowContradictions(steel.flow, path),
      ...poisson(steel, path),
      ...rateWithoutReference(steel, file.steel, path),
    ]),
    ...seamCurves(file),
    ...certificateContradictions(file.steel),
  ];
}

/** Any of these says something about the flow curve of the plate. */
export const hasEvidence = ({ certificate, coupons, testTanks }: SteelFile): boolean =>
  certificate?.Rp02_MPa !== undefined ||
  certificate?.Rm_MPa !== undefined ||
  (coupons?.length ?? 0) > 0 ||
  (testTanks?.length ?? 0) > 0;

function unknownSteel(steel: SteelFile): Issue[] {
  if (steel.flow !== undefined || hasEvidence(steel)) return [];
  const grade = steel.grade === undefined ? 'the grade' : `grade ${steel.grade}`;
  return [
    {
      path: 'steel.flow',
      expected: 'a flow curve, or evidence from which one follows (certificate, coupons, testTanks)',
      received: 'nothing',
      suggestion: `give steel.flow or steel.certificate; typical values of ${grade} alone would be a guess`,
    },
  ];
}

/** Every steel in the file with its place. */
function partSteels(file: TankFile): readonly { readonly steel: PartSteelFile; readonly path: string }[] {
  const parts = (list: readonly { readonly steel?: PartSteelFile }[] | undefined, path: string) =>
    (list ?? []).map((part, place) => ({ steel: part.steel ?? {}, path: `${path}[${place}].steel` }));
  return [
    { steel: file.steel, path: 'steel' },
    { steel: file.heads.top.steel ?? {}, path: 'heads.top.steel' },
    { steel: file.heads.bottom.steel ?? {}, path: 'heads.bottom.steel' },
    ...parts(file.barrel.courses, 'barrel.courses'),
    ...parts(file.baffles, 'baffles'),
    ...parts(file.skirts, 'skirts'),
  ];
}

function poisson({ poisson: nu }: PartSteelFile, path: string): Issue[] {
  if (nu === undefined || nu < 0.5) return [];
  return [
    {
      path: `${path}.poisson`,
      expected: "a Poisson's ratio under 0.5",
      received: `${nu}`,
      suggestion: 'steel has about 0.3',
    },
  ];
}

function flowContradictions(flow: FlowFile | undefined, path: string): Issue[] {
  if (flow?.law === 'two-slope') return proofOverStrength(flow, `${path}.flow`);
  if (flow?.law === 'points') return pointsIssues(flow, `${path}.flow`);
  if (flow?.law !== 'ludwigson' || flow.k2 < 0) return [];
  const expected = 'a negative number: the extra stress decays';
  return [{ path: `${path}.flow.k2`, expected, received: `${flow.k2}`, suggestion: `write ${-flow.k2}` }];
}

interface Strengths {
  readonly Rp02_MPa?: number;
  readonly Rm_MPa?: number;
}

function proofOverStrength({ Rp02_MPa: proof, Rm_MPa: strength }: Strengths, path: string): Issue[] {
  if (proof === undefined || strength === undefined || strength > proof) return [];
  return [
    {
      path: `${path}.Rm_MPa`,
      expected: `a tensile strength over Rp02_MPa, ${proof}`,
      received: `${strength}`,
      suggestion: 'are the two exchanged?',
    },
  ];
}

const certificateContradictions = ({ certificate }: SteelFile): Issue[] =>
  certificate === undefined ? [] : proofOverStrength(certificate, 'steel.certificate');

function pointsIssues(
  { plastic, stress_MPa: stress }: Extract<FlowFile, { law: 'points' }>,
  path: string,
): Issue[] {
  const rising = [...notRising(plastic, `${path}.plastic`), ...notRising(stress, `${path}.stress_MPa`)];
  if (plastic.length === stress.length) return rising;
  const received = `${stress.length}`;
  const expected = `as many stresses as plastic strains, ${plastic.length}`;
  return [
    ...rising,
    { path: `${path}.stress_MPa`, expected, received, suggestion: 'give one stress for each strain' },
  ];
}

function notRising(list: readonly number[], path: string): Issue[] {
  const place = list.findIndex((value, index) => index > 0 && value <= list[index - 1]);
  if (place < 0) return [];
  return [
    {
      path: `${path}[${place}]`,
      expected: `more than the value before, ${list[place - 1]}`,
      received: `${list[place]}`,
      suggestion: 'give the points in rising order, each once',
    },
  ];
}

/** A part may lean on the rate of the plate's flow curve. */
function rateWithoutReference({ rate, ...part }: PartSteelFile, plate: SteelFile, path: string): Issue[] {
  const flowRate = part.flowRate_per_s ?? plate.flowRate_per_s;
  if (rate === undefined || rate.reference_per_s !== undefined || flowRate !== undefined) return [];
  return [
    {
      path: `${path}.rate.reference_per_s`,
      expected: 'the strain rate at which the flow curve holds, 1/s',
      received: 'nothing',
      suggestion: 'give steel.flowRate_per_s or steel.rate.reference_per_s',
    },
  ];
}

function seamCurves({ seams }: TankFile): Issue[] {
  return (seams?.girth ?? []).flatMap(({ flow, strength }, place) => {
    const path = `seams.girth[${place}]`;
    if (flow === undefined || strength === undefined) return flowContradictions(flow, path);
    const expected = 'either strength or flow';
    return [{ path: `${path}.strength`, expected, received: 'both', suggestion: 'leave one of the two out' }];
  });
}
