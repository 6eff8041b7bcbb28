package varanid.intake.platform.web;

import java.net.URLEncoder;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.springframework.data.domain.Limit;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;

/**
 * One page of a list in id order, which is the order of making. The cursor is where the page before ended, so that a
 * page neither skips nor repeats anything when something is added meanwhile.
 */
public final class Page {

    private static final UUID BEFORE_ALL = new UUID(0, 0);

    private final String path;
    private final Map<String, String> filters;
    private final int limit;
    private final UUID after;

    Page(String path, Map<String, String> filters, int limit, Optional<UUID> after) {
        this.path = path;
        this.filters = filters;
        this.limit = limit;
        this.after = after.orElse(BEFORE_ALL);
    }

    /** Rows have an id greater than this. */
    public UUID after() {
        return after;
    }

    /** How many rows to fetch: one more than the page shows, to know whether another follows. */
    public Limit fetch() {
        return Limit.of(limit + 1);
    }

    /**
     * The reply: the items, and the link to the next page where there is one (RFC 8288).
     *
     * @param fetched what {@link #fetch()} gave, in id order
     */
    public <R, V> ResponseEntity<Items<V>> reply(List<R> fetched, Function<R, UUID> id, Function<R, V> view) {
        boolean more = fetched.size() > limit;
        List<R> shown = more ? fetched.subList(0, limit) : fetched;
        ResponseEntity.BodyBuilder reply = ResponseEntity.ok();
        reply.header(HttpHeaders.LINK, link(Optional.empty(), "first"));
        if (more) {
            reply.header(HttpHeaders.LINK, link(Optional.of(cursor(id.apply(shown.get(limit - 1)))), "next"));
        }
        return reply.body(new Items<>(shown.stream().map(view).toList()));
    }

    private String link(Optional<String> cursor, String relation) {
        StringBuilder link =
                new StringBuilder("<").append(path).append("?limit=").append(limit);
        filters.forEach((name, value) ->
                link.append('&').append(name).append('=').append(URLEncoder.encode(value, StandardCharsets.UTF_8)));
        cursor.ifPresent(text -> link.append("&cursor=").append(text));
        return link.append(">; rel=\"").append(relation).append('"').toString();
    }

    private static String cursor(UUID last) {
        byte[] bytes = ByteBuffer.allocate(16)
                .putLong(last.getMostSignificantBits())
                .putLong(last.getLeastSignificantBits())
                .array();
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    static UUID readCursor(String cursor) {
        byte[] bytes;
        try {
            bytes = Base64.getUrlDecoder().decode(cursor);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("is not a cursor of ours", e);
        }
        if (bytes.length != 16) {
            throw new IllegalArgumentException("is not a cursor of ours");
        }
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        return new UUID(buffer.getLong(), buffer.getLong());
    }
}
