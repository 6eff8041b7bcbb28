package varanid.intake.platform.web;

import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import org.springframework.data.domain.Limit;
import org.springframework.http.ResponseEntity;

/**
 * One page of a list in id order, which is the order of making. The cursor is where the page before ended, so that a
 * page neither skips nor repeats anything when something is added meanwhile.
 */
public final class Page {

    private static final UUID BEFORE_ALL = new UUID(0, 0);

    private final SortedPage<UUID> page;

    Page(SortedPage<UUID> page) {
        this.page = page;
    }

    /** Rows have an id greater than this. */
    public UUID after() {
        return page.after().orElse(BEFORE_ALL);
    }

    /** How many rows to fetch: one more than the page shows, to know whether another follows. */
    public Limit fetch() {
        return Limit.of(page.fetch());
    }

    /**
     * The reply: the items, and the link to the next page where there is one (RFC 8288).
     *
     * @param fetched what {@link #fetch()} gave, in id order
     */
    public <R, V> ResponseEntity<Items<V>> reply(List<R> fetched, Function<R, UUID> id, Function<R, V> view) {
        return page.reply(fetched, id, view);
    }
}
