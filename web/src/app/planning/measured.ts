// What was measured before, and which of it can be taken for granted of a medium that is planned.

import type { MeasuredArm } from "../../wire/api";

/** What is planned, and for which trial: what was measured in it was not measured before. */
export interface MeasuredFor {
  uid: string;
  medium: string;
  kind: string;
  counted?: string;
}

export interface Offer {
  arm: MeasuredArm;
  /** In the same medium; in another one only the scatter can be taken. */
  sameMedium: boolean;
  /** Until half as keen; absent where that is not known of this medium. */
  halfKeennessCuts?: number;
}

/** Of the same kind of reading only: in the same medium first, then in others. */
export function offersFor(arms: MeasuredArm[], planned: MeasuredFor): Offer[] {
  const medium = planned.medium.trim();
  const counted = planned.counted ?? "cuts";
  const offers = arms
    .filter((arm) => arm.kind === planned.kind && arm.trial_uid !== planned.uid)
    .map((arm) => {
      const sameMedium = arm.medium === medium;
      const known = sameMedium && arm.counted === counted;
      return {
        arm,
        sameMedium,
        halfKeennessCuts: known ? arm.to_be_assumed.half_keenness_cuts : undefined,
      };
    });
  return [
    ...offers.filter(({ sameMedium }) => sameMedium),
    ...offers.filter(({ sameMedium }) => !sameMedium),
  ];
}

/** "Take 18 %, as measured in My own hand (A, 3 runs)": what is pressed. */
export function takeWords({ arm, sameMedium }: Offer): string {
  const who = sameMedium ? arm.words : `${arm.words} in ${arm.medium}`;
  return `Take ${arm.percent_words}, as measured in ${arm.trial} (${who}, ${arm.runs} runs)`;
}

/** What else is known of it. */
export function offerWords({ arm, sameMedium, halfKeennessCuts }: Offer): string {
  const { condition, method_words, interval_words, counted } = arm;
  const half =
    halfKeennessCuts === undefined ? "" : `half as keen after about ${halfKeennessCuts} ${counted}`;
  const other = sameMedium ? "" : "another medium, so only the scatter is taken";
  const said = [`95 % interval ${interval_words}`, half, condition, method_words, other];
  return said.filter(Boolean).join("; ");
}
