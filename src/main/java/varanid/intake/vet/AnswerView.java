package varanid.intake.vet;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What a vet answered, verbatim. */
@Schema(name = "VetDecision")
@JsonInclude(JsonInclude.Include.NON_NULL)
record AnswerView(
        UUID id,
        UUID animalId,
        Instant answeredAt,
        Instant recordedAt,

        @Schema(description = "what was recorded up to then, its writer had seen")
        Instant seenUpTo,

        @Schema(allowableValues = {"examined", "heard-of", "read-only"})
        String sawAnimal,

        @Schema(allowableValues = {"routine", "urgent", "asap", "stat"}) @Nullable
        String urgency,

        @Schema(allowableValues = {"standard", "strict"}) @Nullable
        String isolation,

        List<FindingView> findings,
        List<TestView> tests,

        @Schema(description = "in the vet's own words") @Nullable
        String instructions,

        List<RulingView> rulings,

        @Schema(description = "not released before") @Nullable
        LocalDate quarantineUntil,

        @Schema(description = "false: the vet objects to ending the quarantine; it counts where confirmed") @Nullable
        Boolean approvesRelease,

        @Nullable LocalDate nextVisit,
        @Nullable String words,

        @Schema(description = "as stated; nobody has checked it")
        WriterView writer,

        @Schema(
                description = "whether a clinician of the organisation stands for the writer; if not, it may raise"
                        + " urgency and isolation and lowers nothing")
        boolean confirmed,

        @Nullable Instant confirmedAt,

        @Schema(description = "who confirmed it later") @Nullable
        UUID confirmedBy,

        @Nullable UUID supersedes,

        @Schema(allowableValues = {"account", "link"}) String recordedVia,

        @Nullable UUID recordedBy,
        @Nullable UUID linkId) {

    static AnswerView of(VetAnswer it) {
        return new AnswerView(
                it.id(),
                it.animalId(),
                it.answeredAt(),
                it.recordedAt(),
                it.seenUpTo(),
                it.sawAnimal().code(),
                it.urgency().orElse(null),
                it.isolation().orElse(null),
                it.findings().stream().map(FindingView::of).toList(),
                it.tests().stream().map(TestView::of).toList(),
                it.instructions().orElse(null),
                it.rulings().stream()
                        .map(said -> new RulingView(said.cause(), said.ruling().code()))
                        .toList(),
                it.quarantineUntil().orElse(null),
                it.approvesRelease().orElse(null),
                it.nextVisit().orElse(null),
                it.words().orElse(null),
                new WriterView(
                        it.writer().name(),
                        it.writer().practice(),
                        it.writer().licenceStatement(),
                        it.writer().contact().orElse(null)),
                it.confirmed(),
                it.confirmedAt().orElse(null),
                it.confirmedBy().orElse(null),
                it.supersedes().orElse(null),
                it.linkId().isPresent() ? "link" : "account",
                it.recordedBy().orElse(null),
                it.linkId().orElse(null));
    }

    @Schema(name = "VetFinding")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record FindingView(
            @Schema(description = "its id in the checklist; absent where no checklist asks for it") @Nullable
            String finding,

            @Schema(
                    allowableValues = {"confirmed", "added", "rejected"},
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String verdict,

            @Schema(description = "a level of the finding; a later look that shows no more is then nothing new")
            @Nullable
            String level,

            @Schema(description = "needed where there is no finding", maxLength = NewAnswer.LONGEST_REMARK) @Nullable
            String words) {

        static FindingView of(VetAnswer.FindingVerdict it) {
            return new FindingView(
                    it.finding().orElse(null),
                    it.verdict().code(),
                    it.level().orElse(null),
                    it.words().orElse(null));
        }
    }

    @Schema(name = "VetTest")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record TestView(
            @Schema(
                    description = "what was taken or done",
                    maxLength = NewAnswer.LONGEST_REMARK,
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String words,

            @Schema(description = "not in the future") @Nullable
            LocalDate on,

            @Schema(maxLength = NewAnswer.LONGEST_RESULT) @Nullable
            String result) {

        static TestView of(VetAnswer.TestTaken it) {
            return new TestView(it.words(), it.on().orElse(null), it.result().orElse(null));
        }
    }

    @Schema(name = "VetRuling")
    record RulingView(
            @Schema(
                    description = "a cause of the quarantine clock, such as air-sign",
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String cause,

            @Schema(
                    allowableValues = {"restarts", "restarts-after-treatment", "goes-on", "was-nothing"},
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String ruling) {}

    @Schema(name = "VetWriter")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record WriterView(
            @Schema(maxLength = 200, requiredMode = Schema.RequiredMode.REQUIRED)
            String name,

            @Schema(maxLength = 200, requiredMode = Schema.RequiredMode.REQUIRED)
            String practice,

            @Schema(
                    description = "register and number, or however licences are stated there",
                    maxLength = 500,
                    requiredMode = Schema.RequiredMode.REQUIRED)
            String licenceStatement,

            @Schema(maxLength = 500) @Nullable String contact) {}

    /** Only described here: {@link NewAnswer} reads it. */
    @Schema(name = "NewVetDecision")
    record AnswerBody(
            @Schema(description = "now unless said; not in the future") @Nullable
            Instant answeredAt,

            @Schema(
                    description = "the moment at which the summary that the vet had read was made: the answer stands"
                            + " above what was recorded up to then",
                    requiredMode = Schema.RequiredMode.REQUIRED)
            Instant seenUpTo,

            @Schema(
                    description = "read-only unless said",
                    allowableValues = {"examined", "heard-of", "read-only"})
            @Nullable
            String sawAnimal,

            @Schema(
                    description = "the urgency that the vet would have given",
                    allowableValues = {"routine", "urgent", "asap", "stat"})
            @Nullable
            String urgency,

            @Schema(allowableValues = {"standard", "strict"}) @Nullable
            String isolation,

            @Nullable List<FindingView> findings,
            @Nullable List<TestView> tests,

            @Schema(description = "kept and shown word for word", maxLength = NewAnswer.LONGEST_INSTRUCTIONS) @Nullable
            String instructions,

            @Nullable List<RulingView> rulings,
            @Nullable LocalDate quarantineUntil,
            @Nullable Boolean approvesRelease,

            @Schema(description = "today or later") @Nullable
            LocalDate nextVisit,

            @Schema(maxLength = NewAnswer.LONGEST_WORDS) @Nullable
            String words,

            @Schema(requiredMode = Schema.RequiredMode.REQUIRED)
            WriterView writer,

            @Schema(description = "the earlier answer that this one takes the place of") @Nullable
            UUID supersedes) {}
}
