import { describe, expect, it } from 'vitest';
import { amountsOf } from '../../calculators/calculator.ts';
import circuit from '../../calculators/questions/circuit.ts';
import { conductors } from '../../calculators/tables/conductors.ts';
import { sentenceText } from '../../site/widgets/text.ts';
import { codesOf, valueOf } from '../support/answers.ts';
import type { BenchChanges } from '../support/benches.ts';
import { expectNear, expectPrinted } from '../support/near.ts';
import { soundSituation, soundUsSituation, usSituation } from '../support/situations.ts';

const foot = 0.3048;
/** A cable of this power [W] under US rules at 120 V. */
const ofPower = (power: number, supply: BenchChanges['supply'] = {}): BenchChanges => ({
  cable: { powerPerLength: power / 100, length: 100 },
  supply,
});
const us = (changes: BenchChanges) => circuit.compute(usSituation(changes));
const sound = (changes: BenchChanges) => circuit.compute(soundSituation(changes));
const soundUs = (changes: BenchChanges) => circuit.compute(soundUsSituation(changes));

describe('circuit', () => {
  // Load and breaker: current is power over voltage, 125 % for continuous loads (427.4, 210.20), next standard size.
  // 16 A → 20 A is a worked example of 210.19(A)(1); the others are plain division.
  it.each([
    { power: 1200, voltage: 120, current: '10.0', continuous: '12.5', breaker: 15 },
    { power: 400, voltage: 120, current: '3.333', continuous: '4.167', breaker: 15 },
    { power: 1920, voltage: 120, current: '16.0', continuous: '20.0', breaker: 20 },
    { power: 2400, voltage: 240, current: '10.0', continuous: '12.5', breaker: 15 },
  ])('feeds $power W at $voltage V through a $breaker A breaker', ({ power, voltage, ...printed }) => {
    const { figures } = us(ofPower(power, { voltage }));
    expectPrinted(valueOf(figures.current), printed.current);
    expectPrinted(valueOf(figures.continuousCurrent), printed.continuous);
    expect(valueOf(figures.smallestBreaker)).toBe(printed.breaker);
  });

  // Worked examples of a guide to heat tape: 50 ft and 100 ft of 6 W/ft at 120 V.
  it.each([
    { feet: 50, amperes: '2.5' },
    { feet: 100, amperes: '5.0' },
  ])('draws $amperes A with $feet ft of 6 W/ft', ({ feet, amperes }) => {
    const { figures } = us({ cable: { powerPerLength: 6 / foot, length: feet * foot } });
    expectPrinted(valueOf(figures.cableCurrent), amperes);
  });

  // Exam-preparation pages, 2 K I L / CM with K = 12.9: 20 A over 100 ft at 120 V lose 7.9 V (6.6 %) on 12 AWG and 3.1 V
  // (2.6 %) on 8 AWG. Table 8, which is used here, has 1.98 and 0.778 Ω per 1000 ft where K = 12.9 has 1.976 and 0.781.
  it.each([
    { conductor: 'awg-12', volts: '7.9', percent: '6.6' },
    { conductor: 'awg-8', volts: '3.1', percent: '2.6' },
  ] as const)('loses $volts V on 100 ft of $conductor at 20 A', ({ conductor, volts, percent }) => {
    const { figures } = us(ofPower(2400, { conductor, feederLength: 100 * foot }));
    expectPrinted(valueOf(figures.voltageDropVolts), volts);
    expectPrinted(valueOf(figures.voltageDrop) * 100, percent);
  });

  // IEC 60228: 7.41 Ω/km at 20 °C; IEC 60287: 0.393 % more for each degree, so 8.866 Ω/km at 70 °C.
  it('takes a metric conductor as warm as it may get', () => {
    const { figures } = sound({ supply: { conductor: 'mm2-2.5', feederLength: 50 } });
    const current = 600 / 230;
    expectNear(valueOf(figures.voltageDropVolts), 2 * 50 * 8.866e-3 * current, 1e-3);
  });

  it('counts other load into the current and the voltage drop', () => {
    const alone = us(ofPower(600, { feederLength: 20 })).figures;
    const shared = us(ofPower(600, { feederLength: 20, otherLoad: 300 })).figures;
    expect(valueOf(shared.cableCurrent)).toBe(valueOf(alone.cableCurrent));
    for (const name of ['current', 'continuousCurrent', 'loadShare', 'voltageDrop'] as const) {
      expectNear(valueOf(shared[name]) / valueOf(alone[name]), 1.5, 1e-9, name);
    }
  });

  // Ohm: 600 W at 120 V is 24 Ω; 100 ft of 12 AWG there and back is 0.396 Ω at 75 °C (table 8, 1.98 Ω per 1000 ft). 120 V over
  // both is 4.919 A, which makes 580.7 W in the cable.
  it('says what arrives: of a cable that regulates itself between that and all of it', () => {
    const long = { conductor: 'awg-12', feederLength: 100 * foot } as const;
    expectNear(valueOf(us(ofPower(600, long)).figures.powerArriving), 580.7, 0.1);
    const same = {
      ...ofPower(600, long),
      cable: { ...ofPower(600).cable, kind: 'self-regulating' },
    } as const;
    const regulating = us(same).figures.powerArriving;
    expectNear(regulating!.low!, 580.7, 0.1);
    expectNear(regulating!.high!, 600, 1e-9);
    expectNear(valueOf(regulating), (580.7 + 600) / 2, 0.1);
  });

  it('lets the feeder be as long as the recommended drop allows', () => {
    const longest = valueOf(us(ofPower(1200)).figures.longestFeeder);
    const at = (feederLength: number) => us(ofPower(1200, { feederLength }));
    expectNear(valueOf(at(longest).figures.voltageDrop), 0.03, 1e-9);
    expect(codesOf(at(longest * 1.001))).toContain('care voltage-drop');
    expect(codesOf(at(longest * 0.999))).not.toContain('care voltage-drop');
    // IEC recommends up to 5 % for other uses than lighting (60364-5-52, table G.52.1).
    const iec = valueOf(sound({}).figures.longestFeeder);
    expectNear(valueOf(sound({ supply: { feederLength: iec } }).figures.voltageDrop), 0.05, 1e-9);
  });

  // One maker's printed table: these lengths [ft] are the longest on a 15 A breaker at 120 V, by class [W/ft] and start
  // temperature [°F]. So each must come to 15 A. Lengths are printed to 5 ft, half of it being up to 3 %.
  it.each([
    { rating: 3, fahrenheit: 0, feet: 230 },
    { rating: 5, fahrenheit: 0, feet: 155 },
    { rating: 5, fahrenheit: 50, feet: 225 },
    { rating: 8, fahrenheit: 0, feet: 100 },
    { rating: 10, fahrenheit: 50, feet: 115 },
  ])('starts $feet ft of $rating W/ft at $fahrenheit °F on 15 A', ({ rating, fahrenheit, feet }) => {
    const { figures } = us({
      cable: { kind: 'self-regulating', powerPerLength: rating / foot, length: feet * foot },
      place: { designNight: 'own', ownLowest: ((fahrenheit - 32) * 5) / 9, houseOffset: 0 },
    });
    expectNear(valueOf(figures.continuousCurrent), 15, 1e-6);
    expect(valueOf(figures.startUpCurrent)).toBeGreaterThan(valueOf(figures.cableCurrent));
  });

  it('counts a start colder than that table as its coldest', () => {
    const at = (ownLowest: number) =>
      valueOf(
        us({
          cable: { kind: 'self-regulating', powerPerLength: 5 / foot, length: 135 * foot },
          place: { designNight: 'own', ownLowest, houseOffset: 0 },
        }).figures.continuousCurrent,
      );
    expectNear(at(-45), 15, 1e-6);
    expectNear(at(-30), 15, 1e-6);
  });

  it('has no start-up current for a constant-wattage cable, and no breaker where none is large enough', () => {
    expect(sound({}).figures.startUpCurrent).toBeNull();
    const huge = sound({ supply: { otherLoad: 20_000, voltage: 120 } });
    expect(huge.figures.smallestBreaker).toBeNull();
    expect(codesOf(huge)).toContain('stop breaker-too-small');
  });

  // NFPA 70, 240.4(D): 15, 20 and 30 A for 14, 12 and 10 AWG copper.
  it('protects small conductors as the code does', () => {
    const limits = (['awg-14', 'awg-12', 'awg-10'] as const).map((size) => conductors[size].highestBreaker);
    expect(limits).toEqual([15, 20, 30]);
  });

  // From memory: UL 943, class A trips at 4 to 6 mA; UL 1053, equipment, from 30 mA; IEC 60364-7-705, 30 mA for people and
  // 300 mA against fire. In North America a device of 30 mA guards equipment, so nothing there may call it one for people.
  it.each([
    { rules: 'us', answerOf: soundUs, device: 'GFCI of class A', people: 0.006, equipment: 0.03 },
    { rules: 'iec', answerOf: sound, device: 'RCD', people: 0.03, equipment: 0.3 },
  ] as const)('asks for the device that the $rules rules mean', ({ answerOf, device, people, equipment }) => {
    expect(valueOf(answerOf({}).figures.groundFaultTrip)).toBe(people);
    for (const protection of ['none', 'equipment'] as const) {
      const [{ text } = { text: [] }] = answerOf({ supply: { protection } }).warnings;
      expect(sentenceText(text, { system: 'metric', locale: 'en' })).toContain(device);
      const amounts = amountsOf(text);
      expect(amounts).toContainEqual({ value: people, quantity: 'faultCurrent' });
      if (protection === 'equipment')
        expect(amounts).toContainEqual({ value: equipment, quantity: 'faultCurrent' });
    }
  });

  it('warns as far as there is a reason, and no further', () => {
    const of = (changes: BenchChanges): string[] => codesOf(sound(changes));
    const ofUs = (changes: BenchChanges): string[] => codesOf(soundUs(changes));
    expect(of({})).toEqual([]);
    expect(ofUs({})).toEqual([]);
    expect(of({ supply: { protection: 'none' } })).toEqual(['stop no-ground-fault-protection']);
    expect(of({ supply: { protection: 'equipment' } })).toEqual(['care equipment-protection-only']);
    expect(of({ supply: { otherLoad: 3200 } })).toEqual(['stop breaker-too-small']);
    // 16 A × 230 V less 600 W is 3080 W: a 16 A breaker is just enough by IEC rules, where nothing is added.
    expect(of({ supply: { otherLoad: 3080 } })).toEqual([]);
    expect(ofUs({ supply: { otherLoad: 840, feederLength: 5 } })).toEqual([]);
    expect(ofUs({ supply: { otherLoad: 860, feederLength: 5 } })).toEqual(['stop breaker-too-small']);
    expect(of({ supply: { breaker: 15 } })).toEqual(['care breaker-not-standard']);
    expect(ofUs({ supply: { breaker: 16 } })).toEqual(['care breaker-not-standard']);
    expect(ofUs({ supply: { breaker: 20, conductor: 'awg-14' } })).toEqual(['stop wire-too-thin']);
    expect(of({ supply: { breaker: 25 } })).toEqual(['care wire-may-be-too-thin']);
    expect(of({ supply: { feederLength: 300 } })).toEqual(['care voltage-drop']);
    expect(of({ supply: { voltage: 120, feederLength: 5 } })).toEqual(['care rules-differ']);
    expect(ofUs({ supply: { voltage: 240 } })).toEqual(['care rules-differ']);
  });
});
