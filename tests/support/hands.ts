import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { IsoDate } from '#lib/model/calendar.ts';

export interface BroughtFile {
	name: string;
	mimeType: string;
	buffer: Buffer;
}

/** How a person acts on a page. */
export interface Hands {
	/** A link, a button, a summary or a box to tick. */
	press(target: Locator): Promise<void>;
	type(field: Locator, text: string): Promise<void>;
	typeDay(field: Locator, on: IsoDate): Promise<void>;
	choose(list: Locator, label: string): Promise<void>;
	bring(field: Locator, file: BroughtFile): Promise<void>;
}

/** What a finger hits at the least, in pixels, by WCAG 2.2 (2.5.8). */
const TARGET_px = 24;

/** One thumb: nothing is pointed at, and what it presses is big enough. */
export function thumb(page: Page): Hands {
	const press = async (target: Locator) => {
		await target.scrollIntoViewIfNeeded();
		// A box is ticked by its words, too; a link within a sentence is as tall as its line.
		const { height_px, isInline } = await target.evaluate((node) => ({
			height_px: (node.closest('label') ?? node).getBoundingClientRect().height,
			isInline: node.matches('p a') && getComputedStyle(node).display === 'inline'
		}));
		if (!isInline) expect(height_px, await nameOf(target)).toBeGreaterThanOrEqual(TARGET_px);
		await target.tap();
	};
	const type = async (field: Locator, text: string) => {
		await press(field);
		await field.fill('');
		await page.keyboard.type(text);
	};
	return {
		press,
		type,
		typeDay: (field, on) => field.fill(on),
		choose: async (list, label) => {
			await list.selectOption({ label });
		},
		bring: (field, file) => field.setInputFiles(file)
	};
}

/** As many stops a person would put up with. */
const STOPS = 150;

/** No mouse: everything is come to by Tab, and seen to be come to. */
export function keyboard(page: Page): Hands {
	const reach = async (target: Locator) => {
		await target.waitFor();
		for (let stops = 0; stops < STOPS; stops++) {
			if (await target.evaluate((node) => node === document.activeElement)) {
				expect(await ringOf(target), `focus on ${await nameOf(target)}`).toEqual(SEEN);
				return;
			}
			await page.keyboard.press('Tab');
		}
		throw new Error(`Tab does not come to ${await nameOf(target)}`);
	};
	return {
		async press(target) {
			await reach(target);
			const isTick = await target.evaluate((node) => node.matches('[type=checkbox]'));
			await page.keyboard.press(isTick ? 'Space' : 'Enter');
		},
		async type(field, text) {
			await reach(field);
			await page.keyboard.press('Control+A');
			await page.keyboard.type(text);
		},
		async typeDay(field, on) {
			await reach(field);
			const [year, month, day] = on.split('-');
			await page.keyboard.type(`${month}${day}${year}`);
			expect(await field.inputValue()).toBe(on);
		},
		async choose(list, label) {
			await reach(list);
			await page.keyboard.type(label);
			expect(await list.locator('option:checked').innerText()).toBe(label);
		},
		async bring(field, file) {
			for (let tries = 0; tries < 3; tries++) {
				await reach(field);
				const asked = page.waitForEvent('filechooser', { timeout: 8000 }).catch(() => null);
				await page.keyboard.press('Enter');
				const chooser = await asked;
				if (chooser) return chooser.setFiles(file);
			}
			throw new Error('Enter opens no choice of files');
		}
	};
}

const SEEN = { hasRing: true, isOnScreen: true };

/** Whether the eye finds where the keyboard is. */
function ringOf(target: Locator): Promise<typeof SEEN> {
	return target.evaluate((node) => {
		const { outlineStyle, outlineWidth } = getComputedStyle(node);
		const { top, bottom } = node.getBoundingClientRect();
		return {
			hasRing: outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2,
			isOnScreen: bottom > 0 && top < innerHeight
		};
	});
}

function nameOf(target: Locator): Promise<string> {
	return target.evaluate((node) => `${node.tagName} ${node.textContent?.trim().slice(0, 60)}`);
}
