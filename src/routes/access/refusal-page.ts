/** A page of its own: what is refused must not run the page that was asked for. */
export function refusalPage({ status, detail }: { status: number; detail: string }): Response {
	const [what = detail, ...rest] = detail.split('; ');
	const remedy = rest.join('; ');
	const more =
		status === 401
			? `<p>What you typed still stands in the page before this one: <a href="/sign-in" target="_blank">sign in</a> in another tab, go back, and send it again.</p>`
			: `<p>${capital(remedy)}</p><p><a href="/">To what you may see</a>, or <a href="/sign-in">sign in as the owner</a>.</p>`;
	const html = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta name="color-scheme" content="light dark">
<title>Refused · Frostledger</title>
</head>
<body>
<main>
<h1>${what}.</h1>
${more}
</main>
</body>
</html>
`;
	return new Response(html, { status, headers: { 'content-type': 'text/html; charset=utf-8' } });
}

function capital(text: string): string {
	return text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
