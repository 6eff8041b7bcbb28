package varanid.intake.platform.web;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import tools.jackson.databind.json.JsonMapper;

/**
 * How a place in a list is written into a cursor, and read from it again. A cursor is a place in the order of the list
 * and not a number of rows: what is added, moved or removed meanwhile makes nothing else come twice or never.
 *
 * @param <K> what the list is sorted by, ending in something that no two rows have in common
 */
public final class CursorForm<K> {

    /** The place in a list in id order. */
    static final CursorForm<UUID> OF_IDS = new CursorForm<>(CursorForm::bytes, CursorForm::id);

    private static final JsonMapper JSON = JsonMapper.shared();

    private final Function<K, byte[]> bytes;
    private final Function<byte[], K> key;

    private CursorForm(Function<K, byte[]> bytes, Function<byte[], K> key) {
        this.bytes = bytes;
        this.key = key;
    }

    /**
     * A place with several parts.
     *
     * @param order the name of the order: a cursor of another order is refused
     * @param parts the place as its parts, always as many
     * @param key the parts as a place; any exception says that they are none
     */
    public static <K> CursorForm<K> ofParts(
            String order, Function<K, List<String>> parts, Function<List<String>, K> key) {
        return new CursorForm<>(
                place -> {
                    List<String> all = new ArrayList<>(List.of(order));
                    all.addAll(parts.apply(place));
                    return JSON.writeValueAsString(all).getBytes(StandardCharsets.UTF_8);
                },
                written -> {
                    List<String> all = List.of(JSON.readValue(written, String[].class));
                    List<String> given = all.subList(1, all.size());
                    if (!all.get(0).equals(order)
                            || given.stream()
                                    .anyMatch(part -> Texts.forbiddenCharacter(part, false)
                                            .isPresent())) {
                        throw new IllegalArgumentException("another order, or no text");
                    }
                    K place = key.apply(given);
                    if (!parts.apply(place).equals(given)) {
                        throw new IllegalArgumentException("not as it would be written");
                    }
                    return place;
                });
    }

    String write(K place) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes.apply(place));
    }

    /** @throws IllegalArgumentException for what {@link #write} never gave out */
    K read(String cursor) {
        try {
            return key.apply(Base64.getUrlDecoder().decode(cursor));
        } catch (RuntimeException e) {
            throw new IllegalArgumentException("is not a cursor of ours", e);
        }
    }

    private static byte[] bytes(UUID id) {
        return ByteBuffer.allocate(16)
                .putLong(id.getMostSignificantBits())
                .putLong(id.getLeastSignificantBits())
                .array();
    }

    private static UUID id(byte[] bytes) {
        if (bytes.length != 16) {
            throw new IllegalArgumentException("an id has 16 bytes");
        }
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        return new UUID(buffer.getLong(), buffer.getLong());
    }
}
