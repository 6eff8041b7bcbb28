package varanid.intake.platform.web;

import java.util.List;

/**
 * A page of a list; the {@code Link} header leads to the next.
 *
 * @param items in the order of the list, which is that of making unless it says otherwise
 */
public record Items<V>(List<V> items) {}
