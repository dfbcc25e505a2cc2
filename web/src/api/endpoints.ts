// What can be asked of the program: one function each, in the order of docs/wire/api.json.

import type * as wire from "../wire/api";
import { answerTo, type Sending, send } from "./send";

const v1 = "/api/v1";
const trialPath = (uid: string) => `${v1}/trials/${encodeURIComponent(uid)}`;
const post = <T>(path: string, body: unknown, signal?: AbortSignal) =>
  send<T>(path, { method: "POST", body, signal });
const put = <T>(path: string, body: unknown) => send<T>(path, { method: "PUT", body });

export const app = (signal?: AbortSignal) => send<wire.App>(`${v1}/app`, { signal });
export const stop = () => post<wire.Stopped>(`${v1}/stop`, {});
export const notebooks = (signal?: AbortSignal) =>
  send<wire.Notebooks>(`${v1}/notebooks`, { signal });
export const openNotebook = (how: wire.OpenNotebook) => post<wire.App>(`${v1}/notebooks`, how);
export const home = (signal?: AbortSignal) => send<wire.Home>(`${v1}/home`, { signal });

export const newTrial = (trial: wire.NewTrial) => post<wire.Trial>(`${v1}/trials`, trial);
export const trial = (uid: string, signal?: AbortSignal) =>
  send<wire.Trial>(trialPath(uid), { signal });
export const answer = (uid: string, signal?: AbortSignal) =>
  send<wire.Answer>(`${trialPath(uid)}/answer`, { signal });
export const rename = (uid: string, name: string) =>
  put<wire.Changed>(`${trialPath(uid)}/name`, { name });
export const writeAsked = (uid: string, asked: wire.Asked) =>
  put<wire.Trial>(`${trialPath(uid)}/asked`, asked);
/** What was seen is sealed, and nothing that was written down since. */
export const seal = (uid: string, revision: string) =>
  post<wire.Trial>(`${trialPath(uid)}/seal`, { revision } satisfies wire.Seal);

/** The answer at once, or the work that makes it. */
export const judge = (uid: string, how: wire.Judging, signal?: AbortSignal) =>
  post<wire.Judged | wire.Started>(`${trialPath(uid)}/judgements`, how, signal);
export const report = (uid: string, how: wire.ReportRequest) =>
  post<wire.Started>(`${trialPath(uid)}/reports`, how);
export const strike = (uid: string, what: wire.Strike) =>
  post<wire.Changed>(`${trialPath(uid)}/strikes`, what);

export const work = (id: string, signal?: AbortSignal) =>
  send<wire.Work>(`${v1}/works/${encodeURIComponent(id)}`, { signal });
export const stopWork = (id: string) =>
  send<wire.Work>(`${v1}/works/${encodeURIComponent(id)}`, { method: "DELETE" });
export const workResult = (path: string) => answerTo(path);

export function journal(before?: number, signal?: AbortSignal) {
  const query = before === undefined ? "" : `?before=${before}`;
  return send<wire.Journal>(`${v1}/journal${query}`, { signal });
}
export const undoEntry = (entry: number) => post<wire.Changed>(`${v1}/journal/${entry}/undo`, {});
export const takeBack = (entry: number) =>
  post<wire.TakenBack>(`${v1}/journal/${entry}/take-back`, {});
export const search = (text: string, signal?: AbortSignal) =>
  send<wire.Found>(`${v1}/search?text=${encodeURIComponent(text)}`, { signal });
export const exportNotebook = (how: wire.Export) => post<wire.Started>(`${v1}/export`, how);

/** How it would be taken, at once or, of a large one, by work; as is taking it. */
export const readTable = (table: wire.ReadTable, signal?: AbortSignal) =>
  post<wire.TableRead | wire.Started>(`${v1}/tables/read`, table, signal);
export const takeTable = (table: wire.TakeTable) =>
  post<wire.TakenTable | wire.Started>(`${v1}/tables/take`, table);

export const benchToCut = (signal?: AbortSignal) =>
  send<wire.BenchToCut>(`${v1}/bench`, { signal });
export const letIn = (ask: wire.AskToBeLetIn) => post<wire.LetIn>(`${v1}/let-in`, ask);
export const devices = (signal?: AbortSignal) => send<wire.Devices>(`${v1}/devices`, { signal });
export const newCode = () => post<wire.Devices>(`${v1}/devices/code`, {});
export const putOut = (device: string) =>
  send<wire.Devices>(`${v1}/devices/${encodeURIComponent(device)}`, { method: "DELETE" });

/** `unit`: in which a held reading is told. */
export const scale = (unit?: string, signal?: AbortSignal) =>
  send<wire.Scale>(`${v1}/scale${unit ? `?unit=${encodeURIComponent(unit)}` : ""}`, { signal });
export const useScale = (use: wire.UseScale) => put<wire.Scale>(`${v1}/scale`, use);
export const putScaleAway = () => send<wire.Scale>(`${v1}/scale`, { method: "DELETE" });
export const holdNext = (next: wire.HoldNext) => post<wire.Scale>(`${v1}/scale/hold`, next);
const benchPath = (run: string) => `${v1}/bench/${encodeURIComponent(run)}`;
export const bench = (trial: string, signal?: AbortSignal) =>
  send<wire.Bench>(`${trialPath(trial)}/bench`, { signal });
export const beginRun = (trial: string, begin: wire.BeginBenchRun) =>
  post<wire.BenchRun>(`${trialPath(trial)}/bench`, begin);
export const benchRun = (run: string, signal?: AbortSignal) =>
  send<wire.BenchRun>(benchPath(run), { signal });
export const lookAgain = (run: string, typed: wire.TypedReading, signal?: AbortSignal) =>
  post<wire.LookAgain>(`${benchPath(run)}/look`, typed, signal);
export const tapped = (run: string, body: wire.BenchEntries, how: Sending = {}) =>
  send<wire.BenchRun>(benchPath(run), { ...how, method: "POST", body });

const sheetPath = (trial?: string) => `${v1}/sheets/${encodeURIComponent(trial ?? "new")}`;
/** The sheet that is being typed for a trial, or for a new one. */
export const typedSheet = (trial?: string, signal?: AbortSignal) =>
  send<wire.TypedSheet>(sheetPath(trial), { signal });
export const keepSheet = (sheet: wire.KeepSheet, trial?: string) =>
  put<wire.KeptSheet>(sheetPath(trial), sheet);
export const forgetSheet = (revision: number, trial?: string) =>
  send<wire.KeptSheet>(`${sheetPath(trial)}?revision=${revision}`, { method: "DELETE" });

export const kit = (signal?: AbortSignal) => send<wire.Kit>(`${v1}/kit`, { signal });
/**
 * Adds a thing to the kit, or where it has a uid already writes it anew, with why it was otherwise:
 * refused where it is not the revision any more that the thing says.
 */
export function keepInKit(shelf: keyof wire.Kit, thing: { uid?: string }, why: string) {
  const path = `${v1}/kit/${shelf}`;
  if (thing.uid === undefined) return post<wire.Kit>(path, thing);
  return put<wire.Kit>(`${path}/${thing.uid}`, { thing, why });
}
export const takeFromKit = (shelf: keyof wire.Kit, uid: string, revision: string) =>
  send<wire.Kit>(`${v1}/kit/${shelf}/${uid}?revision=${encodeURIComponent(revision)}`, {
    method: "DELETE",
  });

export const plannedArms = (choices: wire.ArmChoices) =>
  post<wire.PlannedArms>(`${v1}/planning/arms`, choices);
export const checkpoints = (wanted: wire.CheckpointsFor) =>
  post<wire.Checkpoints>(`${v1}/planning/checkpoints`, wanted);
export const shuffled = (plan: wire.Plan) => post<wire.Plan>(`${v1}/planning/order`, plan);
export const cost = (asked: wire.PlanAsked, signal?: AbortSignal) =>
  post<wire.Cost>(`${v1}/planning/cost`, asked, signal);
export const chances = (asked: wire.PlanAsked, signal?: AbortSignal) =>
  post<wire.Chances | wire.Started>(`${v1}/planning/chances`, asked, signal);
export const ownScatter = (of: wire.OwnScatter) =>
  post<wire.Asked>(`${v1}/planning/own-scatter`, of);
export const measured = (signal?: AbortSignal) =>
  send<wire.Measured>(`${v1}/planning/measured`, { signal });

export const steels = (text: string, signal?: AbortSignal) =>
  send<wire.ReferenceSteels>(`${v1}/reference/steels?text=${encodeURIComponent(text)}`, { signal });
export const grits = (text: string, signal?: AbortSignal) =>
  send<wire.ReferenceGrits>(`${v1}/reference/grits?text=${encodeURIComponent(text)}`, { signal });
