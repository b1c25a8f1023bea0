import { expect, test } from 'vitest';
import { maySend, NOBODY, personIn, UNKNOWN, waitsFor } from '#lib/ui/offline/person.ts';

const ADA = { id: 'p-1', name: 'Invented Ada; of the “bay”' };
const BO = { id: 'p-2', name: 'Invented Bo' };

function cookieOf(text: string): string {
	return `units=1; frostledger-person=${encodeURIComponent(text)}; other=2`;
}

test('the device reads who is there from its cookie, whatever the name has in it', () => {
	expect(personIn(cookieOf(JSON.stringify(ADA)))).toEqual(ADA);
});

test.each(['', 'other=2', 'frostledger-person=', cookieOf('nonsense'), cookieOf('{"id":1}')])(
	'nobody is signed in by the cookies “%s”',
	(cookies) => {
		expect(personIn(cookies)).toEqual(NOBODY);
	}
);

test('what waits says whom it waits for, unless it is one’s own', () => {
	expect(waitsFor(ADA, ADA, null)).toBe('');
	expect(waitsFor(ADA, BO, null)).toBe(`It waits for ${ADA.name} to sign in here.`);
	expect(waitsFor(ADA, ADA, 'away')).toBe(`It waits for ${ADA.name} to sign in here.`);
	expect(waitsFor(ADA, BO, 'gone')).toMatch(/does not come in any more/);
	expect(waitsFor(NOBODY, BO, null)).toMatch(/while nobody was signed in/);
	expect(waitsFor(UNKNOWN, NOBODY, null)).toMatch(/not known/);
});

test('a guest may put no name to what another typed', () => {
	expect(maySend({ id: 'guest', name: 'a guest' })).toBe(false);
	expect(maySend(NOBODY) && maySend(BO)).toBe(true);
});
