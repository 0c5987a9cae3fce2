/** The rows of the grade library. Each names its source and how it came to stand here; see row.ts for the meaning. */
import type { Minimum, Physical, Strengthened, Typical } from './row.ts';

const EN_COLD = 'EN 10028-7 / EN 10088-2, cold-rolled strip, as shown on a producer data page';
const EN_HOT = 'EN 10028-7, hot-rolled strip';
const EN_PLATE = 'EN 10028-7, hot-rolled plate';
const PRODUCER = 'producer data page, typical values';
const A240 = 'ASTM A240/A240M';

const seen = (source: string) => ({ source, confidence: 'seen' }) as const;
const memory = (source: string) => ({ source, confidence: 'memory, high' }) as const;
const vague = (source: string) => ({ source, confidence: 'memory, middling' }) as const;

export const MINIMA: readonly Minimum[] = [
  {
    grade: '1.4307',
    form: 'cold-rolled',
    proof02: 220,
    proof10: 250,
    strength: 520,
    strengthTo: 700,
    elongation: 0.45,
    ...seen(`${EN_COLD} (elongation from memory)`),
  },
  {
    grade: '1.4307',
    form: 'hot-rolled',
    proof02: 200,
    proof10: 240,
    strength: 520,
    strengthTo: 700,
    elongation: 0.45,
    ...memory(EN_HOT),
  },
  {
    grade: '1.4307',
    form: 'hot-rolled',
    proof02: 220,
    proof10: 250,
    strength: 520,
    strengthTo: 700,
    ...seen(
      'a producer data page that shows the cold-rolled figures for hot-rolled strip too: check the print',
    ),
  },
  {
    grade: '1.4307',
    form: 'plate',
    proof02: 200,
    proof10: 240,
    strength: 500,
    strengthTo: 700,
    elongation: 0.45,
    ...memory(EN_PLATE),
  },
  {
    grade: '1.4306',
    form: 'cold-rolled',
    proof02: 220,
    proof10: 250,
    strength: 520,
    strengthTo: 700,
    elongation: 0.45,
    ...memory('EN 10088-2, same figures as 1.4307'),
  },
  {
    grade: '1.4306',
    form: 'plate',
    proof02: 200,
    proof10: 240,
    strength: 500,
    strengthTo: 700,
    elongation: 0.45,
    ...memory('EN 10088-2, same figures as 1.4307'),
  },
  {
    grade: '1.4301',
    form: 'cold-rolled',
    proof02: 230,
    proof10: 260,
    strength: 540,
    strengthTo: 750,
    elongation: 0.45,
    ...seen(`${EN_COLD} (elongation from memory)`),
  },
  {
    grade: '1.4404',
    form: 'cold-rolled',
    proof02: 240,
    proof10: 270,
    strength: 530,
    strengthTo: 680,
    elongation: 0.4,
    ...memory('EN 10028-7 / EN 10088-2, cold-rolled strip'),
  },
  {
    grade: '1.4311',
    form: 'cold-rolled',
    proof02: 290,
    proof10: 320,
    strength: 550,
    strengthTo: 750,
    elongation: 0.4,
    ...memory('EN 10028-7 / EN 10088-2, cold-rolled strip'),
  },
  { grade: 'ASTM 304L', proof02: 170, strength: 485, elongation: 0.4, ...seen(A240) },
  { grade: 'ASTM 304', proof02: 205, strength: 515, elongation: 0.4, ...seen(A240) },
  { grade: 'ASTM 316L', proof02: 170, strength: 485, elongation: 0.4, ...memory(A240) },
];

const typical = (
  grade: Typical['grade'],
  form: Typical['form'],
  thickness: number,
  [proof02, proof10, strength]: readonly [number, number, number],
): Typical => ({ grade, form, thickness, proof02, proof10, strength, ...seen(PRODUCER) });

export const TYPICAL: readonly Typical[] = [
  typical('1.4307', 'cold-rolled', 1, [295, 325, 650]),
  typical('1.4307', 'hot-rolled', 4, [290, 345, 620]),
  typical('1.4307', 'plate', 15, [260, 300, 580]),
  typical('1.4301', 'cold-rolled', 1, [285, 315, 640]),
  typical('1.4301', 'hot-rolled', 4, [285, 340, 625]),
  typical('1.4301', 'plate', 15, [270, 300, 600]),
  typical('1.4404', 'cold-rolled', 1, [300, 325, 625]),
  typical('1.4404', 'hot-rolled', 4, [300, 350, 600]),
  typical('1.4404', 'plate', 15, [260, 300, 570]),
];

const ALL = ['1.4301', '1.4306', '1.4307', '1.4404', '1.4311', 'ASTM 304', 'ASTM 304L', 'ASTM 316L'] as const;

export const PHYSICAL: readonly Physical[] = [
  { grades: ALL, young: 200_000, ...memory('EN 10088-1, 20 °C') },
  { grades: ALL, young: 195_000, ...memory('ASME BPVC II-D, 20 °C') },
  { grades: ALL, poisson: 0.3, ...memory('EN 10088-1') },
  {
    grades: ['1.4301', '1.4306', '1.4307', '1.4311', 'ASTM 304', 'ASTM 304L'],
    density: 7.9e-9,
    ...memory('EN 10088-1'),
  },
  { grades: ['1.4404', 'ASTM 316L'], density: 8e-9, ...memory('EN 10088-1') },
];

/** EN rule: Rp0.2 of hot-rolled plate plus 200 MPa. 410 for 1.4301 agrees with the design stress of 273 MPa seen in print. */
export const STRENGTHENED: readonly Strengthened[] = [
  { grade: '1.4301', proof: 410, ...vague('EN 13458-2:2002 Annex C') },
  { grade: '1.4306', proof: 400, ...vague('EN 13458-2:2002 Annex C') },
  { grade: '1.4307', proof: 400, ...vague('EN 13458-2:2002 Annex C') },
  { grade: '1.4311', proof: 470, ...vague('EN 13458-2:2002 Annex C') },
];
