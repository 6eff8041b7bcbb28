/**
 * Varanid Intake: how soon a newly taken-in monitor lizard needs a vet, how it is kept apart, and why.
 *
 * <p>Each package below this one is a feature and says for itself what it is for, which words it uses, what always
 * holds in it, and which other packages it may use.
 */
@NullMarked
package varanid.intake;

import org.jspecify.annotations.NullMarked;
