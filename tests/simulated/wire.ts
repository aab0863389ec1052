/**
 * The host's side of the client library's wire: takes a request, does its actions one by one on a model, answers.
 *
 * It knows nothing of spreadsheets. As in Excel, a request is no transaction: what was done before a failing action stays done.
 */

/** An error the host reports, in the host's own words. */
export class HostError extends Error {
  readonly code: string;
  constructor(code: string, message = code) {
    super(message);
    this.code = code;
  }
}

/** One object of the model: the name of the class it stands for, and which members of that class it models. */
export interface Modelled {
  readonly className: string;
  readonly members: readonly string[];
  /** What an unrestricted load brings. */
  readonly scalars?: readonly string[];
  readonly id?: string;
  /** Whether the client may keep a reference to it (ranges). */
  readonly kept?: boolean;
  /** Its items, if it is a collection. */
  listed?(): readonly Modelled[];
}

interface Arguments {
  readonly Arguments?: readonly unknown[];
  readonly ReferencedObjectPathIds?: readonly unknown[];
}
interface ObjectPath {
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId: number;
  readonly ArgumentInfo?: Arguments;
}
export interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: Arguments;
  readonly QueryInfo?: Query;
  readonly ObjectState?: Record<string, unknown>;
}
interface Query {
  readonly Select?: readonly string[];
  readonly Expand?: readonly string[];
  readonly Skip?: number;
  readonly Top?: number;
}
export interface RequestBody {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Record<string, ObjectPath>;
}
export interface ResponseBody {
  Results?: { ActionId: number; Value: unknown }[];
  Error?: { Code: string; Message: string; HttpStatusCode: number; ActionIndex: number; Location: string };
}

/** Numbers of the library's wire format (its `ActionType` and `ObjectPathType`). */
const doing = { instantiate: 1, query: 2, method: 3, set: 4, trace: 5, setMany: 9 } as const;
const found = { root: 1, method: 3, property: 4, indexer: 5, reference: 6, nothing: 7 } as const;

type Live = Modelled | null;

export interface HostOptions {
  /** What to fail at, asked before each action; throwing makes that action the failing one. */
  readonly beforeAction: (index: number) => void;
  /** Whether a child of a null object is a null object too. */
  readonly nullsPropagate: boolean;
  /** Told of every member used, as `Range.values`. */
  readonly used: (member: string) => void;
}

export class Host {
  readonly #root: Modelled;
  readonly #options: HostOptions;
  readonly #references = new Map<string, Modelled>();
  readonly #referenceOf = new Map<Modelled, string>();
  #nextReference = 1;

  constructor(root: Modelled, options: HostOptions) {
    this.#root = root;
    this.#options = options;
  }

  execute({ Actions, ObjectPaths }: RequestBody): ResponseBody {
    const resolved = new Map<number, Live>();
    const resolve = (id: number): Live => {
      const known = resolved.get(id);
      if (known !== undefined) return known;
      const path = ObjectPaths[String(id)];
      if (!path) throw new Error(`simulated: object path ${id} is missing`);
      const live = this.#step(path, resolve);
      resolved.set(id, live);
      return live;
    };
    const Results: NonNullable<ResponseBody['Results']> = [];
    for (const [index, action] of Actions.entries()) {
      try {
        this.#options.beforeAction(index);
        Results.push({ ActionId: action.Id, Value: this.#act(action, resolve) ?? null });
      } catch (error) {
        // A mistake of the simulation must not look like one of Excel's errors.
        if (!(error instanceof HostError)) throw error;
        const Error = { Code: error.code, Message: error.message, HttpStatusCode: 400, ActionIndex: index };
        return { Error: { ...Error, Location: action.Name || '' }, Results };
      }
    }
    return { Results };
  }

  #act(action: Action, resolve: (id: number) => Live): unknown {
    if (action.ActionType === doing.trace) return null;
    const on = resolve(action.ObjectPathId);
    switch (action.ActionType) {
      case doing.instantiate:
        return on && this.#identify(on);
      case doing.query:
        return on && this.#query(on, action.QueryInfo ?? {});
      case doing.method:
        return this.#method(on, action, resolve);
      case doing.set:
        this.#set(on, action.Name, this.#args(action.ArgumentInfo, resolve)[0]);
        return null;
      case doing.setMany:
        for (const [name, value] of Object.entries(action.ObjectState ?? {})) this.#set(on, name, value);
        return null;
      default:
        throw new Error(`simulated: action type ${action.ActionType}`);
    }
  }

  #args(info: Arguments | undefined, resolve: (id: number) => Live): unknown[] {
    const ids = info?.ReferencedObjectPathIds ?? [];
    return (info?.Arguments ?? []).map((value, i) => {
      const id = ids[i];
      return typeof id === 'number' && id !== 0 ? resolve(id) : value;
    });
  }

  #step(path: ObjectPath, resolve: (id: number) => Live): Live {
    if (path.ObjectPathType === found.root) return this.#root;
    if (path.ObjectPathType === found.nothing) return null;
    if (path.ObjectPathType === found.reference) return this.#reference(path.Name);
    const parent = resolve(path.ParentObjectPathId);
    if (parent === null) {
      if (this.#options.nullsPropagate) return null;
      throw new HostError('InvalidObjectPath', 'The object path is not working for what you are trying to do.');
    }
    const args = this.#args(path.ArgumentInfo, resolve);
    if (path.ObjectPathType === found.property) return this.#get(parent, clientName(path.Name)) as Live;
    const method = path.ObjectPathType === found.indexer ? 'getItem' : clientName(path.Name);
    return this.#call(parent, method, args) as Live;
  }

  #reference(name: string): Modelled {
    const live = this.#references.get(name);
    if (!live) throw new HostError('InvalidObjectPath', `dead reference ${name}`);
    return live;
  }

  #method(on: Live, action: Action, resolve: (id: number) => Live): unknown {
    if (action.Name === '_KeepReference') return null;
    if (action.Name === '_RemoveReference') {
      this.#letGo(String(action.ArgumentInfo?.Arguments?.[0]));
      return null;
    }
    if (on === null) throw new HostError('InvalidOperation', 'The null object allows no operation.');
    const value = this.#call(on, clientName(action.Name), this.#args(action.ArgumentInfo, resolve));
    return typeof value === 'object' ? null : value;
  }

  #call(on: Modelled, name: string, args: readonly unknown[]): unknown {
    this.#demand(on, name);
    const method = (on as unknown as Record<string, unknown>)[name];
    if (typeof method !== 'function') throw new Error(`simulated: ${on.className}.${name} is no method`);
    return (method as (...list: unknown[]) => unknown).apply(on, [...args]);
  }

  #get(on: Modelled, name: string): unknown {
    this.#demand(on, name);
    return (on as unknown as Record<string, unknown>)[name];
  }

  #set(on: Live, name: string, value: unknown): void {
    if (on === null) throw new HostError('InvalidOperation', 'The null object allows no operation.');
    this.#demand(on, clientName(name));
    (on as unknown as Record<string, unknown>)[clientName(name)] = value;
  }

  #demand(on: Modelled, name: string): void {
    if (!on.members.includes(name)) throw new Error(`simulated: ${on.className}.${name} is not modelled`);
    this.#options.used(`${on.className}.${name}`);
  }

  #identify(on: Modelled): Record<string, unknown> {
    const answer: Record<string, unknown> = on.id === undefined ? {} : { Id: on.id };
    if (on.kept) answer._ReferenceId = this.#keep(on);
    return answer;
  }

  /** One reference an object, however often it is told of: the library lets go of the last one it heard. */
  #keep(on: Modelled): string {
    const known = this.#referenceOf.get(on);
    if (known !== undefined) return known;
    const name = `reference ${this.#nextReference}`;
    this.#nextReference += 1;
    this.#references.set(name, on);
    this.#referenceOf.set(on, name);
    return name;
  }

  #letGo(name: string): void {
    const on = this.#references.get(name);
    this.#references.delete(name);
    if (on) this.#referenceOf.delete(on);
  }

  /** What the client keeps hold of. */
  get held(): Iterable<Modelled> {
    return this.#references.values();
  }

  /** How many objects the client keeps hold of. */
  get kept(): number {
    return this.#references.size;
  }

  #query(on: Modelled, query: Query): unknown {
    const selected = [...(query.Select ?? []), ...(query.Expand ?? [])].map((path) => path.split('/').map(clientName));
    return on.listed ? this.#answerList(on, selected, query) : this.#answerOne(on, selected);
  }

  #answerOne(on: Modelled, selected: readonly string[][]): Record<string, unknown> {
    const answer = this.#identify(on);
    const plain = selected.filter((path) => path.length === 1).flat();
    const names = plain.length === 0 && selected.length === 0 ? (on.scalars ?? []) : plain;
    for (const name of names) {
      const value = this.#get(on, name);
      answer[wireName(name)] = isModelled(value) ? this.#answerOne(value, []) : value;
    }
    for (const head of new Set(selected.filter((path) => path.length > 1).map((path) => path[0] ?? ''))) {
      const child = this.#get(on, head) as Modelled;
      const below = selected.filter((path) => path.length > 1 && path[0] === head).map((path) => path.slice(1));
      answer[wireName(head)] = child.listed ? this.#answerList(child, below, {}) : this.#answerOne(child, below);
    }
    return answer;
  }

  #answerList(on: Modelled, selected: readonly string[][], query: Query): Record<string, unknown> {
    const below = selected.filter((path) => path[0] === 'items').map((path) => path.slice(1));
    const own = selected.filter((path) => path[0] !== 'items');
    const wanted = below.filter((path) => path.length > 0);
    const from = query.Skip ?? 0;
    const items = (on.listed?.() ?? []).slice(from, query.Top === undefined ? undefined : from + query.Top);
    return { ...this.#identify(on), _Items: items.map((item) => this.#answerOne(item, wanted.length ? wanted : own)) };
  }
}

function isModelled(value: unknown): value is Modelled {
  return typeof value === 'object' && value !== null && 'className' in value;
}

/** `NumberFormat` → `numberFormat`; the wire has capitals, the client has none. */
function clientName(name: string): string {
  return name.startsWith('_') ? name : name.slice(0, 1).toLowerCase() + name.slice(1);
}

function wireName(name: string): string {
  return name.slice(0, 1).toUpperCase() + name.slice(1);
}
