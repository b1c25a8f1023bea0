import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { IsoDate } from '#lib/model/calendar.ts';
import { DESK, PHONE } from './browser.ts';
import { startBrowserAt } from './clock.ts';
import { keyboard, thumb, type BroughtFile, type Hands } from './hands.ts';
import type { Story } from './story.ts';

/** The three people are each a phone in one hand, and a desk without a mouse. */
export const PLACES = [
	{ name: 'on a phone, by thumb', screen: PHONE, hands: thumb },
	{ name: 'at a desk, by keyboard alone', screen: DESK, hands: keyboard }
] as const;

export interface Person {
	page: Page;
	hands: Hands;
}

/** Opens the app for the first time, at an instant. */
export async function arrive(
	app: Story,
	{ screen, hands }: (typeof PLACES)[number],
	instant: string
): Promise<Person> {
	const page = await app.open('about:blank', screen);
	await startBrowserAt(page.context(), instant);
	await page.goto('/');
	// The invented lake comes by itself, and pushes down what a thumb would aim at.
	await page.getByText('is being worked out').waitFor({ state: 'hidden' });
	return { page, hands: hands(page) };
}

export interface LakeFacts {
	name: string;
	latitude: string;
	longitude: string;
	area: string;
	depth: string;
}

/** Makes a lake from the first page on; it ends where the freeze-up is asked for. The answer is its id. */
export async function makeLake({ page, hands }: Person, facts: LakeFacts): Promise<string> {
	await hands.press(page.getByRole('link', { name: 'Make a lake' }));
	await hands.type(page.getByLabel('Name', { exact: true }), facts.name);
	await hands.type(page.getByLabel('Latitude'), facts.latitude);
	await hands.type(page.getByLabel('Longitude'), facts.longitude);
	await hands.type(page.getByLabel(/^Area/), facts.area);
	await hands.type(page.getByLabel(/^Mean depth/), facts.depth);
	await hands.press(page.getByRole('button', { name: 'Make the lake' }));
	await page.getByText(`${facts.name} is there.`).waitFor();
	return new URL(page.url()).pathname.split('/')[2] ?? '';
}

export async function recordFreezeUp({ page, hands }: Person, on: IsoDate): Promise<void> {
	await hands.typeDay(page.getByLabel('Froze over'), on);
	await hands.press(page.getByRole('button', { name: 'Store the days' }));
	await page.getByText('Stored.', { exact: true }).waitFor();
}

/** From the freeze-up on, by the next step that the page offers. */
export async function bringWeather({ page, hands }: Person, file: BroughtFile): Promise<void> {
	await hands.press(page.getByRole('link', { name: 'Its weather' }));
	await hands.bring(page.getByLabel(/Choose a CSV file/), file);
	await page.getByText('A daily record in').waitFor();
	await hands.press(page.getByRole('button', { name: 'Import' }));
	await page.getByRole('heading', { name: / days stored$/ }).waitFor();
}

/** Goes to one of the lake's questions, and reads its answer, which has to be seen without scrolling. */
export async function ask({ page, hands }: Person, link: string, path: RegExp): Promise<string> {
	await hands.press(page.getByRole('link', { name: link, exact: true }));
	await page.waitForURL(path);
	return answerOf(page);
}

/** What a page says first. */
export async function answerOf(page: Page): Promise<string> {
	const heading = page.getByRole('heading', { level: 1 });
	await heading.waitFor();
	const box = await heading.boundingBox();
	const height = page.viewportSize()?.height ?? 0;
	expect((box?.y ?? height) + (box?.height ?? 0), 'the answer without scrolling').toBeLessThan(
		height
	);
	// Its numbers are tied to their units by another kind of space.
	return (await heading.innerText()).replace(/\s/g, ' ');
}

/** The text of a page's part, by its heading. */
export async function told({ page }: Person, name: string | RegExp): Promise<string> {
	const text = await page.getByRole('region', { name }).innerText();
	return text.replace(/\s+/g, ' ');
}
