import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cautionsFor, isLead, pilotOf, type Caution, type CautionCode } from '../../../src/core/index';
import { aGrip, P } from '../make';
import { aJob, aTicket, RATES, type TicketAsk } from './jobs';

const LAYER = 21 * 0.00064516 * 130;
const STRIP = 21 * 0.00064516 * 133;

describe('the pilot', () => {
  /** Of a 368 g body that reads E4: a stripped club that teaches (as in the tests of lessons). */
  const stripped = {
    bareReading: 44,
    bareGrams: 368,
    massGrams: 368 + 52 + STRIP,
    reading: 44 + (52 * (4.3 - 14) + STRIP * -8.75 + 368 * 0.125) / P,
  };

  it('is the club that taught, of several the one that taught for most', () => {
    const { plan } = aJob([{ oldItem: 'rare', ...stripped }, {}, { ...stripped }, {}]);
    expect(plan.lessons.map(({ row, appliesTo }) => [row, appliesTo.length])).toEqual([
      [1, 0],
      [3, 2],
    ]);
    expect(pilotOf(plan)).toEqual({ row: 3, why: 'taught' });
  });

  it('of two that taught for as many the first', () => {
    const { plan } = aJob([{}, stripped, stripped, {}]);
    expect(plan.lessons.map(({ appliesTo }) => appliesTo.length)).toEqual([2, 2]);
    expect(pilotOf(plan)).toEqual({ row: 2, why: 'taught' });
  });

  it('of two items that as many get the first', () => {
    const { plan } = aJob([{}, { newItem: 'other' }, {}, { newItem: 'other' }], {
      stock: [aGrip(), aGrip({ item: 'other', gripGrams: 70 })],
    });
    expect(pilotOf(plan)?.row).toBe(1);
  });

  it('else one that was read bare', () => {
    const { plan } = aJob([{}, { bareReading: 44, bareGrams: 368, massGrams: undefined }, {}]);
    expect(pilotOf(plan)).toEqual({ row: 2, why: 'stripped' });
  });

  it('else the one with the median change, among those with the grip that most get', () => {
    const stock = [aGrip(), aGrip({ item: 'putter', gripGrams: 90 })];
    const { plan } = aJob(
      [{ newItem: 'putter', kind: 'putter' }, { oldGripGrams: 40 }, { oldGripGrams: 52 }, { oldGripGrams: 49 }],
      { stock },
    );
    expect(pilotOf(plan)).toEqual({ row: 4, why: 'median' });
  });

  it('of equal changes the first; where none is known the first as well', () => {
    expect(pilotOf(aJob([{}, {}, {}]).plan)).toEqual({ row: 1, why: 'median' });
    const unknown = { oldGripGrams: undefined, oldItem: 'nobody knows' };
    expect(pilotOf(aJob([{ newItem: undefined }, unknown, unknown]).plan)).toEqual({ row: 2, why: 'first' });
  });

  it('the only one, or none where nothing is fitted', () => {
    expect(pilotOf(aJob([{ newItem: undefined }, {}]).plan)).toEqual({ row: 2, why: 'only' });
    expect(pilotOf(aJob([{ newItem: undefined }]).plan)).toBeUndefined();
    expect(aTicket(aJob([{ newItem: undefined }])).clubs).toEqual([]);
  });

  it('a club that taught but gets no grip is not it', () => {
    expect(pilotOf(aJob([{ ...stripped, newItem: undefined }, {}, {}]).plan)?.row).toBe(2);
  });
});

describe('a ticket', () => {
  const stock = [aGrip(), aGrip({ item: 'ribbed', profile: 'ribbed', lengthInches: undefined })];
  const job = aJob(
    [
      { name: 'Driver', layers: 2, lowerLayers: 1, lengthInches: 45, newItem: 'ribbed', oldGripGrams: 40 },
      { name: '7 iron', layers: 0, oldGripGrams: 52 },
      { name: 'PW', layers: 1, oldGripGrams: 59.5, buttWeightGrams: 10, buttWeightLeaves: false },
      { name: 'not yet', newItem: undefined },
      {
        name: 'Putter',
        kind: 'putter',
        lengthChangeInches: -0.5,
        plugGrams: -4,
        buttWeightGrams: 8,
        buttWeightLeaves: true,
      },
    ],
    { stock },
  );
  const ticket = aTicket(job, { clubs: { 1: { logo: 'down', hand: 'left', takeOff: 'salvage' } } });
  const [pilot, driver, , putter] = ticket.clubs;

  it('has every club that gets a grip, the pilot first, then as in the sheet', () => {
    expect(ticket.clubs.map(({ name, order }) => [order, name])).toEqual([
      [1, '7 iron'],
      [2, 'Driver'],
      [3, 'PW'],
      [4, 'Putter'],
    ]);
    expect(ticket.clubs.map((club) => club.pilot)).toEqual([true, false, false, false]);
    expect(ticket.left).toEqual([{ row: 4, name: 'not yet' }]);
    expect(ticket.grips).toEqual([
      { item: 'ribbed', pieces: 1 },
      { item: 'G', pieces: 3 },
    ]);
  });

  it('says the strips: full ones, those under the lower hand, the two-way one', () => {
    expect(driver?.tape).toEqual({
      layers: 2,
      stripInches: 10.5,
      lowerLayers: 1,
      lower: { startInches: 5, stripInches: 5.5 },
      totalInches: 26.5,
      twoWayInches: 10.5,
    });
    expect(pilot?.tape).toMatchObject({ layers: 0, lower: undefined, totalInches: 0, twoWayInches: 10.5 });
  });

  it('no strip under the lower hand where the grip ends before it starts', () => {
    const short = aJob([{ lowerLayers: 2 }], { stock: [aGrip({ lengthInches: 5 })] });
    expect(aTicket(short).clubs[0]?.tape).toMatchObject({ lowerLayers: 2, lower: undefined, totalInches: 0 });
  });

  it('says how the grip lies, and what comes off', () => {
    expect(driver).toMatchObject({
      align: { rib: 'under', logo: 'down', hand: 'left' },
      takeOff: 'salvage',
      buttWeight: undefined,
    });
    expect(pilot?.align).toEqual({ rib: undefined, logo: undefined, hand: undefined });
    expect(putter).toMatchObject({ takeOff: 'cutOff', buttWeight: { grams: 8, leaves: true } });
    expect(ticket.clubs[2]?.buttWeight).toEqual({ grams: 10, leaves: false });
    expect(putter).toMatchObject({ lengthChangeInches: -0.5, plugGrams: -4, hold: 'nothing', heldReading: undefined });
  });

  it('the rib goes where it is wanted; one that is not wanted, or not there, is told', () => {
    const ribs = (newItem: string, rib: 'seven' | 'none' | undefined) =>
      aTicket(aJob([{ newItem }], { stock }), { clubs: { 1: { rib } } }).clubs[0]?.align.rib;
    expect([ribs('ribbed', undefined), ribs('ribbed', 'seven'), ribs('ribbed', 'none')]).toEqual([
      'under',
      'seven',
      'unwanted',
    ]);
    expect([ribs('G', undefined), ribs('G', 'none'), ribs('G', 'seven')]).toEqual([undefined, undefined, 'lacking']);
  });

  it('of clubs that are done again has those alone: weight and length stay as they are, and take no time', () => {
    const again = aTicket(job, { again: new Set([1, 5]), clubs: { 1: { takeOff: 'none' } } });
    expect([again.isAgain, again.pilot, again.left]).toEqual([true, undefined, []]);
    expect(again.clubs.map(({ name, takeOff, lengthChangeInches }) => [name, takeOff, lengthChangeInches])).toEqual([
      ['Driver', 'cutOff', 0],
      ['Putter', 'cutOff', 0],
    ]);
    expect(again.clubs[0]?.weight).toMatchObject({ grams: driver?.weight?.grams, when: 'onAlready' });
    expect(again.clubs[0]?.expected).toEqual(driver?.expected);
    expect(again.clubs[1]?.buttWeight).toBeUndefined();
    expect(again.grips).toEqual([
      { item: 'ribbed', pieces: 1 },
      { item: 'G', pieces: 1 },
    ]);
    expect(again.consumables.weights).toEqual([]);
    expect(again.clubs[0]?.minutes).toBe(8 + 3 * 1.5 + 1 + 3); // fit, three layers, thrown away, read
    expect(cautionsFor(again).map(({ code }) => code)).not.toContain('lead');
  });

  it('says grams, way, place and when', () => {
    expect(driver?.weight).toMatchObject({ way: 'Lead tape', end: 'head', inches: 45, when: 'gripOn', lead: true });
    expect(driver?.weight?.grams).toBe(job.plan.clubs[0]?.remedy?.grams);
    const tip = aTicket(aJob([{ way: 'Tip plug', oldGripGrams: 40 }]));
    expect(tip.clubs[0]?.weight).toMatchObject({ way: 'Tip plug', inches: 35, when: 'gripOff', lead: false });
    expect(ticket.clubs[2]?.weight).toBeUndefined(); // half a gram of grip and a layer are within tolerance
  });

  it('adds up what the job uses', () => {
    expect(ticket.consumables).toEqual({
      buildUpInches: 26.5 + 10.5,
      twoWayInches: 42,
      solventMl: 60,
      weights: [
        {
          way: 'Lead tape',
          grams: (driver?.weight?.grams ?? 0) + (pilot?.weight?.grams ?? 0),
          clubs: 2,
        },
      ],
    });
  });

  it('and the minutes, as Rates and Weights give them', () => {
    const minutes = new Map(ticket.clubs.map((club) => [club.name, club.minutes]));
    expect(minutes.get('Driver')).toBe(8 + 3 * 1.5 + 4 + 3 + 5 + 2); // fit, three layers, kept, read, put right, lead
    expect(minutes.get('7 iron')).toBe(8 + 1 + 3 + 5 + 2);
    expect(minutes.get('PW')).toBe(8 + 1.5 + 1 + 3);
    expect(minutes.get('Putter')).toBe(11 + 1 + 15); // its own fitting; nothing is read
    expect(ticket.minutes).toEqual({ clubs: 26.5 + 19 + 13.5 + 27, job: 6, total: 92, missing: [] });
  });

  it('what is left to measure', () => {
    const bare = { bareReading: 44, bareGrams: 368 };
    const { clubs } = aTicket(aJob([{}, { reading: undefined }, bare, { ...bare, bareGrams: undefined }]));
    const byRow = new Map(clubs.map(({ row, measure, takeOff }) => [row, { ...measure, takeOff }]));
    expect(byRow.get(1)).toEqual({ before: false, bare: true, takeOff: 'cutOff' });
    expect(byRow.get(2)).toEqual({ before: true, bare: true, takeOff: 'cutOff' });
    expect(byRow.get(3)).toEqual({ before: false, bare: false, takeOff: 'none' }); // stripped already
    expect(byRow.get(4)).toEqual({ before: false, bare: true, takeOff: 'none' });
  });

  it('an old grip that was weighed is off already; one like another’s that was is not', () => {
    const takeOff = (more: object) => aTicket(aJob([more])).clubs[0]?.takeOff;
    expect(takeOff({ oldMassFrom: 'weighed' })).toBe('none');
    expect(takeOff({ oldMassFrom: 'alike' })).toBe('cutOff');
    expect(takeOff({ oldMassFrom: 'weighed', oldGripGrams: undefined })).toBe('cutOff'); // nothing was weighed
  });

  it('names work whose minutes nobody gave, and counts it as none', () => {
    const rates = RATES.filter(({ use }) => use !== 'buildUp').map((rate) =>
      rate.use === 'reading' ? { ...rate, minutes: undefined } : rate,
    );
    const { minutes, clubs } = aTicket(aJob([{ layers: 2, way: 'Head screw' }, { oldGripGrams: 60 }]), { rates });
    expect(minutes.missing).toEqual(['Build-up', 'Weigh and read', 'Head screw']);
    expect(clubs[0]?.minutes).toBe(8 + 1 + 5);
    expect(aTicket(aJob([{}]), { rates: [] }).minutes.missing).toEqual(['Fitting a grip']);
  });

  it('layers that a fitting includes take no minutes of their own; a rate per gram takes its grams', () => {
    const rates = RATES.map((rate) => (rate.use === 'fitting' && !rate.kind ? { ...rate, includedLayers: 1 } : rate));
    const one = aTicket(aJob([{ layers: 3, oldGripGrams: 57 }]), { rates });
    expect(one.clubs[0]?.minutes).toBe(8 + 2 * 1.5 + 1 + 3 + 5 + 2);
    const perGram = [{ work: 'Trim lead', use: 'weight', per: 'gram', price: 1, minutes: 0.5 } as const, ...RATES];
    const other = aTicket(aJob([{}]), { rates: perGram });
    expect(other.clubs[0]?.minutes).toBe(8 + 1 + 3 + 5 + 2 + 0.5 * (other.clubs[0]?.weight?.grams ?? NaN));
  });

  it('keeps its books whatever the job', () => {
    const club = fc.record({
      newItem: fc.constantFrom('G', 'ribbed', undefined),
      oldGripGrams: fc.option(fc.integer({ min: 30, max: 80 }), { nil: undefined }),
      layers: fc.integer({ min: 0, max: 5 }),
      lowerLayers: fc.integer({ min: 0, max: 3 }),
      kind: fc.constantFrom('iron' as const, 'putter' as const, 'driver' as const),
    });
    fc.assert(
      fc.property(fc.array(club, { maxLength: 14 }), fc.constantFrom('solvent', 'water', 'air'), (clubs, activator) => {
        const made = aJob(clubs, { stock });
        const found = aTicket(made, { habits: { activator } });
        expect(found.clubs.map(({ order }) => order)).toEqual(found.clubs.map((_, at) => at + 1));
        expect(found.clubs.filter(({ pilot: isPilot }) => isPilot)).toEqual(found.clubs.slice(0, 1));
        expect([...found.clubs, ...found.left].map(({ row }) => row).sort((a, b) => a - b)).toEqual(
          clubs.map((_, at) => at + 1),
        );
        const strips = found.clubs.map(
          ({ tape }) => tape.layers * tape.stripInches + tape.lowerLayers * (tape.lower?.stripInches ?? 0),
        );
        expect(found.consumables.buildUpInches).toBeCloseTo(
          strips.reduce((sum, each) => sum + each, 0),
          9,
        );
        expect(found.consumables.solventMl).toBe(activator === 'solvent' ? 15 * found.clubs.length : 0);
        expect(found.minutes.total).toBeCloseTo(
          found.clubs.reduce((sum, { minutes }) => sum + minutes, found.minutes.job),
          9,
        );
        expect(found.grips.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(found.clubs.length);
      }),
    );
  });
});

describe('what a club is to read and weigh', () => {
  it('from its old grip: bare as arrived less all that was on it', () => {
    const { clubs } = aTicket(aJob([{ oldLayers: 1, buttWeightGrams: 6, buttWeightLeaves: true }]));
    const { expected } = clubs[0]!;
    const body = 420 - 50 - LAYER - STRIP - 6;
    expect(expected.bareGrams?.value).toBeCloseTo(body, 9);
    const on = 50 * (4.2 - 14) + (LAYER + STRIP) * -8.75 + 6 * -13 + body * 0.125;
    expect(expected.bareReading?.value).toBeCloseTo(32 - on / P, 9);
    // ± of the old grip's mass (4 g, estimate) rules both
    expect(expected.bareGrams?.spread).toBeCloseTo(Math.hypot(4, 0.1 * LAYER, 0.5 * Math.SQRT2), 9);
    expect(expected.bareReading?.spread).toBeGreaterThan((4 * 9.8) / P);
  });

  it('a length change does not change what it is bare', () => {
    const plain = aTicket(aJob([{}])).clubs[0]!.expected;
    const longer = aTicket(aJob([{ lengthChangeInches: 1, plugGrams: 5 }])).clubs[0]!.expected;
    expect(longer.bareReading?.value).toBeCloseTo(plain.bareReading!.value, 9);
    expect(longer.bareGrams?.value).toBeCloseTo(plain.bareGrams!.value, 9);
  });

  it('finished: the plan’s own reading and mass, with the scale counted twice', () => {
    const job = aJob([{ hold: 'target', target: 32 }]);
    const { expected } = aTicket(job).clubs[0]!;
    const plan = job.plan.clubs[0]!;
    expect(expected.reading?.value).toBe(plan.readingAfter);
    expect(expected.massGrams?.value).toBeCloseTo(plan.massAfterGrams!, 9);
    expect(expected.reading?.spread).toBeCloseTo(Math.sqrt(plan.spreadPoints! ** 2 + 0.2 ** 2), 9);
    expect(expected.massGrams?.spread).toBeCloseTo(Math.hypot(4, 2, 0.5 * Math.SQRT2), 9);
  });

  it('the ± bare counts a cap that nobody measured, and a club that nobody weighed', () => {
    const spread = (more: object): number => aTicket(aJob([more])).clubs[0]!.expected.bareReading!.spread;
    const known = spread({});
    const body = 420 - 50 - STRIP;
    expect(spread({ oldCapInches: undefined })).toBeCloseTo(Math.hypot(known, (body * (1 / 16)) / P), 9);
    expect(spread({ massGrams: undefined })).toBeCloseTo(Math.hypot(known, (80 * 0.125) / P), 9);
  });

  it('the ± finished counts the tape, a tenth of it', () => {
    const spread = (more: object): number => aTicket(aJob([more])).clubs[0]!.expected.massGrams!.spread;
    const lower = (2 * LAYER * 5.5) / 10.5;
    expect(spread({ layers: 5, lowerLayers: 2 })).toBeCloseTo(Math.hypot(spread({}), 0.1 * (5 * LAYER + lower)), 9);
  });

  it('nothing where too little is known', () => {
    const { expected } = aTicket(aJob([{ oldGripGrams: undefined, oldItem: undefined, massGrams: undefined }]))
      .clubs[0]!;
    expect(expected).toEqual({
      bareReading: undefined,
      bareGrams: undefined,
      reading: undefined,
      massGrams: undefined,
    });
  });

  it('a stripped club is to read bare what it read', () => {
    const { expected } = aTicket(aJob([{ bareReading: 44, bareGrams: 368, massGrams: undefined }])).clubs[0]!;
    expect(expected.bareReading).toEqual({ value: 44, spread: 0.2 * Math.SQRT2 });
    expect(expected.bareGrams?.value).toBe(368);
  });
});

describe('cautions', () => {
  const cautions = (ask: TicketAsk = {}, clubs: Parameters<typeof aJob>[0] = [{}, { name: 'Driver' }]): Caution[] => [
    ...cautionsFor(aTicket(aJob(clubs), ask)),
  ];
  const codes = (...from: Parameters<typeof cautions>): CautionCode[] => cautions(...from).map(({ code }) => code);
  const even = [{ oldGripGrams: 60 }]; // the same grip again: no weight

  it('only those that apply', () => {
    expect(codes()).toEqual(['solvent', 'hookKnife', 'lead']);
    expect(codes({}, even)).toEqual(['solvent', 'hookKnife']);
    expect(codes({ habits: { activator: 'water', takeOff: 'salvage', salvageWith: 'air' } }, even)).toEqual(['air']);
    expect(codes({ habits: { activator: 'water', takeOff: 'none' } }, even)).toEqual([]);
    expect(codes({ habits: { activator: 'air' } }, even)).toEqual(['air', 'hookKnife']);
    expect(codes({ habits: { activator: 'water', takeOff: 'salvage', salvageWith: 'solvent' } }, even)).toEqual([
      'solvent',
    ]);
  });

  it('lead only where lead goes on', () => {
    expect(codes({}, [{ way: 'Head screw' }])).not.toContain('lead');
    expect(codes({ habits: { leadWays: ['head SCREW'] } }, [{ way: 'Head screw' }])).toContain('lead');
    expect(codes({ habits: { leadWays: [] } })).not.toContain('lead');
    expect(isLead('Leaded tape', {})).toBe(false); // a word of its own
    expect(isLead('tape, LEAD', {})).toBe(true);
  });

  it('dust where a shaft that may be graphite is cut', () => {
    const trim = [{ ...even[0]!, lengthChangeInches: -0.5, plugGrams: -3 }];
    expect(codes({}, trim)).toContain('graphiteDust');
    expect(codes({ clubs: { 1: { shaft: 'steel' } } }, trim)).not.toContain('graphiteDust');
    expect(codes({}, [{ ...even[0]!, lengthChangeInches: 0.5 }])).not.toContain('graphiteDust');
  });

  it('name their clubs, and the solvent', () => {
    const [solvent] = cautions({
      habits: { solvent: 'isopropylAlcohol' },
      clubs: { 1: { takeOff: 'salvage' } },
    });
    expect(solvent).toEqual({ code: 'solvent', clubs: ['club 1', 'Driver'], solvent: 'isopropylAlcohol' });
    expect(cautions({ clubs: { 1: { takeOff: 'salvage' } } }).find(({ code }) => code === 'air')?.clubs).toEqual([
      'club 1',
    ]);
  });

  it('no solvent where the grip goes on without two-way tape', () => {
    const job = aJob(even, { settings: { twoWayUnderNew: false } });
    expect(aTicket(job).consumables).toMatchObject({ solventMl: 0, twoWayInches: 0 });
  });
});
