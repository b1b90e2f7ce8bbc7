// What a person does in the workbench, and what she sees there. Works for a page with a server behind it and for one without.
import { chromium } from 'playwright-core';
import { chromiumPath } from './chromium.mjs';

const loopbackOnly = '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost, EXCLUDE *.localhost'; // whatever the page wants
const browserArguments = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', loopbackOnly];

const isLoopback = (url) => /^(?:data|blob):/.test(url) || /^(?:https?|wss?):\/\/(?:127\.0\.0\.1|(?:[a-z0-9-]+\.)*localhost)[:/]/i.test(url);
/** A made-up address inside webviews, answered by their service worker and never sent. */
const isWebviewResource = (url) => /\.vscode-resource\.vscode-cdn\.net\//.test(url);

/** The editor draws spaces as no-break spaces and pads hints with hair spaces. */
const plainSpaces = (text) => text.replace(/[\u00a0\u2000-\u200a]/g, ' ').replace(/[\u200b-\u200f\u2060\ufeff]/g, '');

export async function launchBrowser() {
  return chromium.launch({ executablePath: chromiumPath(), headless: true, args: browserArguments });
}

/** A fresh page with storage of its own. `external` collects every address outside that it asked for. */
export async function newPage(browser, { width = 1400, height = 1100 } = {}) {
  const context = await browser.newContext({ viewport: { width, height }, permissions: ['clipboard-read', 'clipboard-write'] });
  const page = await context.newPage();
  const external = [];
  page.on('request', (request) => {
    const url = request.url();
    if (!isLoopback(url) && !isWebviewResource(url)) external.push(url);
  });
  return { context, page, external };
}

export class Workbench {
  constructor(page) {
    this.page = page;
  }

  async open(url) {
    await this.page.goto(url);
    await this.page.waitForSelector('.monaco-workbench .part.editor', { timeout: 90_000 });
    await this.page.waitForSelector('.statusbar-item', { timeout: 60_000 });
  }

  /** Opens a file through the explorer: there is no search for files where the folder lies in memory. */
  async openFile(path) {
    const parts = path.split('/');
    const tree = this.page.locator('.explorer-folders-view');
    for (const [i, part] of parts.entries()) {
      const row = tree.locator(`.monaco-list-row[aria-label^="${part}"]`).first();
      await row.waitFor({ timeout: 60_000 });
      if (i === parts.length - 1) await row.dblclick();
      else if ((await row.getAttribute('aria-expanded')) !== 'true') await row.click();
    }
    await this.page.locator(`.tab.active[data-resource-name="${parts.at(-1)}"]`).waitFor({ timeout: 30_000 });
    await this.editor().waitFor();
  }

  /** Brings a file that is open to the front. */
  async activate(path) {
    await this.page.locator(`.tab[data-resource-name="${path.split('/').at(-1)}"]`).first().click();
    await this.editor().waitFor();
  }

  /** Closes the tab whose label contains a text. */
  async closeTab(label) {
    const tab = this.page.locator('.tab', { hasText: label }).first();
    await tab.hover();
    await tab.locator('.codicon-close').click();
    await tab.waitFor({ state: 'detached' });
  }

  async #quickInput(key, text, rowText, closes) {
    const box = this.page.locator('.quick-input-widget input[type=text]');
    await this.page.keyboard.press(key);
    await box.waitFor({ timeout: 15_000 });
    await box.fill(text);
    await this.page.locator('.quick-input-list .monaco-list-row', { hasText: rowText }).first().waitFor({ timeout: 20_000 });
    await this.page.keyboard.press('Enter');
    if (closes) await box.waitFor({ state: 'hidden' });
  }

  /** Any command of the palette, by its title. */
  async command(title, { closes = true } = {}) {
    await this.#quickInput('F1', `>${title}`, title, closes);
  }

  async goTo(line, column = 1) {
    await this.#quickInput('Control+G', `:${line}:${column}`, `line ${line}`, true);
  }

  async focusEditor() {
    await this.command('View: Focus Active Editor Group');
  }

  editor() {
    return this.page.locator('.editor-group-container.active .monaco-editor[role=code]').first();
  }

  async waitForSquiggle(kind = 'error', timeout = 60_000) {
    await this.editor().locator(`.squiggly-${kind}`).first().waitFor({ state: 'attached', timeout });
  }

  /** Errors and warnings as the status bar counts them: quick to poll, no panel needed. */
  async counts() {
    const label = (await this.page.locator('#status\\.problems').getAttribute('aria-label')) ?? '';
    const of = (word) => Number(new RegExp(`${word}s?: (\\d+)`, 'i').exec(label)?.[1] ?? 0);
    return { errors: of('Error'), warnings: of('Warning') };
  }

  /** Rows of the Problems panel: label is what a screen reader says, with severity, line and column; text is what is drawn. */
  async problems() {
    await this.command('Problems: Focus on Problems View');
    await this.page.locator('.markers-panel').waitFor();
    await this.page.waitForTimeout(500); // the tree is drawn again a moment after the findings change
    const rows = await this.page.locator('.markers-panel .monaco-list-row').evaluateAll((elements) => elements.map((row) => ({ label: row.getAttribute('aria-label') ?? '', text: row.innerText.replace(/\s+/g, ' ').trim() })));
    return rows
      .map(({ label, text }) => {
        const place = /at line (\d+) and character (\d+)/.exec(label);
        return { label, text, severity: /^(Error|Warning|Info|Hint)/.exec(label)?.[1], line: Number(place?.[1]), column: Number(place?.[2]) };
      })
      .filter((row) => row.severity !== undefined && !Number.isNaN(row.line));
  }

  #hoverBox() {
    return this.page.locator('.monaco-hover:not(.hidden) .monaco-hover-content').first();
  }

  /** Text of the hover at a place, by the keyboard. What the server says may come after what the editor has: `shows` is waited for. */
  async hover(line, column, { shows = /./, timeout = 15_000 } = {}) {
    await this.focusEditor();
    await this.goTo(line, column);
    await this.page.keyboard.press('Control+K');
    await this.page.keyboard.press('Control+I');
    await this.#hoverBox().waitFor({ timeout });
    await this.page.waitForTimeout(300);
    return (await this.until(() => this.#hoverBox().innerText(), (text) => shows.test(text), timeout)).trim();
  }

  /** Scrolls the hover that is open to a share of its height, 0 to 1: it is lower than what it holds. */
  async scrollHover(share) {
    await this.#hoverBox().evaluate((content, to) => {
      const box = content.closest('.monaco-scrollable-element') ?? content;
      for (const element of [content, box, box.parentElement]) element.scrollTop = to * element.scrollHeight;
    }, share);
    await this.page.waitForTimeout(300);
  }

  /** Hides the panel below, so that more of the text and of a hover is seen. */
  async hidePanel() {
    if (await this.page.locator('.part.panel').isVisible()) await this.command('View: Toggle Panel Visibility');
  }

  /** Text of the hover over the first place where a text is drawn, by the mouse. */
  async hoverMouse(text) {
    const box = await this.editor().locator('.view-line span span', { hasText: text }).first().boundingBox();
    await this.page.mouse.move(box.x + box.width - 4, box.y + box.height / 2, { steps: 5 });
    await this.#hoverBox().waitFor({ timeout: 15_000 });
    return (await this.#hoverBox().innerText()).trim();
  }

  actionMenu() {
    return this.page.locator('.action-widget:not(.action-list-submenu-panel)');
  }

  /** Titles of the quick fixes offered at a place; leaves the menu open. No fixes: an empty list and no menu. */
  async quickFixes(line, column) {
    await this.focusEditor();
    await this.goTo(line, column);
    await this.page.keyboard.press('Control+.');
    const menu = this.actionMenu();
    const none = this.page.locator('.monaco-editor-overlaymessage');
    await menu.or(none).first().waitFor({ timeout: 15_000 });
    if (!(await menu.isVisible())) return [];
    return menu.locator('.monaco-list-row.action').allInnerTexts();
  }

  /** Picks from the open menu with the arrow keys: a click is swallowed until the mouse has really moved. */
  async pickQuickFix(title) {
    const menu = this.actionMenu();
    const count = await menu.locator('.monaco-list-row.action').count();
    for (let i = 0; i <= count; i++) {
      const label = await menu.locator('.monaco-list-row.action.focused').getAttribute('aria-label');
      if (label?.startsWith(title)) {
        await this.page.keyboard.press('Enter');
        await menu.waitFor({ state: 'hidden' });
        return;
      }
      await this.page.keyboard.press('ArrowDown');
    }
    throw new Error(`no quick fix "${title}"`);
  }

  /** The bulb in the line of the cursor; opens the same menu. */
  async clickLightBulb(line, column) {
    await this.focusEditor();
    await this.goTo(line, column);
    await this.editor().locator(".lightBulbWidget, [class*='codicon-gutter-lightbulb']").first().click({ timeout: 15_000 });
    await this.actionMenu().waitFor({ timeout: 15_000 });
    return this.actionMenu().locator('.monaco-list-row.action').allInnerTexts();
  }

  /** Words offered by completion at a place, as a screen reader says them; leaves the list open. */
  async completions(line, column) {
    await this.focusEditor();
    await this.goTo(line, column);
    await this.page.keyboard.press('Control+Space');
    const rows = this.page.locator('.suggest-widget.visible .monaco-list-row');
    await rows.first().waitFor({ timeout: 15_000 });
    await this.page.waitForTimeout(300);
    return rows.evaluateAll((elements) => elements.map((row) => row.getAttribute('aria-label') ?? ''));
  }

  async #visibleLines() {
    const lines = await this.editor().locator('.view-line').evaluateAll((elements) => elements
      .sort((a, b) => parseFloat(a.style.top) - parseFloat(b.style.top))
      .map((line) => {
        // A hint is injected text: spans whose class has "dyn-rule".
        const copy = line.cloneNode(true);
        const hints = [...copy.querySelectorAll('span[class*="dyn-rule"]')].map((span) => {
          span.remove();
          return span.textContent;
        });
        return { text: copy.textContent, hint: hints.join('') };
      }));
    return lines.map(({ text, hint }) => ({ text: plainSpaces(text), hint: plainSpaces(hint).trim() }));
  }

  /** The visible lines as the document has them, hints left out. */
  async lines() {
    return (await this.#visibleLines()).map(({ text }) => text);
  }

  /** The visible lines that have inlay hints. */
  async inlayHints() {
    return (await this.#visibleLines()).filter(({ hint }) => hint !== '');
  }

  /** Colours of the text in a visible line, one entry for each run: how highlighting is seen. */
  async colours(lineText) {
    return this.editor().locator('.view-line', { hasText: lineText }).first().evaluate((line) => [...line.querySelectorAll('span > span')].map((span) => ({ text: span.textContent.replace(/\u00a0/g, ' '), colour: getComputedStyle(span).color })));
  }

  /** The whole text of the active document, through the clipboard, since only visible lines are in the page. */
  async text() {
    await this.page.evaluate(() => navigator.clipboard.writeText(''));
    // A busy page may take its time to copy, and a widget that is just closing may have the focus still.
    for (let tries = 0; tries < 8; tries++) {
      await this.focusEditor();
      await this.page.keyboard.press('Control+A');
      await this.page.keyboard.press('Control+C');
      await this.page.waitForTimeout(200 + 200 * tries);
      const text = await this.page.evaluate(() => navigator.clipboard.readText());
      if (text !== '') return text;
    }
    return '';
  }

  /** Puts a text in the place of the whole active document, by pasting. */
  async replaceText(text) {
    await this.focusEditor();
    await this.page.evaluate((value) => navigator.clipboard.writeText(value), text);
    await this.page.keyboard.press('Control+A');
    await this.page.keyboard.press('Control+V');
  }

  /** Visible text of one channel of the Output panel. */
  async output(channel) {
    await this.command('Output: Show Output Channels...', { closes: false });
    await this.page.locator('.quick-input-list .monaco-list-row', { hasText: channel }).first().waitFor({ timeout: 10_000 });
    await this.page.locator('.quick-input-widget input[type=text]').fill(channel);
    await this.page.waitForTimeout(400);
    await this.page.keyboard.press('Enter');
    await this.page.waitForTimeout(1000);
    const lines = await this.page.locator('.output-view .view-line').evaluateAll((elements) => elements.map((line) => [parseFloat(line.style.top), line.textContent]));
    return lines.sort((a, b) => a[0] - b[0]).map(([, line]) => plainSpaces(line));
  }

  notifications() {
    return this.page.locator('.notifications-toasts .notification-list-item-message').allInnerTexts();
  }

  async save() {
    await this.page.keyboard.press('Control+S');
    await this.page.locator('.tab.active.dirty').waitFor({ state: 'detached' });
  }

  async escape() {
    await this.page.keyboard.press('Escape');
  }

  /** Reads until a test holds; the last value read is in the error otherwise. */
  async until(read, test, timeout = 20_000) {
    const end = Date.now() + timeout;
    for (;;) {
      const value = await read();
      if (test(value)) return value;
      if (Date.now() > end) throw new Error(`waited ${timeout / 1000} s in vain; last seen: ${JSON.stringify(value)}`);
      await this.page.waitForTimeout(150);
    }
  }

  async screenshot(path) {
    await this.page.screenshot({ path });
  }
}
