import { mapped } from '../elementary';
import { atIndex } from './at-index';
import { sweepFrontier, type FrontierVisitor, type Waiting } from './frontier';
import type { Digit, Model, SweptCause } from './model';

/** Where a digit or a kept cause sits in the table: its value v adds v · stride to the entry's index. */
export interface Place {
  readonly stride: number;
  readonly radix: number;
}

interface Sizes {
  /** Entries of the table before and after the step. */
  readonly sizeIn: number;
  readonly sizeOut: number;
}

/** One step of the sweep. Strides of `touches` and `feeds` are those of the table after the step. */
export type Step = Sizes &
  (
    | { readonly kind: 'open'; readonly digit: number; readonly place: Place }
    | { readonly kind: 'sum'; readonly swept: number; readonly touches: readonly Place[] }
    | { readonly kind: 'joint'; readonly joint: number; readonly places: readonly Place[] }
    | { readonly kind: 'inhibit'; readonly digit: number; readonly inhibitor: number; readonly place: Place; readonly cause: Place }
    | { readonly kind: 'close'; readonly digit: number; readonly place: Place; readonly feeds: readonly Place[] }
    | { readonly kind: 'drop'; readonly swept: number; readonly place: Place }
  );

/** The steps of a sweep. They depend on which tables are present in the model, not on the numbers in them. */
export function stepsInOrder(model: Model, waiting: Waiting, order: readonly number[]): readonly Step[] {
  const writer = new StepWriter(model);
  sweepFrontier(model, waiting, order, writer);
  return writer.steps;
}

interface Resident extends Place {
  readonly kind: 'digit' | 'kept';
  readonly index: number;
}

class StepWriter implements FrontierVisitor {
  readonly steps: Step[] = [];
  #residents: readonly Resident[] = [];
  #size = 1;

  constructor(private readonly model: Model) {}

  open(digit: number): void {
    const sizeIn = this.#size;
    const place = this.#enter('digit', digit, this.#digit(digit).radix);
    this.steps.push({ kind: 'open', digit, place, sizeIn, sizeOut: this.#size });
  }

  sum(swept: number): void {
    const cause = this.#swept(swept);
    const touches = mapped(cause.touches, ({ digit }) => this.#place('digit', digit));
    const sizeIn = this.#size;
    if (cause.kept) this.#enter('kept', swept, cause.states);
    this.steps.push({ kind: 'sum', swept, touches, sizeIn, sizeOut: this.#size });
  }

  joint(joint: number): void {
    const places = mapped(this.model.joints[joint]?.causes ?? [], (cause) => this.#placeOfCause(cause));
    this.steps.push({ kind: 'joint', joint, places, sizeIn: this.#size, sizeOut: this.#size });
  }

  inhibit(digit: number, inhibitor: number): void {
    const cause = this.#placeOfCause(this.#digit(digit).inhibitors[inhibitor]?.cause ?? -1);
    this.steps.push({ kind: 'inhibit', digit, inhibitor, place: this.#place('digit', digit), cause, sizeIn: this.#size, sizeOut: this.#size });
  }

  close(digit: number): void {
    const sizeIn = this.#size;
    const place = this.#leave('digit', digit);
    const feeds = mapped(this.#digit(digit).feeds, ({ into }) => this.#place('digit', into));
    this.steps.push({ kind: 'close', digit, place, feeds, sizeIn, sizeOut: this.#size });
  }

  drop(swept: number): void {
    const sizeIn = this.#size;
    const place = this.#leave('kept', swept);
    this.steps.push({ kind: 'drop', swept, place, sizeIn, sizeOut: this.#size });
  }

  #enter(kind: Resident['kind'], index: number, radix: number): Place {
    const resident = { kind, index, radix, stride: this.#size };
    this.#residents = [...this.#residents, resident];
    this.#size *= radix;
    return resident;
  }

  #leave(kind: Resident['kind'], index: number): Place {
    const leaving = this.#place(kind, index);
    const staying = this.#residents.filter((resident) => resident !== leaving);
    this.#residents = mapped(staying, (resident) => ({ ...resident, stride: resident.stride > leaving.stride ? resident.stride / leaving.radix : resident.stride }));
    this.#size /= leaving.radix;
    return leaving;
  }

  #place(kind: Resident['kind'], index: number): Place {
    const place = this.#residents.find((resident) => resident.kind === kind && resident.index === index);
    if (place === undefined) throw new Error(`inference: ${kind} ${index} is not in the frontier; expected it to be opened first`);
    return place;
  }

  #placeOfCause(cause: number): Place {
    return this.#place('kept', this.model.swept.findIndex((swept) => swept.cause === cause));
  }

  #digit(digit: number): Digit {
    return atIndex(this.model.digits, digit, 'digit');
  }

  #swept(swept: number): SweptCause {
    return atIndex(this.model.swept, swept, 'swept cause');
  }
}
