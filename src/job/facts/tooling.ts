export type ToolingRight =
	/** `kept`: a bender and die kept under these names would do too. */
	| { code: 'radius-of-die'; kept: { bender: string | undefined; die: string } | null }
	| { code: 'radius-at-least'; least: number }
	/** A larger one springs back by more than half. */
	| { code: 'radius-at-most'; most: number }
	| { code: 'dies'; most: number }
	| { code: 'other-die-name' }
	/** A bend names one of these; null: nobody knows which there are. */
	| { code: 'die-of-job'; dies: readonly string[] | null };
