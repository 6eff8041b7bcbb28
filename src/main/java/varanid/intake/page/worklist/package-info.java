/**
 * The first page: what to do now, and in which order to walk. The same two lists as the API's, from the same service.
 *
 * <p><b>Always.</b> The order is the list's; the page only puts headings between. Urgency is told by words and place,
 * never by colour alone. Printed, every task has a box to tick.
 *
 * <p>May use: {@code animal} (tags), {@code worklist}, {@code platform.web}.
 */
@NullMarked
package varanid.intake.page.worklist;

import org.jspecify.annotations.NullMarked;
