package varanid.intake.platform.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;

/**
 * One page of a list in an order of its own. The cursor is where the page before ended, so that what does not move is
 * neither skipped nor repeated, whatever else moves meanwhile.
 *
 * @param <K> what the list is sorted by
 */
public final class SortedPage<K> {

    private final String path;
    private final Map<String, String> filters;
    private final int limit;
    private final CursorForm<K> form;
    private final Optional<K> after;

    SortedPage(String path, Map<String, String> filters, int limit, CursorForm<K> form, Optional<K> after) {
        this.path = path;
        this.filters = filters;
        this.limit = limit;
        this.form = form;
        this.after = after;
    }

    /** Rows come after this place; from the beginning where there is none. */
    public Optional<K> after() {
        return after;
    }

    /** How many rows to fetch: one more than the page shows, to know whether another follows. */
    public int fetch() {
        return limit + 1;
    }

    /**
     * The reply: the items, and the link to the next page where there is one (RFC 8288).
     *
     * @param fetched at most {@link #fetch()} rows, in the order of the list
     */
    public <R, V> ResponseEntity<Items<V>> reply(List<R> fetched, Function<R, K> key, Function<R, V> view) {
        ResponseEntity.BodyBuilder reply = ResponseEntity.ok();
        reply.header(HttpHeaders.LINK, link(Optional.empty(), "first"));
        findNext(fetched, key).ifPresent(next -> reply.header(HttpHeaders.LINK, link(Optional.of(next), "next")));
        return reply.body(new Items<>(shown(fetched).stream().map(view).toList()));
    }

    /** Of the rows that were fetched, those that this page shows. */
    public <R> List<R> shown(List<R> fetched) {
        return fetched.size() > limit ? fetched.subList(0, limit) : fetched;
    }

    /** The cursor of the page that follows, where one does. */
    public <R> Optional<String> findNext(List<R> fetched, Function<R, K> key) {
        return fetched.size() > limit ? Optional.of(form.write(key.apply(fetched.get(limit - 1)))) : Optional.empty();
    }

    private String link(Optional<String> cursor, String relation) {
        StringBuilder link =
                new StringBuilder("<").append(path).append("?limit=").append(limit);
        filters.forEach((name, value) ->
                link.append('&').append(name).append('=').append(URLEncoder.encode(value, StandardCharsets.UTF_8)));
        cursor.ifPresent(text -> link.append("&cursor=").append(text));
        return link.append(">; rel=\"").append(relation).append('"').toString();
    }
}
