/** What is advised on the bend at work for the sake of the whole tube. */
import type { LeastBad, TubeOutcome, Tweak } from '../protocol/asks.ts';
import type { ToMeasure } from '../protocol/kinds.ts';
import type { Advised } from './bend-alone.ts';

export interface AdvisedOnTube extends Advised {
	of?: number;
	how?: 'pull' | 'relieve';
	/** With advice `pull` for a bend that would do by itself: the angle wanted of it now. */
	wanted?: number;
	/** With advice `measure`: what to read again. */
	again?: ToMeasure;
	accepted: TubeOutcome;
	tweaks: Tweak[];
	rescue?: LeastBad;
}

/** The ways that there are to choose from. */
export type ToChooseFrom = Pick<AdvisedOnTube, 'accepted' | 'tweaks'>;
export type FoundBefore = ToChooseFrom & Pick<AdvisedOnTube, 'rescue'>;
/** The advice alone, without what it was chosen from. */
export type TubeAdvice = Omit<AdvisedOnTube, keyof FoundBefore>;
