/** Which dangers a job has. */
import type { BenchTicket, Caution, CautionCode, TicketClub } from './types';

/**
 * Cautions for a ticket, only those that apply: solvent where any is used, however little, air where it slides or takes a grip off, the hook knife where a
 * grip is cut off, dust where a shaft that may be graphite is cut, lead where lead is put on.
 *
 * Source of what applies when: common bench practice, no source; figures and their sources stand in the sentences.
 */
export function cautionsFor(ticket: Pick<BenchTicket, 'clubs' | 'habits'>): readonly Caution[] {
  const { clubs, habits } = ticket;
  const applies: Readonly<Record<CautionCode, (club: TicketClub) => boolean>> = {
    solvent: ({ tape, takeOff }) =>
      (habits.activator === 'solvent' && tape.twoWayInches > 0) ||
      (takeOff === 'salvage' && habits.salvageWith === 'solvent'),
    air: ({ takeOff }) => habits.activator === 'air' || (takeOff === 'salvage' && habits.salvageWith === 'air'),
    hookKnife: ({ takeOff }) => takeOff === 'cutOff',
    graphiteDust: ({ shaft, lengthChangeInches }) => lengthChangeInches < 0 && shaft !== 'steel',
    lead: ({ weight }) => weight?.lead === true && weight.when !== 'onAlready',
  };
  return (Object.keys(applies) as CautionCode[]).flatMap((code) => {
    const names = clubs.filter(applies[code]).map(({ name }) => name);
    if (names.length === 0) return [];
    return [code === 'solvent' ? { code, clubs: names, solvent: habits.solvent } : { code, clubs: names }];
  });
}
