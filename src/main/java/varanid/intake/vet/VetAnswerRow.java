package varanid.intake.vet;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import varanid.intake.platform.id.RowKey;

/** What a vet answered. Written once. */
@Entity
@Immutable
@Table(name = "vet_answer")
class VetAnswerRow implements Persistable<RowKey> {

    @EmbeddedId
    RowKey key;

    UUID animalId;
    Instant answeredAt;
    Instant recordedAt;
    Instant seenUpTo;
    String sawAnimal;

    @Nullable
    String urgency;

    @Nullable
    String isolation;

    @JdbcTypeCode(SqlTypes.JSON)
    String findings;

    @JdbcTypeCode(SqlTypes.JSON)
    String tests;

    @JdbcTypeCode(SqlTypes.JSON)
    String rulings;

    @Nullable
    String instructions;

    @Nullable
    LocalDate quarantineUntil;

    @Nullable
    Boolean approvesRelease;

    @Nullable
    LocalDate nextVisit;

    @Nullable
    String words;

    String writerName;
    String writerPractice;
    String writerLicence;

    @Nullable
    String writerContact;

    @Nullable
    UUID supersedes;

    @Nullable
    UUID recordedBy;

    @Nullable
    UUID linkId;

    boolean confirmedFromStart;

    @Nullable
    String keySha256;

    @Nullable
    String contentSha256;

    /** Everything is filled in before it is saved. */
    @SuppressWarnings("NullAway.Init")
    protected VetAnswerRow() {}

    @Override
    public RowKey getId() {
        return key;
    }

    /** Rows are only ever added: saving never looks for an older one. */
    @Override
    public boolean isNew() {
        return true;
    }

    UUID id() {
        return key.id();
    }
}
