package varanid.intake.attachment;

import java.time.Instant;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonValue;

/**
 * What is to be kept.
 *
 * @param checked the file, written anew where it is a picture
 */
record NewAttachment(
        @Nullable UUID assessmentId,
        @Nullable UUID sampleId,
        @Nullable String finding,
        @Nullable String caption,
        @Nullable Instant takenAt,
        CheckedFile checked) {

    private static final int LONGEST_CAPTION = 500;
    private static final int LONGEST_FINDING = 100;

    /**
     * @param findings of a look of the animal, by the look's id; nothing where it has no such look
     * @param hasSample whether the animal has that sample
     */
    static Supplier<NewAttachment> read(
            JsonFields fields,
            byte @Nullable [] file,
            Present present,
            Function<UUID, @Nullable Set<String>> findings,
            Predicate<UUID> hasSample) {
        Given<UUID> assessment = fields.id("assessment");
        Given<UUID> sample = fields.id("sample")
                .check(hasSample, "is no sample of this animal", "the id of one of its samples, or left out");
        Given<String> finding = fields.text("finding", LONGEST_FINDING);
        if (assessment.isGiven() && sample.isGiven()) {
            fields.fault("is of an assessment and of a sample", "one of: assessment, sample; or neither");
        }
        if (assessment.isGiven()) {
            @Nullable Set<String> known = findings.apply(assessment.get());
            if (known == null) {
                assessment.fault("is no assessment of this animal", "the id of one of its assessments, or left out");
            } else {
                finding.check(
                        known::contains,
                        "is no finding of that assessment's checklist",
                        "the id of one of its findings");
            }
        } else if (finding.isGiven()) {
            finding.fault("is of no assessment", "the assessment too, or no finding");
        }
        Given<String> caption = fields.prose("caption", LONGEST_CAPTION);
        Given<Instant> takenAt = fields.pastInstant("takenAt", present);
        JsonValue place = fields.field("file");
        Given<CheckedFile> checked = check(place, file);
        return () -> new NewAttachment(
                assessment.orNull(),
                sample.orNull(),
                finding.orNull(),
                caption.orNull(),
                takenAt.orNull(),
                checked.get());
    }

    private static Given<CheckedFile> check(JsonValue place, byte @Nullable [] file) {
        if (file == null) {
            return place.faulty("is missing", FileKind.RIGHT);
        }
        try {
            return place.given(CheckedFile.of(file), FileKind.RIGHT);
        } catch (Refused refused) {
            return place.faulty(refused.wrong(), refused.right());
        }
    }
}
