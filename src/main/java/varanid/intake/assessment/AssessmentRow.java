package varanid.intake.assessment;

import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import varanid.intake.platform.id.RowKey;

/** Written once. */
@Entity
@Immutable
@Table(name = "assessment")
class AssessmentRow implements Persistable<RowKey> {

    @EmbeddedId
    private RowKey key;

    private UUID animalId;
    private UUID observerId;
    private Instant occurredAt;
    private Instant recordedAt;
    private LocalDate localDate;
    private List<String> excused;
    private String checklistId;
    private int checklistVersion;
    private String checklistSha256;
    private String urgency;
    private @Nullable String isolation;
    private boolean settled;
    private @Nullable UUID supersedes;
    private @Nullable UUID formKey;

    @Column(name = "form_sha256")
    private @Nullable String formSha256;

    private String document;
    private String documentSha256;

    @SuppressWarnings("NullAway.Init")
    protected AssessmentRow() {}

    AssessmentRow(
            RowKey key,
            UUID animalId,
            UUID observerId,
            Instant occurredAt,
            Instant recordedAt,
            LocalDate localDate,
            ScoreView score,
            @Nullable UUID supersedes,
            NewAssessment.@Nullable FormSent form,
            CanonicalJson document) {
        this.key = key;
        this.animalId = animalId;
        this.observerId = observerId;
        this.occurredAt = occurredAt;
        this.recordedAt = recordedAt;
        this.localDate = localDate;
        this.excused =
                score.lookAgain().stream().map(ScoreView.LookAgainView::finding).toList();
        this.checklistId = score.checklist().id();
        this.checklistVersion = score.checklist().version();
        this.checklistSha256 = score.checklist().digest();
        this.urgency = score.urgency().recommended();
        this.isolation = score.isolation() == null ? null : score.isolation().recommended();
        this.settled = score.urgency().settled();
        this.supersedes = supersedes;
        this.formKey = form == null ? null : form.key();
        this.formSha256 = form == null ? null : form.sha256();
        this.document = document.text();
        this.documentSha256 = document.sha256();
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

    UUID animalId() {
        return animalId;
    }

    UUID observerId() {
        return observerId;
    }

    Instant occurredAt() {
        return occurredAt;
    }

    Instant recordedAt() {
        return recordedAt;
    }

    LocalDate localDate() {
        return localDate;
    }

    List<String> excused() {
        return excused;
    }

    String checklistId() {
        return checklistId;
    }

    int checklistVersion() {
        return checklistVersion;
    }

    String checklistSha256() {
        return checklistSha256;
    }

    String urgency() {
        return urgency;
    }

    @Nullable
    String isolation() {
        return isolation;
    }

    boolean settled() {
        return settled;
    }

    @Nullable
    UUID supersedes() {
        return supersedes;
    }

    Optional<UUID> formKey() {
        return Optional.ofNullable(formKey);
    }

    /** Whether it was made with just that form, as it was sent. */
    boolean isOf(NewAssessment.FormSent form) {
        return form.key().equals(formKey) && form.sha256().equals(formSha256);
    }

    CanonicalJson document() {
        return new CanonicalJson(document, documentSha256);
    }
}
