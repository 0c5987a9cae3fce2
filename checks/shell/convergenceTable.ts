/** The convergence studies as tables of the page. */
import type { Appendix } from '../table.ts';
import { studies } from './convergence.ts';

export const convergenceTables = (): Appendix => ({
  title: 'Observed order of convergence of the shell',
  body: studies()
    .map(({ what, unit, rows }) =>
      [
        what,
        '',
        `| elements | value at the last load step, ${unit} | change from the mesh before (rms over the load steps), ${unit} | order |`,
        '| ---: | ---: | ---: | ---: |',
        ...rows.map(
          ({ elements, value, change, order }) =>
            `| ${elements} | ${value.toPrecision(9)} | ${change?.toExponential(2) ?? ''} | ${order?.toFixed(2) ?? ''} |`,
        ),
      ].join('\n'),
    )
    .join('\n\n'),
});
