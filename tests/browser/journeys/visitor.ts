import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Download, type Page } from 'playwright-core';
import { inject } from 'vitest';
import { CHROMIUM_FLAGS, findChromium } from '../../chromium.ts';

/** The two windows the app is made for. */
export const DESKTOP = { viewport: { width: 1440, height: 900 }, hasTouch: false };
export const TABLET = { viewport: { width: 1180, height: 820 }, hasTouch: true };

export type Device = typeof DESKTOP;

/** A person with a browser of her own: its profile lasts as long as she does. */
export class Visitor {
  readonly errors: string[] = [];
  readonly #folder = mkdtempSync(join(tmpdir(), 'keyblock-visitor-'));
  #context: BrowserContext | null = null;

  constructor(readonly device: Device) {}

  /** Opens the app in a new window of her browser, which starts when it does not run. */
  async open(): Promise<Page> {
    this.#context ??= await chromium.launchPersistentContext(this.#folder, {
      executablePath: findChromium()!,
      args: CHROMIUM_FLAGS,
      headless: true,
      acceptDownloads: true,
      ...this.device,
    });
    const page = await this.#context.newPage();
    page.on('pageerror', (error) => this.errors.push(error.message));
    await page.goto(inject('appUrl'));
    return page;
  }

  /** Ends the browser as a crash would; the profile stays. */
  async crash(): Promise<void> {
    await this.#context?.close();
    this.#context = null;
  }

  async leave(): Promise<void> {
    await this.crash();
    rmSync(this.#folder, { recursive: true, force: true });
  }
}

/** Waits until the workers rest and the fine picture stands. */
export async function settled(page: Page): Promise<void> {
  await page.getByText(/^\d+\.\d s · \d+ MB$/).waitFor({ timeout: 90_000 });
}

/** Bytes of a file that the page gave out. */
export async function bytesOf(download: Download): Promise<Uint8Array> {
  return new Uint8Array(readFileSync(await download.path()));
}
