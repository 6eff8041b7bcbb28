/**
 * The page that a morning begins with: whom to see to now, and the order to walk in.
 *
 * <p>Filters and pages are those of the interface ({@code only}, {@code room}, {@code due}, {@code asOf}, {@code
 * cursor}), so that an address means the same in both.
 *
 * <p>May use: {@code worklist}, {@code platform.web}.
 */
@NullMarked
package varanid.intake.page.worklist;

import org.jspecify.annotations.NullMarked;
