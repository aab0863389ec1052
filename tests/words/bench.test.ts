import { describe, expect, it } from 'vitest';
import type { Caution, CautionCode, NextStep, PilotWhy } from '../../src/core/index';
import {
  CAUTIONS_FOOT,
  clubNext,
  nextText,
  predictedGrams,
  predictedReading,
  sayAlign,
  sayCaution,
  sayClosing,
  sayMissingMinutes,
  sayNext,
  sayOff,
  sayPilot,
  sayTape,
  sayWait,
  sayWeight,
} from '../../src/words/bench';
import { checkIn } from '../../src/core/index';
import { aJob } from '../core/bench/jobs';

describe('cautions', () => {
  /**
   * OSHA, 29 CFR 1910.242(b): "reduced to less than 30 p.s.i."; NIOSH Pocket Guide: isopropyl alcohol 53 °F (11.7 °C). Limits in the air:
   * OSHA, 29 CFR 1910.1000 Table Z-1 and 1910.1025; NIOSH's as OSHA's and NIOSH's own pages on Stoddard solvent and lead give them.
   */
  const SAID: Record<CautionCode, RegExp> = {
    solvent: /flammable.*NIOSH Pocket Guide.*safety data sheet.*flame.*gloves/,
    air: /eye protection.*under 30 psi.*29 CFR 1910\.242\(b\)/,
    hookKnife: /away from the hand.*never into graphite/,
    graphiteDust: /dust mask/,
    lead: /toxic.*wash.*children.*hazardous waste.*50 µg\/m³ \(OSHA, 29 CFR 1910\.1025; NIOSH/,
  };

  it.each(Object.entries(SAID) as [CautionCode, RegExp][])('%s', (code, said) => {
    expect(sayCaution({ code, clubs: ['PW'] }, 1)).toMatch(said);
  });

  it('give the flash point of the solvent in use, or of both', () => {
    const solvent = (which: Caution['solvent']): string =>
      sayCaution({ code: 'solvent', clubs: ['PW'], solvent: which }, 1);
    expect(solvent('isopropylAlcohol')).toMatch(/isopropyl alcohol flashes at about 12 °C/);
    expect(solvent('isopropylAlcohol')).toMatch(/isopropyl alcohol 400 ppm \(OSHA, 29 CFR 1910\.1000 Table Z-1\)/);
    expect(solvent('isopropylAlcohol')).not.toMatch(/mineral|40 °C/);
    expect(solvent('mineralSpirits')).toMatch(/500 ppm \(NIOSH recommends 350 mg\/m³\)/);
    expect(solvent('mineralSpirits')).toMatch(/mineral spirits flash at about 40 °C/);
    expect(solvent(undefined)).toMatch(/40 °C.*12 °C/);
    expect(Math.round(((53 - 32) * 5) / 9)).toBe(12);
  });

  it('name the clubs where they are not for all', () => {
    expect(sayCaution({ code: 'lead', clubs: ['Driver', 'PW'] }, 3)).toMatch(/\(Driver and PW\)$/);
    expect(CAUTIONS_FOOT).toMatch(/Local codes/);
  });
});

describe('a ticket', () => {
  it.each([
    ['taught', /^Fit PW first and accept it before the rest: .*stripped/],
    ['stripped', /read bare/],
    ['median', /changes as most/],
    ['first', /first with the grip/],
    ['only', /^PW is the only club\.$/],
  ] as [PilotWhy, RegExp][])('pilot: %s', (why, said) => expect(sayPilot('PW', why)).toMatch(said));

  it('strips, alignment, weight, predictions', () => {
    const tape = {
      layers: 2,
      stripInches: 10.5,
      lowerLayers: 1,
      lower: { startInches: 5, stripInches: 5.5 },
      totalInches: 26.5,
      twoWayInches: 10.5,
    };
    expect(sayTape(tape)).toBe('2 layers of 10.5 in; 1 under the lower hand from 5 in, 5.5 in each; two-way 10.5 in');
    expect(sayTape({ ...tape, layers: 0, lower: undefined, twoWayInches: 0 })).toBe('No build-up; no two-way');
    expect(sayAlign({ rib: 'under', logo: 'up', hand: 'left' })).toBe('Rib under, at 6 o’clock; logo up; left hand');
    expect(sayAlign({ rib: undefined, logo: undefined, hand: undefined })).toBe('');
    expect(sayAlign({ rib: 'unwanted', logo: undefined, hand: undefined })).toMatch(/^No rib is wanted/);
    expect(sayAlign({ rib: 'lacking', logo: undefined, hand: undefined })).toMatch(/this grip has none/);
    const weight = {
      grams: 3.5,
      way: 'Lead tape',
      end: 'head',
      inches: 45.25,
      when: 'gripOn',
      overLimit: false,
      lead: true,
    } as const;
    expect(sayWeight(weight)).toBe('3.5 g Lead tape, head, 45.3 in from the butt; after the grip');
    expect(sayWeight({ ...weight, when: 'gripOff' })).toMatch(/before the grip$/);
    expect(sayWeight({ ...weight, when: 'onAlready' })).toMatch(/on already$/);
    expect(predictedReading({ value: 32.44, spread: 0.31 })).toBe('D2.4 ± 0.3');
    expect(predictedGrams({ value: 418.23, spread: 2.1 })).toBe('418.2 ± 2.1 g');
    expect(sayMissingMinutes([])).toBeUndefined();
    expect(sayMissingMinutes(['Build-up', 'Lead tape'])).toMatch(/Build-up and Lead tape/);
  });
});

describe('a check-in', () => {
  it('how far off', () => {
    expect(sayOff({ by: -0.62, spread: 0.4, surprising: true }, 'pt')).toBe('0.6 pt less than predicted (± 0.4)');
    expect(sayOff({ by: 5, spread: 1.1, surprising: true }, 'g')).toBe('5.0 g more than predicted (± 1.1)');
    expect(sayOff({ by: 0.1, spread: 0.4, surprising: false }, 'pt')).toBe('as predicted (± 0.4 pt)');
  });

  it.each([
    [{ step: 'measure', reading: true, mass: true }, 'Read and weigh the finished club.'],
    [{ step: 'measure', reading: false, mass: true }, 'Weigh the finished club.'],
    [{ step: 'measure', reading: true, mass: false }, 'Read the finished club.'],
    [{ step: 'replan' }, /^Bare it is not what the plan took it for/],
    [{ step: 'seatGrip', inches: 0.2, points: 1.4 }, /^Reads \+1\.4 pt.* 3\/16 in too long/],
    [{ step: 'seatGrip', inches: 1.25, points: 9 }, /1 1\/4 in too long/],
    [{ step: 'seatGrip', inches: 0.02, points: 0.5 }, /less than 1\/16 in too long/],
    [{ step: 'readAgain', points: -0.8 }, /^Reads −0\.8 pt off/],
    [{ step: 'checkGrip', grams: 4 }, /^4 g too heavy at the grip.*solvent has dried/],
    [{ step: 'checkGrip', grams: -11 }, /^11 g too light at the grip.*butt weight was left out/],
    [{ step: 'checkWeight', grams: -6 }, /^6 g too light at the head/],
    [{ step: 'weighAgain', grams: 5 }, /^5 g too heavy, and the reading does not say where/],
    [
      { step: 'add', grams: 3.5, way: 'Lead tape', end: 'head', inches: 37 },
      'Add 3.5 g, Lead tape, 37 in from the butt. Then correct Weight on and Weight at in Checkin, and read and weigh again.',
    ],
    [
      { step: 'takeAway', grams: 2, way: 'Lead tape', inches: 37 },
      'Take 2 g of Lead tape off again, 37 in from the butt. Then correct Weight on and Weight at in Checkin, and read and weigh again.',
    ],
    [
      { step: 'gripOffNeeded', grams: 4, way: 'Tip plug', takeAway: false },
      /^4 g of Tip plug would have to go in, with the grip off/,
    ],
    [{ step: 'gripOffNeeded', grams: 4, way: 'Tip plug', takeAway: true }, /would have to come out/],
  ] as [NextStep, string | RegExp][])('%j', (step, said) => {
    if (typeof said === 'string') expect(sayNext(step)).toBe(said);
    else expect(sayNext(step)).toMatch(said);
  });

  it('where nothing is left to do but to decide, that', () => {
    const club = { next: [], state: 'open', verdict: 'cannotTell' } as const;
    expect(clubNext(club, [])).toMatch(/^The ± of the scale leaves it open/);
    expect(clubNext({ ...club, verdict: 'out' }, [])).toMatch(/none of your weights/);
    expect(clubNext({ ...club, verdict: 'unknown' }, [])).toMatch(/not known/);
    expect(clubNext({ ...club, state: 'accepted' }, [])).toBe('');
    const step = { step: 'measure', reading: true, mass: true } as const;
    expect(clubNext({ ...club, next: [step] }, [])).toBe('Read and weigh the finished club.');
  });

  it('the others wait for the pilot; a job says what keeps it open', () => {
    const job = aJob([{ name: 'PW' }, { name: '9 iron' }]);
    const found = checkIn(job.plan, job.input, []);
    expect(sayWait(found)).toBe('Accept PW before the rest are fitted.');
    expect(sayWait({ ...found, waitForPilot: false })).toBeUndefined();
    const issues = [{ code: 'duplicate', field: 'Checkin row 9, Club', got: 'PW' } as const];
    expect(sayClosing({ closes: false, open: [{ row: 1, name: 'PW' }], issues })).toMatch(
      /^Still open: PW\. Checkin row 9, Club/,
    );
    expect(sayClosing({ closes: true, open: [], issues: [] })).toMatch(/can be closed/);
    expect(sayClosing({ closes: false, open: [], issues: [] })).toMatch(/nothing to close/);
  });
});

it('where two things are to be done, weight is moved only where the first was not it', () => {
  const steps: NextStep[] = [
    { step: 'seatGrip', inches: 0.25, points: 2 },
    { step: 'takeAway', grams: 3, way: 'Lead tape', inches: 37 },
  ];
  expect(nextText(steps, [])).toMatch(/has not slipped\. If that was not it: take 3 g of Lead tape off again/);
  expect(nextText(steps.slice(1), [])).toMatch(/^Take 3 g of Lead tape off again/);
});
