/**
 * Reports: what the people around an animal tell of it, for the vet.
 *
 * <p><b>Words.</b> A <em>report</em> is what somebody told at one time, and a person of the organisation wrote down: last
 * meal, stool, urate and drink, food, lamps, warmth, the journey, treatments already given, how it is handled and whom it
 * bit, who consents and pays, what they want to ask, whom to call. It <em>stands</em> until another supersedes it. The
 * <em>standing statement</em> of a field is the latest one that stands. The <em>people</em> of a report are everything in
 * it that is meant to say who somebody is, or what they suffer from.
 *
 * <p><b>Always.</b> Words are kept as they were told, and shown so. Nothing is worked out from a treatment: no dose, no
 * interval, no opinion. Every treatment and every bite of every standing report is shown; of all else the latest
 * statement. A report is never changed. Its people are kept beside it and can be removed for good; that they were removed,
 * when and by whom, stays.
 *
 * <p>Codes, their words, the questions that ask for each field, and the cautions are data in {@code
 * shared/reference/reports.yaml}.
 *
 * <p>May use: {@code animal}, {@code measures}, {@code platform}.
 */
@NullMarked
package varanid.intake.report;

import org.jspecify.annotations.NullMarked;
