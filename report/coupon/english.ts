/** Every sentence about a tensile test, whole, with {placeholders}. Another language is another record with these keys. */
export const COUPON_ENGLISH = {
  atLine: 'line {line}: {says}',
  'no-slope few':
    'the elastic part has {points} readings, too few for a slope: E is not given; Rp0.2 and Rp1.0 use the nominal 200 GPa without toe shift',
  'no-slope poor':
    'the readings of the elastic part scatter too much for a slope (its standard error is {scatter}): E is not given; Rp0.2 and Rp1.0 use the nominal 200 GPa without toe shift',
  'no-slope outside':
    'the slope of the elastic part is {young} GPa, outside 160 to 230 GPa: E is not given; Rp0.2 and Rp1.0 use the nominal 200 GPa without toe shift',
  toe: 'the curve begins {strain} beside its elastic line and was shifted by that',
  'toe-left':
    'the curve seems to begin {strain} beside its elastic line; nothing was shifted, so Rp0.2 may be out by a few per cent',
  slack:
    'slack at the beginning reaches beyond 0.2 % and no slope can take it off: no proof strength; the curve cannot be used',
  'begins-loaded':
    'the record begins at {stress}: was the force zeroed under load, or is the beginning missing?',
  'begins-late': 'the record begins at {strain}, beyond the proof strength',
  loop: 'unloading from {from} to {to} and loading again; the loop is left out of the curve',
  'let-go': 'the specimen was unloaded from {stress} at the end, before a break',
  'lone-point strain': 'a strain of {value} stands alone among its neighbours; the reading is left out',
  'lone-point stress': 'a stress of {value} stands alone among its neighbours; the reading is left out',
  slip: 'the extension jumps by {strain} while the force does not follow: the extensometer slipped; strains from here on are not used',
  dip: 'the force sinks by {drop} and comes back while the extension hardly moves: a pause, or grips that settle; these readings are left out',
  'grip-slip':
    'the force falls by {drop} and comes back after {strain} more extension: the grips slipped; strains from here on are not used',
  gap: 'a jump of {strain} in extension: readings are missing here, or the extensometer slipped',
  'gauge-off':
    'the extension stands still at {strain} while the force goes on: the extensometer was taken off; Ag and A cannot be read beyond it',
  'outside-gauge':
    'the gauge length shortens while the force falls: the specimen necked or broke outside it, so A is not given',
  'no-neck':
    'the specimen broke at {strain} without a neck: early, at a flaw, or in the grips; Rm and Ag are at least these',
  'ends-rising':
    'the record ends at {strain} while the force still rises ({stress}): Rm, Ag and A were not reached',
  'flat-top':
    'the force stands at {stress} from here on, though it was still rising: a load cell at its limit? Rm and Ag are not read',
  'ends-at-maximum': 'the record ends at its highest force: Rm and Ag are at least these, A is not given',
  'ends-before-break':
    'the record ends at {ratio} of the maximum force, before the break: A is at least this',
  crosshead:
    'the extension is travel of the crosshead, which holds the give of the machine: only Rm is read from this test',
  sparse:
    '{of} is read on a straight line between two readings far apart, {from} and {to}: it may be low, at most up to the higher of them',
  'few-points': '{points} readings between 0.2 % and the end of the even strain, too few for a curve',
  short: 'the curve can be trusted only up to {plastic} plastic strain, less than a stretch needs',
  'no-rate no time': 'no time in the record: the strain rate is not known',
  'no-rate time runs back': 'the clock of the record runs back: the strain rate is not known',
  'no-rate few points': 'too few readings for a strain rate',
  'rate-varies': 'the strain rate varies by a factor of {factor} between 0.2 and 10 %',
  'rate-unusual':
    'the strain rate of {rate} /s is outside the ranges of ISO 6892-1 (7e-5 to 6.7e-3 /s): is the unit of time right?',
  'unlike Rp0.2':
    'Rp0.2 of {value} is not that of annealed or cold-worked austenitic steel (120 to 1200 MPa): are the units right?',
  'unlike Rm': 'Rm of {value} is not that of austenitic steel (380 to 1600 MPa): are the units right?',
  'unlike Ag': 'Ag of {value} is not that of austenitic steel (0.5 to 90 %): are the units right?',
  'seam alone': 'across the seam, with no plate coupon beside it to compare with',
  'seam metal':
    'across the seam: Rm {strength} of the plate; the seam metal flows at {flow} of the plate at the strains of a stretch ({match}); {broke}',
  'seam gauge':
    'across the seam: Rm {strength} of the plate; seam and plate together flow at {flow} of the plate at the strains of a stretch ({match}; the seam alone may differ more: give its width); {broke}',
  'match over': 'overmatch',
  'match even': 'even match',
  'match under': 'undermatch',
  'match none': 'no strain of a stretch in common',
  'match mixed': 'over- and undermatch, by strain',
  'broke seam': 'it broke in the seam',
  'broke heat-affected zone': 'it broke in the heat-affected zone',
  'broke plate': 'it broke in the plate',
  'broke not stated': 'where it broke is not stated',
  usable: 'may be used',
  unusable: 'not used: {reasons}',
} as const;

export type CouponSentence = keyof typeof COUPON_ENGLISH;
