import type { Body } from './assemble.ts';
import type { Bench } from './fields.ts';

/** The node at which a sensor sits: the loop, the air under the bench, or the middle of a pot. */
export function sensorNode(body: Body, place: Bench['control']['sensor']): number {
  switch (place) {
    case 'loop':
      return body.loop;
    case 'air':
      return body.under;
    case 'pot':
      return body.roots[Math.floor(body.roots.length / 2)] ?? body.under;
  }
}
