import { expect, test } from 'vitest';
import { whoAsks } from '../../../src/commands/start/who-asks.ts';

const asked = (remoteAddress: string, said?: string, isVouchedFor = false) =>
	whoAsks(
		{
			headers: said === undefined ? {} : { 'x-forwarded-for': said },
			socket: { remoteAddress }
		},
		isVouchedFor
	);

test('a proxy on this machine says who asks', () => {
	expect(asked('127.0.0.1', '198.51.100.1, 203.0.113.9')).toBe('198.51.100.1, 203.0.113.9');
	expect(asked('::1', '203.0.113.9')).toBe('203.0.113.9');
	expect(asked('::ffff:127.0.0.1', '203.0.113.9')).toBe('203.0.113.9');
	expect(asked('127.0.0.1')).toBe('127.0.0.1');
	expect(asked('127.0.0.1', '  ')).toBe('127.0.0.1');
});

test('who comes from elsewhere cannot give itself another address', () => {
	expect(asked('203.0.113.9', '127.0.0.1')).toBe('203.0.113.9');
	expect(asked('192.168.1.7', '198.51.100.1')).toBe('192.168.1.7');
});

test('with the header set by whoever runs the app, it is believed from any proxy', () => {
	expect(asked('172.17.0.2', '203.0.113.9', true)).toBe('203.0.113.9');
	expect(asked('172.17.0.2', undefined, true)).toBe('172.17.0.2');
});
