/** The terms in English. Values from memory and practice without a source say so. */

/** A term of the page: one sentence, a formula where there is one, and where it comes from. */
export interface Term {
  readonly term: string;
  readonly sentence: string;
  readonly formula?: string;
  readonly source: string;
}

const term = (name: string, sentence: string, source: string, formula?: string): Term => ({
  term: name,
  sentence,
  source,
  ...(formula === undefined ? {} : { formula }),
});

const SHOP = 'common practice, no source';

export const ENGLISH_TERMS = {
  stretch: term(
    'stretch pressure',
    'The highest pressure of the stretch: the tank yields up to it and carries everything below it elastically afterwards.',
    'EN 13458-2 annex C and ASME VIII-1 Mandatory Appendix 44, for vessels thicker than these (from memory)',
    'stretch pressure = working pressure × stretch factor',
  ),
  factor: term(
    'stretch factor',
    'How many times the working pressure the tank is stretched to.',
    'published codes use 1.33 to 1.6 (from memory)',
  ),
  growth: term(
    'growth',
    'How much longer a girth has become against the filled tank at zero gauge pressure; it says whether it is under pressure or left.',
    'definition of this program',
    'growth = girth now / girth at zero gauge − 1',
  ),
  girth: term('girth', 'The way once round the outside of the tank at one height, as a tape reads it.', SHOP),
  left: term(
    'left',
    'What remains of the growth after the pressure has been let out.',
    'definition of this program',
    'left = growth under pressure − what springs back',
  ),
  firstYield: term(
    'first yield',
    'The pressure at which the metal first leaves its elastic line anywhere, mostly in the bending of a knuckle.',
    'von Mises 1913: √(σ₁² − σ₁σ₂ + σ₂²) reaches the flow stress in plane stress',
    '√(σ₁² − σ₁σ₂ + σ₂²) = flow stress',
  ),
  barrelYield: term(
    'barrel yield, 0.2 % plastic',
    'The pressure at which the middle of the barrel wall has 0.2 % plastic strain: from here the tank grows in earnest.',
    'after the definition of Rp0.2 in ISO 6892-1',
  ),
  maximum: term(
    'maximum',
    'The highest pressure that the tank bears: beyond it the wall thins faster than it hardens.',
    'Considère 1885; for a closed cylinder, pressure maximum where dσ/dε = √3 σ (Swift 1952; facts in VERIFICATION.md)',
    'dσ/dε = √3 σ for a long closed cylinder; dσ/dε = σ for local necking',
  ),
  ceiling: term(
    'ceiling',
    'The growth left on the diameter that published practice does not pass.',
    'practice reported for vessels to ASME VIII-1 Mandatory Appendix 44: 7 % on diameter, 14 % on volume; thin walls are outside its scope',
  ),
  margin: term(
    'margin',
    'What the tank would bear over what it is asked to bear.',
    'definition of this program',
    'margin = maximum / stretch pressure',
  ),
  unstretched: term(
    'unstretched tank',
    'The tank of the same shape that carries the same duty without being stretched: its hoop stress at the stretch pressure stays at Rp0.2.',
    'EN 13445-3 7.4.2 with f = Rp0.2 / 1.5 at the working pressure',
    't = p Di / (2 Rp0.2 − p)',
  ),
  hold: term(
    'hold',
    'A pause at one pressure, in which the wall creeps on: more and more slowly, by the logarithm of time.',
    'logarithmic rate effect; published bars of 304L',
    'rate of growth ∝ 1 / time',
  ),
  pumped: term(
    'water pumped',
    'Water drawn at atmospheric pressure since filling: the growth of the tank, the compression of the water and of trapped air.',
    'compression of water after EN 1968 annex and IAPWS-95 (see VERIFICATION.md)',
    'pumped = growth + compression of water + compression of air',
  ),
  strain: term(
    'strain',
    'The natural logarithm of how many times longer a fibre of the wall has become.',
    'definition; Hencky 1928',
    'ε = ln(length now / length before)',
  ),
  plastic: term(
    'plastic strain',
    'The part of the strain that stays; one number for all directions.',
    'von Mises equivalent, J2 flow theory',
    'dε = √(2/3 dεᵢⱼ dεᵢⱼ)',
  ),
  wall: term('wall', 'The thickness of the sheet at a place, as measured or as it has thinned.', SHOP),
  tangentLine: term(
    'tangent line',
    'Where the curve of a head ends and the straight wall begins; heights are counted from the bottom one.',
    'EN 13445-3 7.2 (definitions)',
  ),
  range: term(
    'range',
    'Of a hundred such tanks ninety lie within it, five under it and five over it. Trials on made-up tanks show that it is worked out rightly, not that what it assumes of steel is right.',
    'definition of this program; trials: npm run soak -- calibration',
  ),
  survived: term(
    '99 of 100',
    'The pressure that 99 of 100 such tanks survive, as far as the evidence carries.',
    'lower quantile of the maximum over the range of steels',
  ),
  steelSays: term(
    'what the tests say of the steel',
    'All curves that agree with the certificate, the coupons and the test tanks, each as likely as the next.',
    'method and its trial in VERIFICATION.md',
  ),
  proof: term(
    'Rp0.2',
    'Stress at which a tensile test has left its elastic line by 0.2 % of the gauge length.',
    'ISO 6892-1:2019, 3.10.3',
  ),
  strength: term(
    'Rm',
    'Highest force of a tensile test over the first section.',
    'ISO 6892-1:2019, 3.10.1',
    'Rm = Fm / S₀',
  ),
  biaxial: term(
    'biaxial factor',
    'Flow stress of the closed tank over that of a coupon pulled in one direction: the tank is pulled in two.',
    'middle of published criteria, 0.97 ± 0.03 (Hosford 1972 and others)',
  ),
} as const satisfies Readonly<Record<string, Term>>;
