package varanid.intake.attachment;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import varanid.intake.platform.web.Caller;

/** Keeps attachments and finds them again; their bytes are read only where they are asked for. */
@Component
class AttachmentStore {

    private static final String SELECT = """
            SELECT a.id, a.animal_id, a.assessment_id, a.sample_id, a.finding, a.caption, a.taken_at, a.recorded_by,
                   a.recorded_at, a.media_type, a.byte_count, a.sha256, a.width, a.height, a.pages,
                   w.withdrawn_at, w.withdrawn_by, w.reason
            FROM attachment a
            LEFT JOIN attachment_withdrawal w ON w.organisation_id = a.organisation_id AND w.attachment_id = a.id
            WHERE a.organisation_id = :organisation AND a.animal_id = :animal""";

    private final JdbcClient jdbc;

    AttachmentStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void add(Caller caller, UUID animalId, UUID id, NewAttachment attachment, byte[] sha256, Instant now) {
        CheckedFile file = attachment.checked();
        @Nullable Instant takenAt = attachment.takenAt();
        jdbc.sql("""
                        INSERT INTO attachment
                        (organisation_id, id, animal_id, assessment_id, sample_id, finding, caption, taken_at, recorded_by,
                         recorded_at, media_type, width, height, pages, content, byte_count, sha256, thumbnail)
                        VALUES (:organisation, :id, :animal, :assessment, :sample, :finding, :caption, :takenAt, :by,
                         :now, :mediaType, :width, :height, :pages, :content, :bytes, :sha256, :thumbnail)""")
                .param("organisation", caller.organisationId())
                .param("id", id)
                .param("animal", animalId)
                .param("assessment", attachment.assessmentId())
                .param("sample", attachment.sampleId())
                .param("finding", attachment.finding())
                .param("caption", attachment.caption())
                .param("takenAt", takenAt == null ? null : utc(takenAt))
                .param("by", caller.personId())
                .param("now", utc(now))
                .param("mediaType", file.mediaType())
                .param("width", file.width())
                .param("height", file.height())
                .param("pages", file.pages())
                .param("content", file.content())
                .param("bytes", file.content().length)
                .param("sha256", sha256)
                .param("thumbnail", file.thumbnail())
                .update();
    }

    int count(UUID organisationId, UUID animalId) {
        return jdbc.sql("SELECT count(*) FROM attachment WHERE organisation_id = ? AND animal_id = ?")
                .params(organisationId, animalId)
                .query(Integer.class)
                .single();
    }

    Optional<KeptAttachment> find(UUID organisationId, UUID animalId, UUID id) {
        return jdbc.sql(SELECT + " AND a.id = :id")
                .param("organisation", organisationId)
                .param("animal", animalId)
                .param("id", id)
                .query((row, number) -> kept(row))
                .optional();
    }

    List<KeptAttachment> list(UUID organisationId, UUID animalId, UUID after, int most) {
        return jdbc.sql(SELECT + " AND a.id > :after ORDER BY a.id LIMIT :most")
                .param("organisation", organisationId)
                .param("animal", animalId)
                .param("after", after)
                .param("most", most)
                .query((row, number) -> kept(row))
                .list();
    }

    /** @param column {@code content} or {@code thumbnail} */
    private Optional<byte[]> bytes(String column, UUID organisationId, UUID animalId, UUID id) {
        return jdbc.sql("SELECT " + column + " FROM attachment WHERE organisation_id = ? AND animal_id = ? AND id = ?")
                .params(organisationId, animalId, id)
                .query((row, number) -> Optional.ofNullable(row.getBytes(1)))
                .optional()
                .flatMap(found -> found);
    }

    Optional<byte[]> content(UUID organisationId, UUID animalId, UUID id) {
        return bytes("content", organisationId, animalId, id);
    }

    Optional<byte[]> thumbnail(UUID organisationId, UUID animalId, UUID id) {
        return bytes("thumbnail", organisationId, animalId, id);
    }

    void withdraw(Caller caller, UUID id, String reason, Instant now) {
        jdbc.sql("""
                        INSERT INTO attachment_withdrawal
                        (organisation_id, attachment_id, reason, withdrawn_by, withdrawn_at) VALUES (?, ?, ?, ?, ?)""")
                .params(caller.organisationId(), id, reason, caller.personId(), utc(now))
                .update();
    }

    private static KeptAttachment kept(ResultSet row) throws SQLException {
        @Nullable OffsetDateTime withdrawn = row.getObject("withdrawn_at", OffsetDateTime.class);
        return new KeptAttachment(
                row.getObject("id", UUID.class),
                row.getObject("animal_id", UUID.class),
                Optional.ofNullable(row.getObject("assessment_id", UUID.class)),
                Optional.ofNullable(row.getObject("sample_id", UUID.class)),
                Optional.ofNullable(row.getString("finding")),
                Optional.ofNullable(row.getString("caption")),
                Optional.ofNullable(row.getObject("taken_at", OffsetDateTime.class))
                        .map(OffsetDateTime::toInstant),
                row.getObject("recorded_by", UUID.class),
                row.getObject("recorded_at", OffsetDateTime.class).toInstant(),
                new KeptAttachment.Content(
                        row.getString("media_type"),
                        row.getInt("byte_count"),
                        HexFormat.of().formatHex(row.getBytes("sha256")),
                        Optional.ofNullable(row.getObject("width", Integer.class)),
                        Optional.ofNullable(row.getObject("height", Integer.class)),
                        Optional.ofNullable(row.getObject("pages", Integer.class))),
                withdrawn == null
                        ? Optional.empty()
                        : Optional.of(new KeptAttachment.Withdrawal(
                                withdrawn.toInstant(),
                                row.getObject("withdrawn_by", UUID.class),
                                row.getString("reason"))));
    }

    private static OffsetDateTime utc(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }
}
