/**
 * What vets answer, and what then holds: a vet's answer stands above the recommendation that this service works out.
 *
 * <p><b>Words.</b> An <em>answer</em> is what a vet said of an animal, in the vet's words, with the moment up to which
 * its writer had <em>seen</em> what is recorded. It is <em>confirmed</em> where a clinician's account wrote it, gave out
 * the link it came by, or vouched for it later. The answer that <em>stands</em> is the confirmed one that was given last.
 * What a look shows that its writer could not have seen, and that is new or worse and cannot wait longer than a day, is
 * <em>new since the vet's answer</em>.
 *
 * <p><b>Always.</b> Answers are only ever added; a later one stands above an earlier one, and nothing else does. A look
 * that the vet had seen never outranks a confirmed answer. What came after is never hidden: it can only raise urgency and
 * isolation until a vet answers again. An unconfirmed answer may raise them and never lowers anything. What was worked
 * out stays visible beside the answer. No word of a vet is changed, and none is added to it.
 *
 * <p>{@link varanid.intake.vet.Recommendations} tells other features what holds, and {@link
 * varanid.intake.vet.VetAnswered} that it may have changed.
 *
 * <p>Uses {@code animal}, {@code assessment}, {@code checklist}, {@code scoring}, {@code share} and {@code platform}.
 */
@NullMarked
package varanid.intake.vet;

import org.jspecify.annotations.NullMarked;
