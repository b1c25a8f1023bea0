import { createHash } from 'node:crypto';

/** The look of our pages in what a page that loads nothing needs; its colours are those of `tokens.css`. */
const STYLE = `
:root {
	color-scheme: light dark;
	--paper: light-dark(#f3f5f2, #0f1519);
	--line: light-dark(#bccac9, #37474f);
	--edge: light-dark(#6f8288, #758b94);
	--soft: light-dark(#4a5c65, #a6b7bd);
	--ink: light-dark(#13222b, #e8eeee);
	--snow: light-dark(#e9efef, #dfe7e9);
	--white: light-dark(#b4c9d2, #9db4be);
	--clear: light-dark(#30627f, #3d7796);
	--deep: light-dark(#173f57, #93c9e6);
	--target: 2.75rem;
	--s2: 0.5rem;
	--s4: 1rem;
	--s7: 3.5rem;
	--gutter: clamp(1rem, 4vw, 3rem);
}
body {
	display: grid;
	gap: var(--s7);
	margin: 0;
	padding: var(--s4) var(--gutter);
	background: var(--paper);
	color: var(--ink);
	font: 1rem/1.5 'Atkinson Hyperlegible', ui-sans-serif, system-ui, sans-serif;
}
header, footer { border: 0 solid var(--line); }
header { border-bottom-width: 1px; }
footer { border-top-width: 1px; color: var(--soft); padding-top: var(--s4); }
main { display: grid; gap: var(--s4); max-width: 44rem; }
h1, p { margin: 0; max-width: 38rem; overflow-wrap: anywhere; }
h1 { max-width: none; font-size: clamp(1.6rem, 1.1rem + 2.4vw, 2.75rem); line-height: 1.12; text-wrap: balance; }
a { color: inherit; text-decoration-color: var(--edge); text-underline-offset: 0.18em; }
.name { display: inline-flex; align-items: center; gap: var(--s2); min-height: var(--target); font-weight: 700; text-decoration: none; }
.go { display: inline-flex; align-items: center; min-height: var(--target); }
:focus-visible { outline: 3px solid var(--deep); outline-offset: 2px; }
`;

const STYLE_HASH = createHash('sha256').update(STYLE).digest('base64');

export const REFUSED_PAGE_HEADERS: Readonly<Record<string, string>> = {
	'content-type': 'text/html; charset=utf-8',
	'content-security-policy':
		`default-src 'none'; style-src 'sha256-${STYLE_HASH}'; ` +
		"base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
};

export interface RefusedPage {
	title: string;
	/** A sentence with its full stop: what is the case. */
	heading: string;
	/** What to do, in sentences. */
	more: readonly string[];
	links?: readonly { to: string; text: string; inNewTab?: boolean }[];
}

/**
 * A page that stands alone: for what is refused before a page of the app may run, and where the app's
 * own files are out of reach. It runs nothing and loads nothing.
 */
export function refusedPage({ title, heading, more, links = [] }: RefusedPage): string {
	const paragraphs = more.map((sentence) => `<p>${escaped(sentence)}</p>`);
	const ways = links.map(({ to, text, inNewTab }) => {
		const where = inNewTab ? ' target="_blank"' : '';
		return `<p><a class="go" href="${escaped(to)}"${where}>${escaped(text)}</a></p>`;
	});
	return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escaped(title)} · Frostledger</title>
<style>${STYLE}</style>
</head>
<body>
<header><a class="name" href="/">${MARK}Frostledger</a></header>
<main>
<h1>${escaped(heading)}</h1>
${[...paragraphs, ...ways].join('\n')}
</main>
<footer><p>An estimate, not a permission. A drilled hole decides, and the orders of the local authority come first.</p></footer>
</body>
</html>
`;
}

const MARK = `<svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
<path d="M3 3h18v4H3z" fill="var(--snow)"/><path d="M3 7h18v4H3z" fill="var(--white)"/>
<path d="M3 11h18v8q-4.500 3-9 0t-9 1z" fill="var(--clear)"/>
<path d="M3 3h18M3 3v17M6 7H3M8 11H3M6 15H3" fill="none" stroke="currentColor"/></svg>`;

const ENTITIES: Readonly<Record<string, string>> = {
	'&': '&amp;',
	'<': '&lt;',
	'>': '&gt;',
	'"': '&quot;'
};

function escaped(text: string): string {
	return text.replaceAll(/[&<>"]/g, (letter) => ENTITIES[letter] ?? letter);
}
