/** Every sentence about the steel, whole, with {placeholders}. */
export const STEEL_ENGLISH = {
  heading: 'What the tests say of the steel of {tank}',
  curve: 'True stress at true plastic strain, one direction, {rate} 1/s: middle, half of all, nine of ten',
  curveAxes:
    'True stress against true plastic strain, one direction, {rate} 1/s. Light: nine of ten. Dark: half of all. Line: middle.',
  curveRow: '{strain}   {median}   {halfLow} to {halfHigh}   {low} to {high}',
  biaxial: 'Biaxial factor {median} ({low} to {high}).',
  rate: 'Rate effect {median} MPa per e-fold ({low} to {high}).',
  wall: 'Wall {median} ({low} to {high}).',
  seam: 'Long seam over plate {median} ({low} to {high}).',
  coldWork: 'Plastic strain from rolling, mean through the wall, {median} ({low} to {high}).',
  rolling:
    'Rolling {thickness} plate to {diameter} adds {surface} at the surface, {average} on average: it can explain a stiffer tank. At {plastic} strain the wall carries {more} more for it; a tank is out of its range from {excess} more on.',
  rollingNot:
    'Rolling {thickness} plate to {diameter} adds {surface} at the surface, {average} on average: it cannot explain a stiffer tank. At {plastic} strain the wall carries {more} more for it; a tank is out of its range only from {excess} more on.',
  rollingOnce: 'No rolling note: bent once, a little past the radius.',
  seamTest: '{name}: {says}.',
  evidence: 'Evidence',
  books: 'What standards and mills say of {grade}',
  least: 'At least, {form}: Rp0.2 {proof02}{proof10}, Rm {strength}{elongation} ({source}; {confidence}).',
  leastProof10: ', Rp1.0 {value}',
  leastElongation: ', A {value}',
  upTo: ' to {value}',
  typical:
    'Typical, {form}, {thickness}: Rp0.2 {proof02}, Rp1.0 {proof10}, Rm {strength} ({source}; {confidence}).',
  young: 'E {value} ({source}; {confidence}).',
  poisson: 'Poisson’s ratio {value} ({source}; {confidence}).',
  density: 'Density {value} kg/m³ ({source}; {confidence}).',
  strengthened: 'Proof strength allowed after cold stretching {value} ({source}; {confidence}).',
  noTypical: 'No typical values of this grade are known; those of its neighbour stand in.',
  conflict: 'Sources differ in what is least: both are shown.',
  anyForm: 'any form',
  seen: 'seen in print',
  'memory, high': 'from memory, high confidence',
  'memory, middling': 'from memory, middling confidence',
  md30: 'Md30 {value} °C by the heat analysis: where 30 % strain turns half of it to martensite. The higher, the more it hardens and the more warm water takes off that.',
  'counted this plate': '{name}: counted for this plate.',
  'counted another plate of this heat': '{name}: counted as another plate of this heat.',
  'counted another heat': '{name}: counted as another heat.',
  doubt: 'Chance that it does not speak for its plate: {share}.',
  disagrees: 'It lies further from the rest than {share} of such pieces would.',
  excluded: '{name}: not counted: {reason}.',
  assumed: 'Assumed, {what}: {reason}.',
  growth:
    'Growth under pressure, after a hold until it is under 0.1 %/h: nine of ten tanks {low} to {high}, half of them under {median}.',
  growthBurst:
    'Growth under pressure: {share} of such tanks burst; half of the rest and more stay under {median}.',
  owes: 'What owes the range of growth: {list}.',
  owesOne: '{name} {share}',
  together: 'what no input explains alone',
  next: 'To narrow it most: {measure}; the range would then be {share} of what it is.',
  quick:
    'These are {steels} steels run through a quick tank fitted to shell solutions; beside {held} others held back its pressure is {rms} off (root mean square), {most} at most.',
  noStretch: 'No stretch pressure is stated, so there is no range of growth.',
  assumedSteel: 'Steel assumed, no range: the file states a flow curve and no evidence.',
  proves:
    'That the range holds nine of ten in our trials shows that the working is right, not that the assumptions are.',
} as const;

export type SteelSentence = keyof typeof STEEL_ENGLISH;
