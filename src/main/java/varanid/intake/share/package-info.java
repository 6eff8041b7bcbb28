/**
 * Links that open one animal's summary, or a form for a vet's answer to it, to whoever has no account.
 *
 * <p><b>Words.</b> A <em>link</em> is a secret address, given out once to a <em>recipient</em>; an <em>opening</em> is
 * one use of it. A link <em>confirms</em> where a clinician's account gave it out: what is answered through it then
 * counts as a vet's own words.
 *
 * <p><b>Always.</b> Of a secret only its hash is stored. A link opens one animal, one kind of thing, for a time, until it
 * is revoked, and only while whoever gave it out is an active person of the organisation. Every opening is written down before anything is shown. What is wrong with a link that does not open
 * is never told: wrong, expired, revoked, of another kind, and of somebody who has left are one answer.
 *
 * <p>May use: {@code account}, {@code animal}, {@code platform}. What is shown behind a link, other features know.
 */
@NullMarked
package varanid.intake.share;

import org.jspecify.annotations.NullMarked;
