import { loopLength, pipeOf } from '../bench/geometry.ts';
import { amount, calculator, care, sentence, stop, type Warning } from '../calculator.ts';
import { ratedPower } from '../electric/cable.ts';
import { leastPitch, longestCable, wind } from '../electric/winding.ts';
import { cite } from '../sources.ts';

/** Turns further apart than this leave cold pipe between them [m] (assumption of this guide). */
const widePitch = 0.3;

/** No ruler shows a tenth of a millimetre [m]: a gap or a bend that misses its limit by less has met it. */
const readable = 1e-4;

export default calculator({
  id: 'winding',
  question: 'How do I wind the cable?',
  summary: 'How far apart the turns lie when the whole cable is spread evenly over the whole loop.',
  reads: [
    'cable.length',
    'loop.pipe',
    'cable.diameter',
    'cable.leastGap',
    'cable.powerPerLength',
    'cable.smallestBend',
    'loop.length',
    'loop.run',
    'loop.inset',
    'frame.length',
    'frame.width',
  ],
  figures: {
    pitch: {
      label: 'From one turn to the next',
      quantity: 'size',
      symbol: 'p',
      explain:
        'Along the pipe, from the middle of the cable to the middle of the cable one turn on. Mark the pipe at this distance before you wind. On 3 in pipe, common practice is 75 to 100 mm (3 to 4 in), all in one direction.',
    },
    gap: {
      label: 'Gap between turns',
      quantity: 'size',
      symbol: 'g',
      explain: 'Clear space between two neighbouring turns, measured square across the cable.',
    },
    turns: {
      label: 'Turns',
      quantity: 'count',
      symbol: 'n',
      explain: 'Around the pipe, over the whole loop, all in one direction.',
    },
    powerPerPipeLength: {
      label: 'Power per length of pipe',
      quantity: 'powerPerLength',
      symbol: "P'",
      explain: 'What the cable gives by its label, spread over the loop.',
    },
    cablePerPipe: {
      label: 'Cable per length of pipe',
      quantity: 'number',
      symbol: 'r',
      explain: 'How many lengths of cable lie on one length of pipe; 1 is a cable that runs straight.',
    },
    leastPitch: {
      label: 'Closest that the turns may come',
      quantity: 'size',
      symbol: 'p_{\\min}',
      explain: 'From one turn to the next, at the least gap that the cable’s sheet allows.',
    },
    longestCable: {
      label: 'Longest cable that this loop takes',
      quantity: 'length',
      symbol: 'C_{\\max}',
      explain: 'At the least gap that the cable’s sheet allows. The shortest is as long as the loop.',
    },
    bendRadius: {
      label: 'Bend of the cable',
      quantity: 'size',
      symbol: 'R',
      explain: 'Radius of the inner side of the cable around the pipe.',
    },
  },
  formulas: [
    {
      tex: String.raw`C^2 = L^2 + \bigl(n\,\pi\,(D+d)\bigr)^2,\qquad p = \frac{L}{n},\qquad r = \frac{C}{L} = \sqrt{1 + \Bigl(\frac{\pi\,(D+d)}{p}\Bigr)^2}`,
      words:
        'Slit the pipe open and lay it flat: the cable, of length C, is the long side of a right triangle whose other sides are the length L of the loop and n turns around the middle of the cable, D and d being the diameters of pipe and cable.',
      cites: [cite('helix', 'arc length of a circular helix')],
    },
    {
      tex: String.raw`g = \frac{p\,\pi\,(D+d)}{\sqrt{p^2 + (\pi\,(D+d))^2}} - d`,
      words: 'The gap is the distance between two neighbouring turns, square across them, less one cable.',
      cites: [cite('helix', 'a helix is a straight line on the unrolled cylinder')],
    },
  ],
  cites: [
    cite('common-practice', '75 to 100 mm between turns on 3 in pipe, all in one direction, never crossing'),
    cite('assumption', 'turns further apart than 300 mm heat the pipe unevenly'),
  ],
  cautions: ['crossing', 'cable-instructions', 'mains-and-water'],
  compute({ bench }) {
    const { cable } = bench;
    const length = loopLength(bench);
    const pipeDiameter = pipeOf(bench).outsideDiameter;
    const on = { pipeDiameter, cableDiameter: cable.diameter, pipeLength: length, cableLength: cable.length };
    const winding = wind(on);
    // No turns, so nothing between them, where the cable does not reach or only just reaches the end of the loop.
    const helix = 'pitch' in winding ? winding : null;
    const neighbours = helix !== null && helix.turns >= 1;
    const closest = leastPitch(pipeDiameter, cable.diameter, cable.leastGap);
    const longest = longestCable(on, cable.leastGap);
    const warnings: Warning[] = [];
    const lengths = { cable: amount(cable.length, 'length'), loop: amount(length, 'length') };
    const most = amount(longest, 'length');
    if (winding.outcome === 'too-short') {
      const text = sentence`The cable is ${lengths.cable} long and the loop ${lengths.loop}: it does not reach the end. Take a longer cable or lay a shorter loop. Never splice a cable.`;
      warnings.push(stop('cable-shorter-than-loop', text));
    } else if (winding.outcome === 'touching') {
      const text = sentence`With ${lengths.cable} of cable on ${lengths.loop} of loop the turns would touch. At most ${most} fit at the gap that the sheet asks for. Take a shorter cable or lay a longer loop. Never double the cable back and never cut a constant-wattage cable.`;
      warnings.push(stop('turns-touch', text));
    } else if (neighbours && helix.gap < cable.leastGap - readable) {
      const text = sentence`The gap between turns would be ${amount(helix.gap, 'size')} and the cable’s sheet asks for at least ${amount(cable.leastGap, 'size')}. Take at most ${most} of cable for this loop, or lay a longer loop.`;
      warnings.push(stop('gap-too-small', text));
    }
    if (helix && helix.innerBendRadius < cable.smallestBend - readable) {
      const text = sentence`Around this pipe the cable bends to a radius of ${amount(helix.innerBendRadius, 'size')} and its sheet allows no less than ${amount(cable.smallestBend, 'size')}. Take a thicker pipe or a cable that bends further.`;
      warnings.push(stop('bend-too-tight', text));
    }
    const wide = amount(widePitch, 'size');
    if (winding.outcome === 'straight') {
      const text = sentence`The cable is only as long as the loop and runs straight along it. Turns more than ${wide} apart heat the pipe unevenly. A longer cable of less power per length makes turns.`;
      warnings.push(care('pitch-wide', text));
    } else if (helix && helix.pitch > widePitch) {
      const text = sentence`The turns would lie ${amount(helix.pitch, 'size')} apart. More than ${wide} heats the pipe unevenly. A longer cable of less power per length brings the turns together.`;
      warnings.push(care('pitch-wide', text));
    }
    return {
      figures: {
        pitch: helix && { value: helix.pitch },
        gap: neighbours ? { value: helix.gap } : null,
        turns: helix && { value: helix.turns },
        powerPerPipeLength: { value: ratedPower(cable) / length },
        cablePerPipe: { value: cable.length / length },
        leastPitch: closest === null ? null : { value: closest },
        longestCable: { value: longest },
        bendRadius: helix && { value: helix.innerBendRadius },
      },
      warnings,
    };
  },
});
