package varanid.intake.quarantine;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Component;

/** Whether an authority holds an animal. */
@Component
class LegalHolds {

    private static final LocalDate EVER = LocalDate.of(2199, 12, 31);

    private final LegalHoldRows rows;

    LegalHolds(LegalHoldRows rows) {
        this.rows = rows;
    }

    /** What is stated. */
    enum State {
        HELD,
        /** It was held, and the authority has released it. */
        RELEASED,
        /** No authority has to do with it. */
        NONE;

        /** The word for it in data and requests. */
        String code() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** What was stated last up to that day. */
    Optional<LegalHoldRow> find(UUID organisationId, UUID animalId, LocalDate asOf) {
        return rows.listNewestFirst(organisationId, animalId, asOf, Limit.of(1)).stream()
                .findFirst();
    }

    boolean isHeld(UUID organisationId, UUID animalId) {
        return find(organisationId, animalId, EVER)
                .filter(row -> row.state.equals(State.HELD.code()))
                .isPresent();
    }
}
