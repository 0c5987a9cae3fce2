/** A row: what all channels said at one moment, as one line of the log sheet has it. */

export interface Row {
  /** s since the vent was shut. */
  readonly seconds: number;
  /** Number of the step of the plan. */
  readonly step: string;
  /** By name of the channel, in its unit. */
  readonly values: { readonly [channel: string]: number };
  /** s between the oldest and the newest of its pressures, where wires read them; absent: read at one moment. */
  readonly gauges_s?: number;
  /** Counts the gaps of the clocks so far: no rate is fitted over rows of different parts. */
  readonly part?: number;
}
