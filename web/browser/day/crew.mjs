/** The crew of a browser test: each in a window and behind a link of their own, and what their hands do. */
import { openWindow } from '../harness.mjs';

/** Guards the windows of a test. */
export class Crew {
  /** @param {Awaited<ReturnType<typeof import('../harness.mjs').startBoard>>} board */
  constructor(board) {
    this.board = board;
    /** @type {string[][]} */
    this.errors = [];
    /** @type {import('playwright-core').BrowserContext[]} */
    this.contexts = [];
  }

  /** @param {string} path */
  at(path) {
    return new URL(path, this.board.url).href;
  }

  /**
   * Answers of several shapes; the test says what it reads of them.
   * @param {string} path
   * @param {unknown} body
   * @returns {Promise<any>}
   */
  async post(path, body) {
    const response = await fetch(this.at(path), {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(body),
    });
    if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
    return response.json();
  }

  /**
   * @param {string} record
   * @returns {Promise<import('@hoopwright/wire/day').Snapshot>}
   */
  async snapshot(record) {
    return (await fetch(this.at(`/api/days/${record}`))).json();
  }

  /** @param {Parameters<typeof openWindow>[1]} how */
  async window(how = {}) {
    const one = await openWindow(this.board.browser, how);
    this.contexts.push(one.context);
    this.errors.push(one.errors);
    return one.page;
  }

  /**
   * A project of the tank with a frozen plan.
   * @param {string} tank
   * @returns {Promise<{ project: string, plan: string }>}
   */
  async planned(tank) {
    const { project } = await this.post('/api/projects', {
      name: 'INVENTED: Dunlin',
      file: tank,
      by: 'test',
    });
    const plan = await this.freeze(project.id, 'A');
    return { project: project.id, plan };
  }

  /**
   * @param {string} project
   * @param {string} revision
   * @returns {Promise<string>} digest of the frozen plan
   */
  async freeze(project, revision) {
    const asked = {
      window: 'test',
      version: 1,
      name: 'first stretch',
      revision,
      date: '2026-10-03',
      by: 'test',
    };
    await this.post(`/api/projects/${project}/plans`, asked);
    const { plans } = await (await fetch(this.at(`/api/projects/${project}/plans`))).json();
    return plans.find((one) => one.revision === revision).digest;
  }

  /**
   * The screen of a link, as another machine sees it: a proxy's header makes this browser one.
   * @param {string} record
   * @param {string} role
   * @param {string} name
   * @param {Parameters<typeof openWindow>[1]} how
   */
  async behindLink(record, role, name, how = {}) {
    const { link } = await this.post(`/api/days/${record}/links`, { role, name });
    const page = await this.window(how);
    await page.setExtraHTTPHeaders({ Via: '1.1 test' });
    await page.goto(new URL(link, this.board.url).href);
    await page.waitForSelector('.crew');
    return page;
  }

  async leave() {
    await Promise.all(this.contexts.splice(0).map((context) => context.close()));
  }
}

/**
 * Two steps: what it will do, then yes.
 * @param {import('playwright-core').Page} page
 * @param {string} deed
 */
export async function decide(page, deed) {
  await page.click(`[data-deed="${deed}"]`);
  await page.click('[data-answer="yes"]:not([disabled])');
  await page.waitForSelector('.question', { state: 'detached' });
}
