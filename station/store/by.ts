/** Who did it, shown to the other windows. */
export interface By {
  readonly by?: string;
}

/** Only the name out of what was given, and no key where there is none. */
export const whose = ({ by }: By): By => (by === undefined ? {} : { by });
