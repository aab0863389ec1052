/** Everything in a plan that waits for a person, gathered by what it is, each with the clubs it concerns. */
import type { ClubPlan, Note, RuleBreach, SetPlan } from '../../core/index';

export type DecisionTopic = Exclude<Note['note'], 'taught' | 'ownGrip'> | 'breach';

export interface Decision {
  readonly topic: DecisionTopic;
  /** Each sentence once, with the clubs that earn it. */
  readonly sentences: readonly { readonly text: string; readonly clubs: readonly string[] }[];
}

/** How notes become sentences; handed in, so that gathering can be tested without words. */
export interface Sayings {
  readonly note: (note: Note) => string;
  readonly breach: (breach: RuleBreach) => string;
}

function openNotes(club: ClubPlan): readonly (Note & { readonly note: DecisionTopic })[] {
  return club.notes.filter((note): note is Note & { note: DecisionTopic } => needsDecision(note));
}

/**
 * That a club taught something, or that its grip is the client's, is news and not a question. So is that nobody measures butts: it would be
 * asked of every club of a shop, and nothing is to be chosen unless a size is wanted.
 */
export function needsDecision(note: Note): boolean {
  if (note.note === 'sizeUnknown') return note.targetInches !== undefined;
  return note.note !== 'taught' && note.note !== 'ownGrip';
}

/** Whether anything about a club waits for a person. */
export function isOpen(club: ClubPlan): boolean {
  return club.breaches.length > 0 || club.notes.some(needsDecision);
}

export function gatherDecisions(plan: SetPlan, say: Sayings): readonly Decision[] {
  const topics = new Map<DecisionTopic, Map<string, string[]>>();
  const add = (topic: DecisionTopic, text: string, club: string) => {
    const sentences = topics.get(topic) ?? new Map<string, string[]>();
    topics.set(topic, sentences);
    const clubs = sentences.get(text) ?? [];
    sentences.set(text, clubs);
    if (!clubs.includes(club)) clubs.push(club);
  };
  for (const club of plan.clubs) {
    for (const note of openNotes(club)) add(note.note, say.note(note), club.name);
    for (const breach of club.breaches) add('breach', say.breach(breach), club.name);
  }
  return [...topics].map(([topic, sentences]) => ({
    topic,
    sentences: [...sentences].map(([text, clubs]) => ({ text, clubs })),
  }));
}
