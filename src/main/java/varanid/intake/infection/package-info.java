/**
 * Infection: what negative samples say, how many animals of a consignment to sample, and how sure a proportion is.
 *
 * <p>Words: <em>prior</em> is the probability that an animal is infected before any test; <em>sensitivity</em> the
 * probability that a test finds an infection that is there, <em>specificity</em> that it finds none where there is none;
 * <em>freedom</em> the probability that an animal or group is not infected; <em>correlation</em> how alike repeated
 * tests of one animal fail (an animal that sheds now and then fails them together).
 *
 * <p>What always holds: probabilities lie from 0 to 1; what cannot be reached is an answer of its own, never a number;
 * sample sizes are exact. None of it says that an animal is well: it is arithmetic on assumptions, and the assumptions
 * (data, with how weak they are) belong beside every result. It is for clinicians, not for keepers.
 *
 * <p>Uses the JDK and {@code commons-statistics-distribution} alone.
 */
@NullMarked
package varanid.intake.infection;

import org.jspecify.annotations.NullMarked;
