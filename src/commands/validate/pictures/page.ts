import { readFileSync } from 'node:fs';
import type { Findings } from '../findings.ts';
import type { Report } from '../report.ts';
import { errorsByAge } from './error-by-age.ts';
import { errorsByGroup } from './error-by-group.ts';
import { errorsByThickness } from './error-by-thickness.ts';
import { iceOutErrors } from './ice-out-errors.ts';
import { Markup, markup } from './markup.ts';
import { rankHistogram } from './rank-histogram.ts';
import { reliability } from './reliability.ts';
import { scatter } from './scatter.ts';
import { scoresTable } from './scores-table.ts';
import { counted } from './words.ts';
import { leftOutWords } from './left-out-words.ts';

/** The app's own colours, so that ice looks the same here. */
const TOKENS = new URL('../../../lib/ui/styles/tokens.css', import.meta.url);
const STYLE = new URL('page.css', import.meta.url);

/** The whole report as one page that needs nothing else: no script, no other address. */
export function reportPage(folder: string, report: Report, findings: Findings): string {
	const title = 'How the estimates held against measured winters';
	return markup`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>${sheet(TOKENS)}${sheet(STYLE)}</style>
</head>
<body>
<main>
<header>
<p class="soft">Frostledger, validation of the folder “${folder}”</p>
<h1>${title}</h1>
${opening(report, findings)}
</header>
${scoresTable(report)}
${reliability(findings)}
${rankHistogram(findings)}
${scatter(findings)}
${errorsByGroup(findings)}
${errorsByThickness(findings)}
${errorsByAge(findings)}
${iceOutErrors(findings)}
</main>
</body>
</html>
`.text;
}

function opening({ winters, leftOut, notes }: Report, { prior }: Findings): Markup {
	return markup`<p>${counted(winters, 'winter')} with ${counted(prior.predictions.length, 'reading')} scored; ${leftOutWords(leftOut)}. The scores are of the open part of lakes that somebody measured, not of currents, ridges or shores, and a drilled hole decides.</p>
<details>
<summary>How it was scored</summary>
<ul>${notes.map((note) => markup`<li>${note}</li>`)}</ul>
</details>`;
}

function sheet(file: URL): Markup {
	return new Markup(readFileSync(file, 'utf8'));
}
