/** Normal distributions of vectors that are kin: what is read of some of them tells of the others. */

import { cholesky, forward } from '../maths/cholesky.ts';
import { eigen } from '../maths/eigen.ts';
import type { Gaussian } from '../maths/gaussian.ts';
import { dot, times } from '../maths/matrix.ts';

/** What readings say of a vector, in natural form: a likelihood exp(-x' information x / 2 + vector' x). */
export interface Likelihood {
	readonly information: readonly (readonly number[])[];
	readonly vector: readonly number[];
}

/** One vector before any reading of it, and what was read. */
export interface Member<T> {
	readonly who: T;
	readonly mean: readonly number[];
	readonly told: Likelihood;
}

/** Below this part of the largest, an eigenvalue is what rounding left of 0. */
const LEFT_OF_ZERO = 1e-12;

/**
 * `target`'s vector given what was told of all members: the exact posterior of the joint normal distribution in which any two
 * have the covariance `covariance(a, b)` (rows of a, columns of b). Each member is told of by as many independent readings as its
 * information has rank. As linear models of this kind are done: Gelman et al., Bayesian Data Analysis, ch. 5 and 15.
 */
export function posterior<T>(
	target: { who: T; mean: readonly number[] },
	members: readonly Member<T>[],
	covariance: (a: T, b: T) => number[][],
): Gaussian {
	const read = members.map((member) => ({ who: member.who, rows: readings(member) }));
	const lower = cholesky(covarianceBetween(read, covariance));
	const misses = forward(
		lower,
		read.flatMap(({ rows }) => rows.map(({ miss }) => miss)),
	);
	const toTarget = read.flatMap(({ who, rows }) => {
		const shared = covariance(target.who, who);
		return rows.map(({ row }) => times(shared, row));
	});
	const gains = target.mean.map((_, i) =>
		forward(
			lower,
			toTarget.map((column) => column[i]!),
		),
	);
	const own = covariance(target.who, target.who);
	return {
		mean: target.mean.map((mean, i) => mean + dot(gains[i]!, misses)),
		cov: own.map((line, i) => line.map((value, j) => value - dot(gains[i]!, gains[j]!))),
	};
}

interface MemberReading {
	/** It reads row . x with an error of variance 1, and this much more than was expected. */
	row: number[];
	miss: number;
}

function readings<T>({ mean, told }: Member<T>): MemberReading[] {
	const axes = eigen(told.information);
	const least = LEFT_OF_ZERO * Math.max(...axes.map(({ value }) => value));
	return axes
		.filter(({ value }) => value > least)
		.map(({ value, vector }) => {
			const size = Math.sqrt(value);
			return {
				row: vector.map((x) => size * x),
				miss: dot(vector, told.vector) / size - size * dot(vector, mean),
			};
		});
}

/** Covariance of all readings with each other, as far as the diagonal, with the variance 1 of each one's error on it. */
function covarianceBetween<T>(
	read: readonly { who: T; rows: MemberReading[] }[],
	covariance: (a: T, b: T) => number[][],
): number[][] {
	const lines: number[][] = [];
	for (const a of read) {
		const first = lines.length;
		for (const _ of a.rows) lines.push([]);
		for (const b of read.slice(0, read.indexOf(a) + 1)) {
			const shared = covariance(a.who, b.who);
			for (const { row } of b.rows) {
				const column = times(shared, row);
				for (const [i, other] of a.rows.entries()) lines[first + i]!.push(dot(other.row, column));
			}
		}
	}
	for (const [i, line] of lines.entries()) line[i]! += 1;
	return lines;
}
