/**
 * The card that hangs at a cage: what whoever opens it must know, on paper.
 *
 * <p><b>Words.</b> A <em>card</em> says of one animal who it is, how strictly apart it is kept, since when and at least how
 * long, how soon a vet, how it bears handling, and what to do before its cage is opened. Cards of a room are printed in
 * one document, several on a sheet.
 *
 * <p><b>Always.</b> A card is made anew whenever it is asked for, and nothing of it is stored. What it says of urgency
 * and isolation is what the summary and the quarantine say, and of two the stricter; what is not known is strict. It names
 * no illness, no dose and nobody who was hurt. Its QR code holds the address of the animal's page and no secret: who
 * scans it has to sign in.
 *
 * <p>Its words are data: {@code shared/reference/cage-card.yaml}.
 *
 * <p>May use: {@code account}, {@code animal}, {@code quarantine}, {@code report}, {@code visit} for what heads a summary, {@code
 * platform.reference}, {@code platform.time}, {@code platform.web}. None of these uses it.
 */
@NullMarked
package varanid.intake.cagecard;

import org.jspecify.annotations.NullMarked;
