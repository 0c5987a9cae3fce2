import { fileURLToPath } from 'node:url';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ask } from '../server/visitor.ts';
import { importRecord } from '../store/recordFile.ts';
import { begun, dayScene, waited } from './dayScene.ts';
import { TEST_TANK } from './rehearsed.ts';

const inExamples = (name: string): string =>
  fileURLToPath(new URL(`../../examples/${name}`, import.meta.url));

test('a day answers with the tank file of its own plan, also after the project went on', async () => {
  const day = dayScene();
  const record = await begun(day);
  const later = JSON.stringify({ ...TEST_TANK, name: 'INVENTED: Dunlin, changed' });
  day.store.projects.save(day.project, { basedOn: 1, file: later });
  const answer = await waited(day, ask(day.here, `/api/days/${record}/tank`));
  expect(await answer.text()).toBe(JSON.stringify(TEST_TANK));
  await day.days.close();
});

test('a record that was brought in finds its tank among the projects by the digest in its plan', async () => {
  const day = dayScene();
  importRecord(day.store.records, inExamples('dunlin-rehearsed.ndjson'));
  const { record } = day.store.records.list()[0].about;
  const path = `/api/days/${record}/tank`;
  expect((await waited(day, ask(day.here, path))).status).toBe(404);
  const file = readFileSync(inExamples('dunlin-oxidiser.json'), 'utf8');
  const { project } = day.store.projects.create({ name: 'x', file });
  day.store.projects.save(project.id, { basedOn: 1, file: JSON.stringify(TEST_TANK) });
  expect(await (await waited(day, ask(day.here, path))).text()).toBe(file);
  await day.days.close();
});
