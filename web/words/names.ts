/** What the numbers of the tank file are called where people change them. */

const NAMES: readonly (readonly [pattern: RegExp, name: string])[] = [
  [/^barrel\.insideDiameter_mm$/, 'Inside diameter of the barrel'],
  [/^barrel\.length_mm$/, 'Length of the barrel, tangent line to tangent line'],
  [/^barrel\.wall_mm$/, 'Wall of the barrel'],
  [/^barrel\.courses\[(\d+)\]\.wall_mm$/, 'Wall of course {1}'],
  [/^barrel\.courses\[(\d+)\]\.length_mm$/, 'Height of course {1}'],
  [/^heads\.top\.depth_mm$/, 'Inside depth of the top head'],
  [/^heads\.bottom\.depth_mm$/, 'Inside depth of the bottom head'],
  [/^heads\.top\.wall_mm$/, 'Wall of the top head'],
  [/^heads\.bottom\.wall_mm$/, 'Wall of the bottom head'],
  [/^heads\.top\.crownRadius_mm$/, 'Crown radius of the top head'],
  [/^heads\.bottom\.crownRadius_mm$/, 'Crown radius of the bottom head'],
  [/^heads\.top\.knuckleRadius_mm$/, 'Knuckle radius of the top head'],
  [/^heads\.bottom\.knuckleRadius_mm$/, 'Knuckle radius of the bottom head'],
  [/^heads\.top\.straightFlange_mm$/, 'Straight flange of the top head'],
  [/^heads\.bottom\.straightFlange_mm$/, 'Straight flange of the bottom head'],
  [/^heads\.top\.halfAngle_deg$/, 'Half angle of the top cone'],
  [/^heads\.bottom\.halfAngle_deg$/, 'Half angle of the bottom cone'],
  [/^heads\.top\.boss\.diameter_mm$/, 'Diameter of the top boss'],
  [/^heads\.bottom\.boss\.diameter_mm$/, 'Diameter of the bottom boss'],
  [/^heads\.top\.boss\.thickness_mm$/, 'Thickness of the top boss'],
  [/^heads\.bottom\.boss\.thickness_mm$/, 'Thickness of the bottom boss'],
  [/^girths\[(\d+)\]\.at_mm$/, 'Height of girth {1}'],
  [/^seams\.girth\[(\d+)\]\.at_mm$/, 'Height of girth seam {1}'],
  [/^seams\.girth\[(\d+)\]\.width_mm$/, 'Width of girth seam {1}'],
  [/^baffles\[(\d+)\]\.at_mm$/, 'Height of baffle {1}'],
  [/^baffles\[(\d+)\]\.width_mm$/, 'Width of baffle {1}'],
  [/^baffles\[(\d+)\]\.thickness_mm$/, 'Thickness of baffle {1}'],
  [/^skirts\[(\d+)\]\.length_mm$/, 'Length of skirt {1}'],
  [/^skirts\[(\d+)\]\.wall_mm$/, 'Wall of skirt {1}'],
  [/^openings\[(\d+)\]\.diameter_mm$/, 'Diameter of opening {1}'],
  [/^openings\[(\d+)\]\.at_mm$/, 'Height of opening {1}'],
  [/^duty\.workingPressure_bar$/, 'Working pressure'],
  [/^duty\.stretchFactor$/, 'Stretch factor'],
  [/^duty\.pump_L_per_min$/, 'Pump'],
  [/^duty\.holds\[(\d+)\]\.pressure_bar$/, 'Pressure of hold {1}'],
  [/^duty\.holds\[(\d+)\]\.minutes$/, 'Length of hold {1}'],
  [/^water\.temperature_C$/, 'Temperature of the water'],
  [/^water\.trappedAir_L$/, 'Air trapped at filling'],
  [/^stand\.gauge_mm$/, 'Height of the pressure gauge'],
];

/** Name of the number at a path, places of lists counted from one; the path itself where it has none. */
export function nameOf(path: string): string {
  for (const [pattern, name] of NAMES) {
    const found = pattern.exec(path);
    if (found !== null) return name.replace('{1}', String(Number(found[1]) + 1));
  }
  return path;
}
