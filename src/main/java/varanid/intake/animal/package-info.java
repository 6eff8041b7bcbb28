/**
 * Animals that were taken in: what they are said to be, what speaks for it, and how they came.
 *
 * <p><b>Words.</b> A <em>consignment</em> is the animals that travelled or were surrendered together. The
 * <em>declared</em> origin is a CITES source code somebody stated; the <em>assessed</em> origin is what the evidence
 * says: wild-likely, captive-likely or undetermined; the riskier of the two is the <em>steering</em> origin, which plans
 * go by. A <em>remark</em> is something a person should look at; it never stops a registration.
 *
 * <p><b>Always.</b> Nothing is refused for want of a detail. Assessed origin and remarks are computed whenever the animal
 * is shown, from what was recorded, so they are never lost and never stale. First weights and lengths are kept as they
 * were given, with their unit, scale and resolution, and never changed.
 *
 * <p>Species, source codes, evidence and country numbers are data in {@code shared/reference}, each with its source.
 *
 * <p>May use: {@code measures}, {@code platform}. Pure within it: {@code Origin*}, {@code Provenance*},
 * {@code Transponder}.
 */
@NullMarked
package varanid.intake.animal;

import org.jspecify.annotations.NullMarked;
