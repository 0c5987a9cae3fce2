/** The one call of csv-parse used here. Its own types would bring Node's into the packages that run anywhere. */
declare module 'csv-parse/browser/esm/sync' {
  export function parse(
    text: string,
    options: {
      readonly delimiter: string;
      readonly relax_column_count: boolean;
      readonly relax_quotes: boolean;
      readonly trim: boolean;
    },
  ): string[][];
}
