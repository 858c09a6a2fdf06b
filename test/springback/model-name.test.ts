import { expect, it, vi } from 'vitest';

async function nameWith(constants: Record<string, unknown>): Promise<string> {
	vi.resetModules();
	vi.doMock('../../src/springback/model.ts', async (original) => ({ ...(await original<object>()), ...constants }));
	const { modelName } = await import('../../src/springback/model-name.ts');
	vi.doUnmock('../../src/springback/model.ts');
	return modelName();
}

it('a model has one name, and any other constant of it another', async () => {
	const name = await nameWith({});
	expect(name).toMatch(/^[0-9a-f]{16}$/);
	expect(await nameWith({})).toBe(name);
	const { TAKE_UP_PRIOR, FRAME, PULL_SD, CURVATURE_SD } = await import('../../src/springback/model.ts');
	const others = [
		{ TAKE_UP_PRIOR: { ...TAKE_UP_PRIOR, sd: TAKE_UP_PRIOR.sd + 0.01 } },
		{ FRAME: { ...FRAME, mean: FRAME.mean + 0.001 } },
		{ PULL_SD: PULL_SD + 0.01 },
		{ CURVATURE_SD: CURVATURE_SD + 0.01 },
	];
	const names = [];
	for (const constants of others) names.push(await nameWith(constants));
	expect(new Set([name, ...names]).size).toBe(1 + others.length);
});
