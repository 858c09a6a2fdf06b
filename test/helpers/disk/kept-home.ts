import { LiveSession } from '../../../src/journal/live.ts';
import type { Lesson } from '../../../src/springback/history.ts';
import type { Job } from '../../../src/tube/job.ts';
import { operatorAt } from '../shop/operator.ts';
import { plainJob } from '../shop/plain-job.ts';
import { newMachine } from '../shop/plain-shop.ts';

export interface Bending {
	/** Of January 2026, when it begins; the id sorts by it. */
	day: number;
	job?: Job;
	learn?: boolean;
	/** The simulated machine. */
	seed?: number;
	/** It is left after so many answers. */
	answers?: number;
	lessons?: readonly Lesson[];
	/** It is not closed: whoever asked for it goes on. */
	stays?: boolean;
}

/** Bends a tube in a home, by the simulated operator; the session is closed. */
export function bendIn(home: string, bending: Bending): LiveSession {
	const { day, job = plainJob(), learn = true, seed = 1, answers = 200, lessons = [], stays = false } = bending;
	let minute = 0;
	const now = () => new Date(Date.UTC(2026, 0, day, 8, minute++));
	const world = { home, program: 'test', now, random: () => 'ab12' };
	const session = LiveSession.begin(world, { job, path: '/none.json', raw: {} }, learn, [], lessons);
	const operator = operatorAt(newMachine(seed));
	for (let n = 0; n < answers && session.ask !== null; n++)
		session.answerText(JSON.stringify(operator.answer(session.ask)));
	if (!stays) session.close();
	return session;
}
