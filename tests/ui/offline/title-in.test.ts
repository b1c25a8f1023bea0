import { expect, test } from 'vitest';
import { titleIn } from '#lib/ui/offline/title-in.ts';

test('a page calls itself by its title, without the app and with its letters as typed', () => {
	expect(titleIn('<head><title>Pond (invented) · Frostledger</title>')).toBe('Pond (invented)');
	expect(titleIn('<title>Elk &amp; &lt;Moose> · Frostledger</title>')).toBe('Elk & <Moose>');
	expect(titleIn('<title>&amp;lt; · Frostledger</title>')).toBe('&lt;');
	expect(titleIn('<title>Frostledger</title>')).toBe('Frostledger');
	expect(titleIn('<p>no title</p>')).toBe('');
});
