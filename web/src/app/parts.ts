// Which parts of the app lead anywhere: what the program does not answer yet is not shown.

/** Kit, Ask and Plan, and beginning a trial with a question. */
export const canAskFirst: boolean = false;
