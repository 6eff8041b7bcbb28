/**
 * The page that a vet reads before or while seeing an animal, in several forms with the same content.
 *
 * <p><b>Words.</b> A <em>summary</em> is what is known of one animal at one moment, in the order a clinician thinks. It
 * is made of <em>parts</em>, a part of <em>statements</em>: one thing that was seen, measured, reported, recorded, worked
 * out or said by a vet, with its {@linkplain varanid.intake.visit.Basis basis}. A <em>form</em> is a way to write a
 * summary down: a page, a PDF, JSON, a FHIR document.
 *
 * <p><b>Always.</b> Every form has every statement, each with its basis in words. What people and vets wrote is there
 * verbatim. Nothing in it is a computed diagnosis or dose. A summary is made anew whenever it is asked for, and nothing
 * of it is stored.
 *
 * <p>May use every feature that keeps records of animals. For others: {@link varanid.intake.visit.Heads} says what heads
 * a summary.
 */
@NullMarked
package varanid.intake.visit;

import org.jspecify.annotations.NullMarked;
