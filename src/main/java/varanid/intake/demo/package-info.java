/**
 * The demo: an invented rescue with animals at every stage between arrival and release, to try the service on.
 *
 * <p>It is an organisation of its own, described in {@code demo/reed-bank.yaml} and loaded through the same checks as a
 * request. Started once with {@code --load-demo} the service makes it and writes the tokens of its keeper and its vet
 * into the home folder; started once with {@code --remove-demo} it removes it.
 *
 * <p>What always holds: there is one demo at most, and it is there wholly or not at all; the command that removes it
 * touches no row of another organisation, although it works as the owner of the tables and past the triggers that guard
 * what is append-only.
 *
 * <p>Uses {@code account}, {@code platform} and every feature that keeps records of animals.
 */
@NullMarked
package varanid.intake.demo;

import org.jspecify.annotations.NullMarked;
