// A question and a plan being written: kept until it is sent, its order, cost and chances asked after at
// each change.

import * as api from "../../api/endpoints";
import type {
  Asked,
  Assumptions,
  BenchTimes,
  Chances,
  Cost,
  Plan,
  PlanAsked,
  Problem,
  Started,
  Trial,
} from "../../wire/api";
import { Asking } from "../asking.svelte";
import { isElsewhere } from "../elsewhere";
import { forgetUnsent, keepUnsent, unsent } from "../unsent";
import { LongWork } from "../work.svelte";
import {
  anySeed,
  armChoices,
  bladesNamed,
  claimsSaid,
  cuttingsNamed,
  type Draft,
  draftOf,
  ofNamed,
  withPlace,
} from "./draft";
import type { MeasuredFor } from "./measured";
import { keepWorkedOut, workedOut } from "./worked_out";

const pauseMs = 350;
/** Of a trial that says nothing of it. */
const nothingAsked = "none";

/** What somebody else wrote down since this was looked at. */
interface Elsewhere {
  /** What it is now, in a sentence. */
  words: string;
  trial: Trial;
}

export class Drafting {
  draft: Draft = $state.raw(draftOf(undefined));
  /** Of each medium in the draft's order, named or not. */
  assumptions: Assumptions = $state.raw({});
  benchTimes: BenchTimes = $state.raw({});
  plan: Plan | undefined = $state.raw();
  chances: Chances | undefined = $state.raw();
  /** Of what stands here, not all is kept yet. */
  unkept = $state(false);
  elsewhere: Elsewhere | undefined = $state.raw();
  /** What was typed before another's was gone on with. */
  aside: Draft | undefined = $state.raw();
  readonly planning = new Asking<Plan>();
  readonly cost = new Asking<Cost>();
  readonly rough = new Asking<Chances | Started>();
  readonly saving = new Asking<Trial>();
  readonly work = new LongWork();
  readonly #uid: string;
  readonly #kept: string;
  readonly #seen: string;
  readonly #putAside: string;
  readonly #taken: string;
  #sealed: boolean;
  #revision: string;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(trial: Trial) {
    this.#uid = trial.uid;
    this.#kept = `asked.${trial.uid}`;
    this.#seen = `asked-of.${trial.uid}`;
    this.#putAside = `asked-aside.${trial.uid}`;
    this.#taken = `assumed.${trial.uid}`;
    this.assumptions = unsent<Assumptions>(sessionStorage, this.#taken) ?? {};
    this.#sealed = trial.asked?.sealed_at_utc !== undefined;
    const kept = this.#sealed ? undefined : unsent<Draft>(sessionStorage, this.#kept);
    this.draft = kept ?? draftOf(trial.asked, trial.recorded);
    this.unkept = kept !== undefined;
    const told = trial.asked?.revision ?? nothingAsked;
    this.#revision = (kept && unsent<string>(sessionStorage, this.#seen)) ?? told;
    this.aside = this.#sealed ? undefined : unsent<Draft>(sessionStorage, this.#putAside);
    this.plan = trial.asked?.plan;
  }

  /** For what is measured before it, of a medium. */
  plannedIn(medium: string): MeasuredFor {
    const { counted, reading } = this.draft.rest;
    return { uid: this.#uid, medium, kind: reading.kind, counted };
  }

  /** Which saying of question and plan this is a change of. */
  get revision(): string {
    return this.#revision;
  }

  /** A blade and a medium at least are named. */
  get named(): boolean {
    return bladesNamed(this.draft).length > 0 && cuttingsNamed(this.draft).length > 0;
  }

  change(changes: Partial<Draft>): void {
    this.draft = { ...this.draft, ...changes };
    this.unkept = true;
    // What was wrong when it was sent may be mended by this.
    this.saving.problems = [];
    keepUnsent(sessionStorage, this.#kept, this.draft);
    keepUnsent(sessionStorage, this.#seen, this.#revision);
  }
  /** Changes of the plan: what it costs and can find out is asked after anew. */
  replan(changes: Partial<Draft>): void {
    this.change(changes);
    this.lookSoon();
  }
  changeRest(changes: Partial<Draft["rest"]>): void {
    this.replan({ rest: { ...this.draft.rest, ...changes } });
  }
  assume(changes: Assumptions): void {
    this.assumptions = { ...this.assumptions, ...changes };
    keepUnsent(sessionStorage, this.#taken, this.assumptions);
    this.lookSoon();
  }
  /** Of the medium in that place; nothing where the usual holds. */
  assumeOf(place: number, what: "half_keenness_cuts" | "run_log_sd", to?: number): void {
    this.assume({ [what]: withPlace(this.assumptions[what], place, to) });
  }
  /** What was measured, in place of what stands there for that medium. */
  assumeMeasured(place: number, run_log_sd: number, half_keenness_cuts?: number): void {
    const { assumptions } = this;
    this.assume({
      run_log_sd: withPlace(assumptions.run_log_sd, place, run_log_sd),
      half_keenness_cuts:
        half_keenness_cuts === undefined
          ? assumptions.half_keenness_cuts
          : withPlace(assumptions.half_keenness_cuts, place, half_keenness_cuts),
    });
  }
  taking(changes: BenchTimes): void {
    this.benchTimes = { ...this.benchTimes, ...changes };
    this.lookSoon();
  }
  /** Another order; the same again from the same number. */
  shuffle(): void {
    this.changeRest({ order_seed: anySeed() });
  }
  /** Takes a plan that the program made, and its claim where nothing was claimed yet. */
  take(made: Asked): void {
    const said = claimsSaid(this.draft);
    this.replan(draftOf(said.length > 0 ? { ...made, claims: this.draft.claims } : made));
  }

  lookSoon(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.look(), pauseMs);
  }

  /** The plan as it stands, with its arms in their order; nothing where none are named yet. */
  async look(): Promise<void> {
    clearTimeout(this.#timer);
    if (!this.named) return;
    const plan = await this.planning.ask(async () => this.#planned());
    await this.work.stop();
    if (!plan) {
      if (this.planning.problems.length > 0) this.chances = undefined;
      return;
    }
    this.plan = plan;
    const asked = this.#asked(plan);
    void this.cost.ask((signal) => api.cost(asked, signal));
    const known = workedOut(this.#uid, asked, this.#sealed);
    if (known) {
      this.rough.forget();
      this.chances = known;
      return;
    }
    const rough = await this.rough.ask((signal) => api.chances({ ...asked, rough: true }, signal));
    if (rough && !("work" in rough)) this.chances = rough;
    // What a plan before this one would find out is not said of this one.
    if (this.rough.problems.length > 0) this.chances = undefined;
  }

  /** The same plan, told in the units that are chosen now; its chances know of none. */
  async tellAgain(): Promise<void> {
    if (!this.named) return;
    const plan = await this.planning.ask(async () => this.#planned());
    if (!plan) return;
    this.plan = plan;
    void this.cost.ask((signal) => api.cost(this.#asked(plan), signal));
  }

  /** A sealed plan as it is told now. */
  sealedPlan(plan: Plan): void {
    this.#sealed = true;
    this.plan = plan;
  }

  async workOutChances(): Promise<void> {
    if (!this.plan) return;
    const asked = this.#asked(this.plan);
    const answer = await this.rough.ask((signal) => api.chances(asked, signal));
    if (!answer) return;
    if (!("work" in answer)) {
      this.chances = answer;
      return;
    }
    const made = await this.work.follow(async () => answer);
    if (!made) return;
    const chances: Chances = await made.json();
    this.chances = chances;
    keepWorkedOut(this.#uid, asked, chances);
  }

  /** What is typed meanwhile stays unkept. */
  async save(): Promise<Trial | undefined> {
    const { draft } = this;
    const saved = await this.saving.ask(async () => {
      const plan = this.named ? await this.#planned() : undefined;
      const asked: Asked = { revision: this.#revision, claims: claimsSaid(this.draft), plan };
      return api.writeAsked(this.#uid, asked);
    });
    this.elsewhere = undefined;
    if (!saved) {
      await this.lookElsewhere(this.saving.problems);
      return undefined;
    }
    this.#goesOnFrom(saved);
    if (draft === this.draft) this.#isKept();
    else keepUnsent(sessionStorage, this.#seen, this.#revision);
    return saved;
  }

  /** Where one of the problems says that somebody else wrote it down otherwise: what that is. */
  async lookElsewhere(problems: Problem[]): Promise<void> {
    const problem = problems.find(isElsewhere);
    if (!problem) return;
    const trial = await api.trial(this.#uid).catch(() => undefined);
    if (trial) this.elsewhere = { words: problem.sentence, trial };
  }
  /** What stands here is put aside, and the other gone on with. Out: the trial as it is then. */
  takeElsewhere(): Trial | undefined {
    if (!this.elsewhere) return undefined;
    const { trial } = this.elsewhere;
    this.aside = this.draft;
    keepUnsent(sessionStorage, this.#putAside, this.aside);
    this.draft = draftOf(trial.asked, trial.recorded);
    this.plan = trial.asked?.plan;
    this.elsewhere = undefined;
    this.saving.problems = [];
    this.#goesOnFrom(trial);
    this.#isKept();
    this.lookSoon();
    return trial;
  }
  /** What stands here is to be kept in place of the other; it is not yet. */
  overElsewhere(): void {
    if (!this.elsewhere) return;
    this.#goesOnFrom(this.elsewhere.trial);
    this.elsewhere = undefined;
  }
  takeUpAgain(): void {
    const { aside } = this;
    if (!aside) return;
    this.aside = undefined;
    forgetUnsent(sessionStorage, this.#putAside);
    this.replan(aside);
  }

  leave(): void {
    clearTimeout(this.#timer);
    void this.work.stop();
  }

  #goesOnFrom(trial: Trial): void {
    this.#revision = trial.asked?.revision ?? nothingAsked;
  }

  #isKept(): void {
    forgetUnsent(sessionStorage, this.#kept);
    forgetUnsent(sessionStorage, this.#seen);
    this.unkept = false;
  }

  #asked(plan: Plan): PlanAsked {
    const { half_keenness_cuts, run_log_sd, ...others } = this.assumptions;
    return {
      plan,
      claims: claimsSaid(this.draft),
      assumptions: {
        ...others,
        half_keenness_cuts: ofNamed(this.draft, half_keenness_cuts),
        run_log_sd: ofNamed(this.draft, run_log_sd),
      },
      bench_times: this.benchTimes,
    };
  }

  async #planned(): Promise<Plan> {
    if (this.#sealed && this.plan) return this.plan;
    const { draft } = this;
    const cuttings = await Promise.all(
      cuttingsNamed(draft).map(async (cutting) =>
        cutting.checkpoint_cuts.length > 0
          ? cutting
          : { ...cutting, checkpoint_cuts: (await api.checkpoints({})).checkpoint_cuts },
      ),
    );
    const { arms } = await api.plannedArms(armChoices(draft, cuttings.length));
    return api.shuffled({ ...draft.rest, cuttings, arms, runs: [] });
  }
}
