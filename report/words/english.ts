/**
 * Every sentence of the drawings, curves and answers, whole, with {placeholders}. Another language is another record
 * with the same keys; no sentence is put together from pieces.
 */
export const ENGLISH = {
  // Title block (fields of ISO 7200)
  owner: 'Project',
  title: 'Title',
  number: 'Serial',
  documentType: 'Document type',
  revision: 'Rev.',
  issued: 'Date of issue',
  creator: 'Drawn by',
  approver: 'Approved by',
  sheet: 'Sheet',
  scale: 'Scale (A3)',
  languageCode: 'Lang.',
  decimalAndUnits: 'Decimal mark, units',
  decimalAndUnitsOf: '1{decimal}5; {length}, {pressure}, {volume}, {mass}',
  forecastState: 'Forecast',
  forecastCurrent: 'current',
  forecastOutdated: 'OUT OF DATE',
  forecastNone: 'none',
  invented: 'INVENTED DATA',
  notStated: 'not stated',
  drawingType: 'Tank, half in section',
  curveType: 'Growth of the tank',

  // Tank drawing
  drawingTitle: 'Drawing of {tank}, half in section: {state}',
  stateWelded: 'As welded',
  stateUnder: 'Under pressure, {pressure}',
  stateLeft: 'After release, what is left',
  growthOne: 'growth to scale',
  growthTimes: 'growth drawn {times} times',
  girthSeam: 'girth seam, {width}',
  baffle: 'baffle {width} × {thickness}',
  opening: 'opening Ø {diameter}',
  bottomTangent: 'tangent line',
  headSemiEllipsoidal: 'semi-ellipsoidal, depth {depth}',
  headTorispherical: 'torispherical, R {crown}, r {knuckle}',
  headHemispherical: 'hemispherical, R {radius}',
  headConical: 'conical, half angle {angle}, r {knuckle}',
  headFlat: 'flat',
  headWall: 'wall {wall}',
  headFlange: 'straight flange {flange}',
  headBoss: 'boss Ø {diameter} × {thickness}',
  headSkirt: 'skirt {length} × {wall}',
  headOpening: 'opening Ø {diameter}, not in this path',

  // Table beside the drawing
  columnWelded: 'as welded',
  columnUnder: 'under pressure',
  columnLeft: 'left',
  rowLargest: 'largest growth',
  rowContent: 'content',
  rowThinnest: 'barrel, thinnest',

  noteDimensions: 'Dimensions are those of the tank as welded; diameters, depths and radii inside.',
  noteGrowth: 'Growth is drawn {times} times. Dimensions and figures are not.',
  noteGrowthOne: 'Growth is drawn to scale.',
  noteWalls: 'Walls are drawn {times} times as thick, outward from the inside face.',
  noteWallsThick:
    'Walls are drawn {times} times as thick, bosses and thick plates {thick} times, outward from the inside face.',
  noteInitial: 'Long-dashed double-dotted line: the tank as welded.',
  noteWallsOne: 'Walls are drawn to scale.',
  noteUpright:
    'Stands upright: the weight of the water acts. Pressure is read {gauge} over the bottom tangent line.',
  noteLying: 'Lies while it is stretched: the weight of the water is left out.',
  noteLongSeam: 'Long seam {width} wide: a strip in series, not drawn.',
  noteWrinkles: 'An axisymmetric drawing cannot show wrinkles: watch the knuckles.',
  noteCaution: 'Pressurised tanks kill. Local rules and a licensed engineer come first.',

  // Colours on the wall
  fieldStrain: 'Plastic strain, {unit}',
  fieldWall: 'Wall, {unit}',
  fieldMargin: 'Plastic strain left, of what the barrel has at the maximum, {unit}',

  // Places on the tank
  bottomInside: 'bottom head, inside face',
  bottomMiddle: 'bottom head, mid-wall',
  bottomOutside: 'bottom head, outside face',
  topInside: 'top head, inside face',
  topMiddle: 'top head, mid-wall',
  topOutside: 'top head, outside face',
  barrelInside: 'barrel, inside face',
  barrelMiddle: 'barrel, mid-wall',
  barrelOutside: 'barrel, outside face',
  atBaffle: 'baffle',
  atSkirt: 'skirt',

  // Growth curve
  curveTitle: 'Growth curve of {tank}',
  curveHeading: 'Pressure against growth',
  curveOneSteel: 'Forecast with one flow curve: no range is drawn.',
  curveRanges: 'Forecast: median, half of all such tanks (dark), nine of ten (light).',
  axisPressure: 'Pressure, {unit}',
  axisGrowth: 'Growth of girth under pressure, {unit}',
  axisVolume: 'Volume under pressure, {unit}',
  axisWhole: 'Largest growth of girth under pressure, {unit}',
  levelFirstYield: 'first yield {pressure}',
  levelBarrelYield: 'barrel {strain} plastic {pressure}',
  levelTarget: 'stretch pressure {pressure}',
  largestAt: 'largest, at {height}',
  holdLabel: 'hold {minutes}',
  underPoint: '{growth} under pressure',
  leftPoint: '{growth} left',
  grownPoint: 'grown {volume} under pressure',
  pumpedPoint: 'pumped {volume} under pressure',
  leftVolume: '{volume} left',
  lineGrown: 'grown',
  linePumped: 'pumped',
  ceilingLabel: '{growth} left: published practice',
  wholeTitle: 'The whole way to the maximum',
  maximumPressure: 'pressure maximum, {pressure}',
  maximumNecking: 'local necking, {pressure}',
  maximumSeam: 'long seam at its limit, {pressure}',
  maximumGrowth: '{growth} under pressure',
  marginLabel: '{ratio} times the stretch pressure',
  maximumNone: 'no maximum was found',
  noteUnder:
    'Growth and volume count from the filled tank at zero gauge, under pressure; what is left is read on the axis after release.',
  noteCeiling: 'Hatched edge: {source}, on what is left.',
  noteOutsideStandards:
    'Walls of {from} to {to} are outside the scope of the cold-stretching standards: they are a model here, not a code route.',
  noteExtrapolated: 'The maximum lies beyond the evidence for the flow curve.',
  noteBulging: 'Bulging along a line and wrinkles of the knuckle are not in the model.',

  // The answer in ten lines
  answerTank:
    '{name}: inside diameter {diameter}, {length} between tangent lines, barrel wall {wall}, content {content}.',
  answerTankSerial:
    '{name}, serial {serial}: inside diameter {diameter}, {length} between tangent lines, barrel wall {wall}, content {content}.',
  wallRange: '{least} to {most}',
  answerSteel: 'Steel {grade}, {law}.',
  answerSteelUnnamed: 'Steel of no stated grade, {law}.',
  lawSwift: 'flow curve after Swift',
  lawVoce: 'flow curve after Voce',
  lawLudwik: 'flow curve after Ludwik',
  lawLudwigson: 'flow curve after Ludwigson',
  lawHollomon: 'flow curve after Hollomon',
  lawTwoSlope: 'two-slope flow curve of ASME VIII-2 Annex 3-D',
  lawPoints: 'flow curve through measured points',
  answerSteelAssumed: 'Steel assumed, no range.',
  answerSteelRange: 'This is the middle of {steels} equally likely steels.',
  answerGrowthRange:
    'Nine of ten such tanks: {low} to {high} under pressure, half of them under {median}; after a hold until growth is under 0.1 %/h, {settledLow} to {settledHigh} under pressure.',
  answerBurst: 'burst',
  answerBursts: '{share} of them burst.',
  answerSurvives: '99 of 100 such tanks survive {pressure}.',
  answerSurvivesAssured:
    '99 of 100 such tanks survive {pressure}; {steels} steels assure {assured}, with a chance of 95 %.',
  answerSurvivesOnContinuation:
    'Tests carry the flow curve to {strain}; what the tank bears beyond that rests on its continuation.',
  answerFirstYieldBarrel: 'First yield at {pressure}: {place}, {height} over the bottom tangent line.',
  answerFirstYieldBottom: 'First yield at {pressure}: {place}, {height} below the bottom tangent line.',
  answerFirstYieldTop: 'First yield at {pressure}: {place}, {height} above the top tangent line.',
  answerNoFirstYield: 'No first yield is given.',
  answerBarrelYield: 'The barrel has {strain} plastic strain at {pressure}.',
  answerNoBarrelYield: 'The barrel does not reach {strain} plastic strain.',
  answerGrowth:
    'At {pressure} the girth that grows most, {height} over the bottom tangent line, has grown {growth} under pressure.',
  answerGrowthHeld:
    'At {pressure} the girth that grows most, {height} over the bottom tangent line, has grown {growth} under pressure after the holds, {arrived} under pressure on arrival.',
  answerNoTarget: 'No stretch pressure is stated, so nothing is released; the path runs on to its end.',
  answerNotReached: 'The tank does not reach the stretch pressure of {pressure}.',
  answerGirths: 'Girths under pressure: {list}.',
  answerGirthsLeft: 'Girths under pressure, and growth left: {list}.',
  answerNoGirths: 'Girths: none to give.',
  girthUnder: '{name} {girth} ({growth} under pressure)',
  girthBoth: '{name} {girth} ({growth} under pressure, {left} left)',
  girthsMore: '{count} more',
  answerVolume:
    'Volume under pressure: grown {grown}; pumped {pumped}, of which {water} for compressing the water and {air} for the trapped air.',
  answerNoVolume: 'Volume: none to give.',
  answerReleased:
    'After release {growth} is left on the girth that grows most and {volume} of volume; it yields again at {yield}; thinnest barrel wall {wall} left, {welded} as welded.',
  answerNotReleased: 'After release: nothing to give.',
  answerMaximumPressure: 'Maximum: {pressure}, pressure maximum, at {growth} growth of girth under pressure.',
  answerMaximumNecking:
    'Maximum: {pressure}, local necking of the barrel, at {growth} growth of girth under pressure.',
  answerMaximumSeam:
    'Maximum: {pressure}, long seam at its limit, at {growth} growth of girth under pressure.',
  answerMargin: 'That is {ratio} times the stretch pressure.',
  answerExtrapolated: 'It lies beyond the evidence for the flow curve.',
  answerNoMaximum: 'Maximum: none was found, so the margin is not known.',
  answerMass: 'Mass {mass}; unstretched, the same duty takes {unstretched} with a barrel wall of {wall}.',
  answerMassAlone: 'Mass {mass}.',
  answerKnucklesUnknown: 'Heads: no stretch pressure to judge the knuckles by.',
  topKnuckleWatch: 'Top head: watch the knuckle, {pressure} is over {limit} ({source}).',
  bottomKnuckleWatch: 'Bottom head: watch the knuckle, {pressure} is over {limit} ({source}).',
  topKnuckleQuiet: 'Top head: no sign of wrinkling, {pressure} is under {limit} ({source}).',
  bottomKnuckleQuiet: 'Bottom head: no sign of wrinkling, {pressure} is under {limit} ({source}).',
  topKnuckleUncovered: 'Top head: watch the knuckle, no published wrinkling pressure covers it.',
  bottomKnuckleUncovered: 'Bottom head: watch the knuckle, no published wrinkling pressure covers it.',
  topKnuckleNone: 'Top head: it has no knuckle.',
  bottomKnuckleNone: 'Bottom head: it has no knuckle.',
  answerWrinkles: 'An axisymmetric path cannot show wrinkles.',
  answerCaution:
    'Pressurised tanks kill. This supports judgement; local pressure-equipment rules and a licensed engineer come first.',

  // Remarks on a forecast
  remarkNoMaximum: 'No maximum was found on the path ({reason}): the margin is not known.',
  remarkBurstsPressure:
    'The tank reaches its pressure maximum of {pressure} before the stretch pressure of {target}: choose a thicker wall or a lower stretch pressure.',
  remarkBurstsNecking:
    'The barrel necks locally at {pressure} before the stretch at {target} is done: choose a thicker wall or a lower stretch pressure.',
  remarkBurstsSeam:
    'The long seam reaches its limit at {pressure} before the stretch at {target} is done: choose a thicker wall, a stronger seam or a lower stretch pressure.',
  remarkGrowthNotReached:
    'The tank reaches its end at {pressure} and {growth} growth of girth under pressure, before the growth of {asked} that was asked for: ask for less, or choose a thicker wall.',
  remarkBeyondEvidence:
    'At {pressure} the plastic strain is {plastic}, but the flow curve rests on evidence only up to {evidence}: test a piece further, or stretch less.',
  remarkHoldAbove: 'A hold at {pressure} is over the stretch pressure and is left out.',
  remarkGivesWay:
    'In the hold at {pressure} the wall thins faster than it hardens and gives way after {minutes}: stretch at a lower pressure.',
  remarkFlatTop:
    'The flat top head dishes at {pressure} (plastic limit of a round plate free to turn at its edge) and the path ends there: give it a domed shape or a thicker plate.',
  remarkFlatBottom:
    'The flat bottom head dishes at {pressure} (plastic limit of a round plate free to turn at its edge) and the path ends there: give it a domed shape or a thicker plate.',
  remarkSeamStrain:
    'The long seam is strained {strain} where the plate beside it is strained {plate}, and carries {use} of what it can: judge its welding coupon at that strain.',
  remarkReleaseStuck: 'The release could not be followed to zero ({reason}): what is left is not known.',
  remarkNoRate: 'The steel states no rate effect, so nothing creeps in the holds: a real tank does.',
  remarkPowerLaw:
    'The flow curve is a pure power law, which says nothing true about first yield: none is given.',
  remarkPathStuck:
    'The path could not go on beyond {pressure} ({reason}): what was found up to there is given.',

  // Sheets compared
  compareTank: '{tank}: the same duty in other sheets',
  compareSheet: 'sheet',
  compareUnder: 'under pressure',
  compareLeft: 'left',
  compareMass: 'mass',
  compareShare: 'of unstretched',
  compareMaximum: 'maximum',
  compareMargin: 'margin',
  compareUnstretched: 'Unstretched it would need {wall} of barrel wall and weigh {mass}.',
  compareBursts: 'does not reach the stretch pressure',
  compareRefused: 'cannot be made so',

  // What holds for every forecast
  standingWrinkles: 'An axisymmetric path cannot show wrinkles: watch the knuckles of the heads.',
  standingBulging: 'Bulging of the barrel along a line is not in the model.',
  standingStandards:
    'Walls of {from} to {to} are outside the scope of the cold-stretching standards: they are a model here, not a code route.',
} as const;

export type Key = keyof typeof ENGLISH;
