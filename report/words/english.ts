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
  notToScale: 'not to scale',
  drawingType: 'Tank, half in section',
  curveType: 'Growth of the tank',

  // Tank drawing
  drawingTitle: 'Drawing of {tank}, half in section: {state}',
  stateWelded: 'As welded',
  stateUnder: 'Under pressure, {pressure}',
  stateLeft: 'After release, what is left',
  growthOne: 'growth to scale',
  growthTimes: 'growth drawn {times} times',
  labelInitial: 'as welded',
  labelNow: 'under pressure',
  labelLeft: 'left',
  girth: '{name}',
  girthGrowthUnder: '{growth} under pressure',
  girthGrowthLeft: '{growth} left',
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
  rowGirths: 'Girth, outside',
  rowLargest: 'largest growth',
  rowContent: 'content',
  rowThinnest: 'barrel, thinnest',

  noteDimensions: 'Dimensions are those of the tank as welded; diameters, depths and radii inside.',
  noteGrowth: 'Growth is drawn {times} times. Dimensions and figures are not.',
  noteGrowthOne: 'Growth is drawn to scale.',
  noteWalls: 'Walls are drawn {times} times as thick, outward from the inside face.',
  noteWallsBosses:
    'Walls are drawn {times} times as thick and bosses {bosses} times, outward from the inside face.',
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
  fieldLeast: 'least {value}',
  fieldMost: 'most {value}',
} as const;

export type Key = keyof typeof ENGLISH;
