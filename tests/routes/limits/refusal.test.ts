import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { toldInTrouble } from '../../../src/routes/limits/in-trouble.ts';
import { refusal } from '../../../src/routes/limits/refusal.ts';
import { refuseForeign } from '../../../src/routes/own-origin.ts';
import { refusalPage } from '../../../src/routes/access/refusal-page.ts';

const SAID = { status: 429, title: 'Too Many Requests', message: 'Too much <at> once. Wait.' };

function asked(path: string, headers: Record<string, string>, method = 'POST') {
	const url = new URL(path, 'http://localhost');
	return { url, request: new Request(url, { method, headers }) };
}

const PERSON = { accept: 'text/html,*/*' };

/** What a browser would refuse of a page by its own policy. */
function offences(html: string, policy: string | null): string[] {
	const [, style = ''] = /<style>(.*?)<\/style>/s.exec(html) ?? [];
	const hash = createHash('sha256').update(style).digest('base64');
	return [
		...(html.match(/<script|\sstyle=|\son\w+=|<link|<img|https?:/g) ?? []),
		...(policy?.includes(`'sha256-${hash}'`) ? [] : ['style']),
		...(/unsafe|\*/.test(policy ?? '') ? [policy ?? ''] : [])
	];
}

test('a person is told by a page that keeps to its own policy', async () => {
	for (const response of [
		refusal(asked('/sources', PERSON), SAID),
		refusal(asked('/sources', PERSON, 'GET'), SAID),
		refusalPage({ status: 401, detail: 'Nobody is signed in; sign in' }),
		refusalPage({ status: 403, detail: 'Not yours; ask the owner' })
	]) {
		expect(response.headers.get('content-type')).toBe('text/html; charset=utf-8');
		const html = await response.text();
		expect(offences(html, response.headers.get('content-security-policy'))).toEqual([]);
		expect(html).toContain('A drilled hole decides');
		expect(html).toMatch(/<h1>[^<]+\.<\/h1>/);
	}
});

test('what is told in it is text', async () => {
	const html = await refusal(asked('/sources', PERSON), SAID).text();
	expect(html).toContain('<p>Too much &lt;at&gt; once. Wait.</p>');
});

test('the API’s callers get problem details, whatever they accept', async () => {
	for (const headers of [PERSON, {}]) {
		const response = refusal(asked('/api/v1/lakes', headers), SAID);
		expect(response.headers.get('content-type')).toBe('application/problem+json');
		expect(await response.json()).toMatchObject({ status: 429, detail: SAID.message });
	}
});

test('who comes from another origin is told where to go', async () => {
	const headers = { ...PERSON, origin: 'http://elsewhere.example' };
	const page = refuseForeign(asked('/lakes/new', headers));
	expect(page?.status).toBe(403);
	const html = await page?.text();
	expect(html).toContain('came from http://elsewhere.example');
	expect(html).toContain('Open http://localhost and');
});

test('a full disk that is found before any page is told with 503, and other failures are not hidden', async () => {
	const log: string[] = [];
	const write = process.stderr.write;
	process.stderr.write = (text) => log.push(String(text)) > 0;
	const event = asked('/lakes/new', PERSON);
	const full = Object.assign(new Error('disk full'), { code: 'SQLITE_FULL' });
	const response = await toldInTrouble(event, () => Promise.reject(full)).finally(() => {
		process.stderr.write = write;
	});
	expect(response.status).toBe(503);
	expect(await response.text()).toMatch(/disk that the data folder lies on is full.*Make room/);
	expect(log.join('')).toContain('/lakes/new');
	const other = toldInTrouble(event, () => Promise.reject(new Error('a fault')));
	await expect(other).rejects.toThrow('a fault');
});

test('pages that load nothing have the colours of all others', () => {
	const tokens = new Set(
		readFileSync('src/lib/ui/styles/tokens.css', 'utf8').match(/--[\w-]+: [^;]+;/g)
	);
	for (const path of ['src/lib/server/services/refused-page.ts', 'src/error.html']) {
		const used = readFileSync(path, 'utf8').match(/--[\w-]+: [^;]+;/g) ?? [];
		expect(used.length).toBeGreaterThan(10);
		expect(used.filter((token) => !tokens.has(token))).toEqual([]);
	}
});
