/**
 * The pages on which something is kept of an animal beside its looks and its diary: samples and what was found in them,
 * its surroundings, what people tell of it, pictures.
 *
 * <p><b>Words.</b> A <em>sheet</em> is one such page: groups of fields, and below it what is kept already.
 *
 * <p><b>Always.</b> What is asked, and in which words, is the features' reference data. A form becomes the JSON that a
 * program would send; the features read and refuse both alike. A form that is refused comes back with everything that was
 * typed.
 *
 * <p>May use: {@code attachment}, {@code enclosure}, {@code infection}, {@code report}, {@code sample}, {@code visit},
 * {@code page}, {@code platform.web}.
 */
@NullMarked
package varanid.intake.page.record;

import org.jspecify.annotations.NullMarked;
