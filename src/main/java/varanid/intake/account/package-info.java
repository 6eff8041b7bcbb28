/**
 * Organisations, the people in them, the tokens they send requests with, and what they sign in with.
 *
 * <p><b>Words.</b> An <em>organisation</em> is who everything belongs to: one keeper, a rescue, a clinic. It has a zone,
 * in which dates are meant. A <em>person</em> has roles: keeper, clinician, administrator. A <em>token</em> is what a
 * person sends requests with.
 *
 * <p><b>Always.</b> Of a token only the SHA-256 is stored; it is shown once, when it is made. It expires (after 90 days
 * unless said otherwise, a year at most) and can be revoked; only the one of the first start does not expire. Nobody
 * changes their own roles, so nobody makes themselves a clinician, and an organisation always has an active
 * administrator. A token says who issued it: an administrator who makes one for a clinician is on record.
 *
 * <p>A link that signs somebody in works once, and is stored as a hash; whoever made it is on record. Of a password only
 * a slow hash is stored. Whether an e-mail is known is never told.
 *
 * <p>May use: {@code platform}.
 */
@NullMarked
package varanid.intake.account;

import org.jspecify.annotations.NullMarked;
