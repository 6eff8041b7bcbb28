package varanid.intake.visit;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import varanid.intake.animal.Animals;

/**
 * What the parts of one summary are read for. Several parts read the same records: what one has read, the next is given.
 * Used by one thread.
 */
final class Visit {

    private final UUID organisationId;
    private final ZoneId zone;
    private final Animals.Newcomer animal;
    private final Instant now;
    private final LocalDate today;
    private final Map<Object, Object> read = new HashMap<>();

    /**
     * @param zone the organisation's
     * @param now the moment of the summary
     */
    Visit(UUID organisationId, ZoneId zone, Animals.Newcomer animal, Instant now) {
        this.organisationId = organisationId;
        this.zone = zone;
        this.animal = animal;
        this.now = now;
        this.today = LocalDate.ofInstant(now, zone);
    }

    UUID organisationId() {
        return organisationId;
    }

    ZoneId zone() {
        return zone;
    }

    Animals.Newcomer animal() {
        return animal;
    }

    UUID animalId() {
        return animal.id();
    }

    Instant now() {
        return now;
    }

    /** The day of the summary in the organisation's zone. */
    LocalDate today() {
        return today;
    }

    /**
     * What the reader says, read once in this summary.
     *
     * @param what what is read: a word for it, or the id of the record; the same for the same reader only
     */
    @SuppressWarnings("unchecked")
    <T> T once(Object what, Supplier<T> reader) {
        Object known = read.get(what);
        if (known == null) {
            known = reader.get();
            read.put(what, known);
        }
        return (T) known;
    }
}
