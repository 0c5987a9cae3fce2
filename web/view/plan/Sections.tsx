/** What stands behind the card, as it stands on the papers: target, water, dangers, places, instruments, limits, checklist. */
import type { Block, PlanSheet, Section } from '@hoopwright/report/plan';
import { Wide } from '../table/Wide.tsx';
import { Back, partId } from './Contents.tsx';

export function Sections({ sheet }: { readonly sheet: PlanSheet }) {
  return (
    <div className="plan-sections">
      {sheet.sections.map((section, i) => (
        <One key={section.title} id={partId(i)} section={section} />
      ))}
    </div>
  );
}

function One({ id, section }: { readonly id: string; readonly section: Section }) {
  return (
    <section id={id} data-part={section.part} aria-label={section.title}>
      <h2>{section.title}</h2>
      <Back />
      {section.blocks.map((block, i) => (
        // oxlint-disable-next-line react/no-array-index-key -- blocks have no name and keep their order
        <BlockOf key={i} block={block} title={section.title} />
      ))}
    </section>
  );
}

function BlockOf({ block, title }: { readonly block: Block; readonly title: string }) {
  switch (block.kind) {
    case 'lines':
      return (
        <>
          {block.lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </>
      );
    case 'figures':
      return (
        <dl className="in-front">
          {block.rows.map(({ figure, text }) => (
            <div key={text}>
              <dt>{figure}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      );
    case 'table':
      return <TableOf head={block.head} rows={block.rows} title={title} />;
    case 'cautions':
      return (
        <ul className="cautions">
          {block.cautions.map(({ id, text }) => (
            <li key={id} data-caution={id}>
              {text}
            </li>
          ))}
        </ul>
      );
    case 'boxes':
      return (
        <ul className="boxes">
          {block.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      );
  }
}

interface TableProps {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly title: string;
}

function TableOf({ head, rows, title }: TableProps) {
  return (
    <Wide label={title}>
      <table className="figures wordy">
        <caption className="unseen">{title}</caption>
        <thead>
          <tr>
            {head.map((cell) => (
              <th key={cell} scope="col">
                {cell}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.join(' ')}>
              {row.map((cell, i) =>
                i === 0 ? (
                  <th key={head[i]} scope="row">
                    {cell}
                  </th>
                ) : (
                  <td key={head[i]}>{cell}</td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </Wide>
  );
}
