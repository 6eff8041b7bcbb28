package varanid.intake.diary;

import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import varanid.intake.platform.id.RowKey;

/** Written once. */
@Entity
@Immutable
@Table(name = "diary_entry")
class DiaryRow implements Persistable<RowKey> {

    @EmbeddedId
    private RowKey key;

    private UUID animalId;
    private UUID recordedBy;
    private Instant occurredAt;
    private Instant recordedAt;
    private LocalDate localDate;
    private @Nullable String ate;
    private @Nullable String food;
    private @Nullable String drank;
    private @Nullable String stool;
    private @Nullable String urate;
    private @Nullable String seen;
    private @Nullable String demeanour;
    private @Nullable String cleaning;
    private @Nullable String miteCheck;
    private @Nullable String note;
    private @Nullable UUID supersedes;

    @SuppressWarnings("NullAway.Init")
    protected DiaryRow() {}

    DiaryRow(RowKey key, UUID animalId, UUID recordedBy, Instant recordedAt, LocalDate localDate, NewDiaryEntry entry) {
        this.key = key;
        this.animalId = animalId;
        this.recordedBy = recordedBy;
        this.occurredAt = entry.occurredAt();
        this.recordedAt = recordedAt;
        this.localDate = localDate;
        this.ate = code(entry.ate(), Ate::code);
        this.food = entry.food();
        this.drank = code(entry.drank(), Noticed::code);
        this.stool = code(entry.stool(), Noticed::code);
        this.urate = code(entry.urate(), Noticed::code);
        this.seen = code(entry.seen(), Seen::code);
        this.demeanour = code(entry.demeanour(), Demeanour::code);
        this.cleaning = code(entry.cleaning(), Cleaning::code);
        this.miteCheck = code(entry.miteCheck(), MiteCheck::code);
        this.note = entry.note();
        this.supersedes = entry.supersedes();
    }

    private static <T> @Nullable String code(@Nullable T value, Function<T, String> code) {
        return value == null ? null : code.apply(value);
    }

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

    @Nullable
    UUID supersedes() {
        return supersedes;
    }

    DiaryEntry entry() {
        return new DiaryEntry(
                key.id(),
                animalId,
                recordedBy,
                occurredAt,
                recordedAt,
                localDate,
                find(ate, Ate.values(), Ate::code),
                Optional.ofNullable(food),
                find(drank, Noticed.values(), Noticed::code),
                find(stool, Noticed.values(), Noticed::code),
                find(urate, Noticed.values(), Noticed::code),
                find(seen, Seen.values(), Seen::code),
                find(demeanour, Demeanour.values(), Demeanour::code),
                find(cleaning, Cleaning.values(), Cleaning::code).orElse(Cleaning.NONE),
                find(miteCheck, MiteCheck.values(), MiteCheck::code).orElse(MiteCheck.NOT_LOOKED),
                Optional.ofNullable(note));
    }

    private static <T> Optional<T> find(@Nullable String code, T[] values, Function<T, String> codeOf) {
        if (code == null) {
            return Optional.empty();
        }
        for (T value : values) {
            if (codeOf.apply(value).equals(code)) {
                return Optional.of(value);
            }
        }
        throw new IllegalStateException("no such word in the diary: " + code);
    }
}
