/** Fits an equaliser’s filters beside the page, so that the page goes on answering while it takes its time. */
import type { Wrong } from '../../decide/plan/equaliser/wrong.ts';
import { fitHere } from './fit-here.ts';

self.addEventListener('message', ({ data }: MessageEvent<Wrong>) => self.postMessage(fitHere(data)));
