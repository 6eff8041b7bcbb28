package varanid.intake.weight;

/** What the weighings answer to the checklist's finding {@code weight-trend}, and where that comes from. */
public record AnswerFromWeighings(TrendAnswer answer, AnswerSource source) {}
