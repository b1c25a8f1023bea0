import { expect, test } from 'vitest';
import { markup } from '../../../../src/commands/validate/pictures/markup.ts';

test('what is put into markup is escaped, also inside an attribute', () => {
	const name = `<b> & "it's"`;
	expect(markup`<p title="${name}">${name}</p>`.text).toBe(
		'<p title="&lt;b&gt; &amp; &quot;it&#39;s&quot;">&lt;b&gt; &amp; &quot;it&#39;s&quot;</p>'
	);
});

test('markup in markup stays, lists are joined, nothing is written as nothing', () => {
	const items = ['a', '<'].map((each) => markup`<li>${each}</li>`);
	expect(markup`<ul>${items}${null}${4}</ul>`.text).toBe('<ul><li>a</li><li>&lt;</li>4</ul>');
});
